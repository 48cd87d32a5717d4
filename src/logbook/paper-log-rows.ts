/**
 * One row of an old log, and the entries it makes.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Draft } from './draft.js'
import type { Body } from './kinds.js'
import { type FoundColumns, type PaperField, paperFields } from './paper-log-columns.js'
import { type DateOrder, inOrder, readDate } from './paper-log-dates.js'
import { bareNumber, type DecimalMark, numberFrom } from './paper-log-numbers.js'
import { deedsIn, type PartNames, partsIn, tellsOfFailure } from './paper-log-words.js'
import type { Problem } from './problems.js'

/** A row with its cells sorted by what they hold; empty ones left out. */
export interface PaperRow {
  /** As a person counts: headings are row 1. */
  readonly number: number
  readonly cells: Readonly<Partial<Record<PaperField, string>>>
  /** What stands in columns that are none of ours, each under its heading. */
  readonly others: string
}

/** Rows with anything in them; and rows that have more cells than there are headings. */
export function rowsOf(
  body: readonly (readonly string[])[],
  { places, others, width }: Pick<FoundColumns, 'places' | 'others'> & { readonly width: number },
): { readonly rows: readonly PaperRow[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const rows = body.flatMap((raw, index) => {
    const number = index + 2
    const cells = raw.map(cleaned)
    if (cells.every((cell) => cell === '')) return []
    const beyond = cells.slice(width).find((cell) => cell !== '')
    if (beyond !== undefined) {
      const allowed = `at most ${width} cells, one under each heading`
      problems.push({ code: 'too-many-cells', path: `row ${number}`, found: shown(beyond), allowed })
    }
    const held = paperFields.flatMap((field) => {
      const cell = cells[places.get(field) ?? -1] ?? ''
      return cell === '' ? [] : [[field, cell] as const]
    })
    const rest = others.flatMap(({ heading, place }) => (cells[place] ? [`${heading}: ${cells[place]}`] : []))
    return [{ number, cells: Object.fromEntries(held), others: rest.join('; ') }]
  })
  return { rows, problems }
}

export interface RowRules {
  readonly boat: string
  readonly set: string
  readonly dateOrder: DateOrder
  readonly decimal: DecimalMark
  readonly parts?: readonly PartNames[]
}

/** The entries that a row makes, or everything that is wrong with it. */
export interface RowRead {
  readonly drafts: readonly Draft[]
  readonly problems: readonly Problem[]
  /** As what the row was taken, where words had to be understood. */
  readonly guessed?: string
  readonly unknownPart?: string
}

/** Reads a row: hours of the meter, work on parts, a bill, or a note. */
export function draftsOfRow(row: PaperRow, rules: RowRules): RowRead {
  const problems: Problem[] = []
  const say = (code: string, field: PaperField | '', found: unknown, allowed: string) =>
    problems.push({ code, path: `row ${row.number} ${field}`.trimEnd(), found: shown(found), allowed })
  const { date, part = '', what = '', by, remark } = row.cells
  const written = date === undefined ? undefined : readDate(date)
  const from = written === undefined ? undefined : inOrder(written, rules.dateOrder)
  if (from === undefined) {
    say(
      date === undefined ? 'missing' : 'no-date',
      'date',
      date,
      `a date such as 2019-05-12 or 12 May 2019, ${rules.dateOrder}`,
    )
  }
  const number = (field: 'hours' | 'cost', most: number): number | undefined => {
    const cell = row.cells[field]
    if (cell === undefined) return undefined
    const bare = bareNumber(cell)
    const value = bare === undefined ? undefined : numberFrom(bare, rules.decimal)
    if (value === undefined || value > most) {
      say('no-number', field, cell, `a number from 0 to ${most} with a decimal ${rules.decimal}`)
    }
    return value
  }
  const hours = number('hours', 200_000)
  const cost = number('cost', 1e9)
  const words = [part, what].filter((text) => text !== '').join(': ')
  const rest = [remark, row.others].filter((text) => text !== undefined && text !== '').join('; ')
  const whole = [words, rest, by === undefined ? '' : `by ${by}`].filter((text) => text !== '').join('; ')
  if (whole.length > longestWords)
    say('too-long', '', `${whole.length} characters`, `at most ${longestWords}`)
  if (hours === undefined && cost === undefined && words === '' && rest === '' && problems.length === 0) {
    say('says-nothing', '', date, 'hours, words or a cost besides the date')
  }
  if (problems.length > 0 || from === undefined) return { drafts: [], problems }

  const at = { boat: rules.boat, set: rules.set, from }
  const meter = hours === undefined ? {} : { meterHours: hours }
  const aside = rest === '' ? {} : { remark: rest }
  const deeds = deedsIn({ part, what }, rules.parts ?? [])
  if (deeds.length > 0) {
    const body: Body<'work'> = {
      parts: deeds,
      by: byWhom(by),
      why: tellsOfFailure(words) ? 'failed' : 'not-known',
      what: by === undefined ? words : `${words} (by ${by})`,
      ...(cost === undefined ? {} : { cost }),
      ...meter,
      ...aside,
    }
    const did = deeds.map((deed) => `${deed.part} ${deed.did}`).join(', ')
    const guessed = `${did}, by ${body.by}${body.why === 'failed' ? ', had failed' : ''}`
    return { drafts: [{ ...at, kind: 'work', body }], problems, guessed }
  }
  const drafts: Draft[] = []
  if (hours !== undefined) drafts.push({ ...at, kind: 'hours', body: { meterHours: hours } })
  if (cost !== undefined) {
    drafts.push({ ...at, kind: 'bill', body: { amount: cost, ...(whole === '' ? {} : { what: whole }) } })
  } else if (whole !== '') {
    drafts.push({ ...at, kind: 'note', body: { text: whole } })
  }
  return {
    drafts,
    problems,
    ...(part !== '' && partsIn(part, rules.parts ?? []).length === 0 ? { unknownPart: part } : {}),
  }
}

/** Shorter than the shortest text that it may become. */
const longestWords = 1800

function byWhom(by: string | undefined): Body<'work'>['by'] {
  return by === undefined || /^(me|self|own|owner|us|ourselves|myself|crew|skipper)$/i.test(by)
    ? 'owner'
    : 'workshop'
}

/** A cell without blanks around it and without characters that no entry may hold; a dash means nothing. */
function cleaned(cell: string): string {
  const text = cell
    .replace(/\r\n?/g, '\n')
    .replace(/[^\P{C}\n\t]/gu, ' ')
    .trim()
  return /^(?:[-–—?]+|n\/a|nil)$/i.test(text) ? '' : text
}
