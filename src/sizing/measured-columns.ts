/**
 * Which column of a meter's or logger's table holds what, and in which unit.
 *
 * @module
 */

import { type Problem, shown } from '../catalogue/problem.js'

const quantities = ['power', 'apparent', 'current', 'volts', 'factor'] as const
export type Quantity = (typeof quantities)[number]
const legs = ['', '1', '2', '3'] as const

/** What a column can hold: a time (or a date and a clock), a running count of energy, or a quantity of the whole or of one leg. */
export const measuredFields = [
  'time',
  'date',
  'clock',
  'energy',
  ...quantities.flatMap((quantity) => legs.map((leg) => `${quantity}${leg}` as const)),
] as const
export type MeasuredField = (typeof measuredFields)[number]

/** A number by which a cell is multiplied to give kW, kVA, A, V, kWh or a share. */
export const unitFactors = {
  W: 0.001,
  kW: 1,
  VA: 0.001,
  kVA: 1,
  A: 1,
  mA: 0.001,
  V: 1,
  Wh: 0.001,
  kWh: 1,
  '%': 0.01,
  '': 1,
} as const
export type MeasuredUnit = keyof typeof unitFactors

/** One column as it is read. */
export interface MeasuredColumn {
  readonly field: MeasuredField
  readonly heading: string
  readonly place: number
  /** Left out: no heading says; settled by the size of the numbers. */
  readonly unit?: MeasuredUnit
}

export interface FoundMeasured {
  readonly columns: readonly MeasuredColumn[]
  readonly others: readonly string[]
}

/** Words by which a heading tells its quantity, the more telling first. */
const headings: readonly (readonly [MeasuredField | Quantity, RegExp])[] = [
  ['factor', /\b(pf|power factor|cos ?phi|cosφ|cos)\b/],
  ['energy', /\b(energy|kwh|wh|import|total energy|meter reading)\b/],
  ['apparent', /\b(apparent|kva|va|s)\b/],
  ['power', /\b(power|watts?|kw|w|load|active|real|demand|output|p)\b/],
  ['current', /\b(current|amps?|amperes?|ma|a|i)\b/],
  ['volts', /\b(volts?|voltage|v|u)\b/],
  ['time', /\b(time ?stamp|date ?time|date and time|date time|epoch|unix|recorded|logged|elapsed|t)\b/],
  ['date', /\b(date|day)\b/],
  ['clock', /\b(time|clock|hour|time of day)\b/],
]
/** Quantities that are alike in name and no help here. */
const strangers =
  /\b(reactive|var|kvar|kvarh|frequency|freq|hz|thd|temperature|temp|battery|soc|dc|cost|price|export)\b/

/** Columns of a row of headings. Empty where it does not look like one. */
export function guessColumns(row: readonly string[], units: readonly string[] = []): FoundMeasured {
  const taken = new Map<MeasuredField, MeasuredColumn>()
  row.forEach((heading, place) => {
    const guess = guessOf(heading)
    if (guess === undefined || taken.has(guess)) return
    const unit = unitIn(units[place] ?? '', guess, true) ?? unitIn(heading, guess, false)
    taken.set(guess, {
      field: guess,
      heading: heading.trim(),
      place,
      ...(unit === undefined ? {} : { unit }),
    })
  })
  // a clock without a date beside it is the whole time
  const clock = taken.get('clock')
  const date = taken.get('date')
  if (!taken.has('time') && clock !== undefined && date === undefined) retake(taken, clock, 'time')
  if (!taken.has('time') && date !== undefined && clock === undefined) retake(taken, date, 'time')
  if (taken.has('time')) {
    taken.delete('clock')
    taken.delete('date')
  }
  const used = new Set([...taken.values()].map(({ place }) => place))
  return {
    columns: [...taken.values()],
    others: row.filter((_, place) => !used.has(place)).map((heading) => heading.trim()),
  }
}

/** Whether what was found makes a log: a time, and something that gives power. */
export function makesLog({ columns }: Pick<FoundMeasured, 'columns'>): boolean {
  const has = (field: string) => columns.some((column) => column.field === field)
  const timed = has('time') || (has('date') && has('clock'))
  return (
    timed &&
    (has('energy') || legs.some((leg) => has(`power${leg}`) || has(`apparent${leg}`) || has(`current${leg}`)))
  )
}

/** Columns as they were named by a person, by heading or by number from 1; what is not named is guessed. */
export function namedColumns(
  row: readonly string[],
  asked: Readonly<Partial<Record<MeasuredField, string>>>,
  units: Readonly<Partial<Record<MeasuredField, MeasuredUnit>>>,
): FoundMeasured & { readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const guessed = guessColumns(row)
  const columns = new Map<MeasuredField, MeasuredColumn>()
  for (const [field, wanted] of Object.entries(asked) as [MeasuredField, string][]) {
    const place = placeOf(row, wanted)
    if (place === undefined) {
      const allowed = `a number from 1 to ${row.length}, or one of: ${row.map((heading) => shown(heading.trim())).join(', ')}`
      problems.push({ code: 'no-such-column', path: `columns.${field}`, found: shown(wanted), allowed })
      continue
    }
    const unit = unitIn(row[place]!, field, false)
    columns.set(field, { field, heading: row[place]!.trim(), place, ...(unit === undefined ? {} : { unit }) })
  }
  const places = new Set([...columns.values()].map(({ place }) => place))
  const asksTime = columns.has('time') || columns.has('date')
  const asksPower = [...columns.keys()].some((field) => !timeFields.has(field))
  for (const column of guessed.columns) {
    const already = timeFields.has(column.field) ? asksTime : asksPower
    if (!already && !places.has(column.place)) columns.set(column.field, column)
  }
  const list = [...columns.values()].map((column) => {
    const unit = units[column.field]
    return unit === undefined ? column : { ...column, unit }
  })
  const used = new Set(list.map(({ place }) => place))
  return {
    columns: list,
    others: row.filter((_, place) => !used.has(place)).map((heading) => heading.trim()),
    problems,
  }
}

const timeFields: ReadonlySet<string> = new Set(['time', 'date', 'clock'])

/** Whether a row below the headings holds units and nothing else. */
export function isUnitRow(row: readonly string[]): boolean {
  const words = row.map((cell) => bare(cell)).filter((cell) => cell !== '')
  return (
    words.length > 0 &&
    words.every((cell) => !/\d/.test(cell)) &&
    row.some((cell) =>
      Object.keys(unitFactors).some(
        (unit) => unit !== '' && unit !== '%' && cell.trim().replace(/[[\]()]/g, '') === unit,
      ),
    )
  )
}

function placeOf(row: readonly string[], wanted: string): number | undefined {
  const at = row.findIndex((heading) => heading.trim().toLowerCase() === wanted.trim().toLowerCase())
  if (at >= 0) return at
  const byBare = row.findIndex((heading) => bare(heading) === bare(wanted) && bare(wanted) !== '')
  if (byBare >= 0) return byBare
  const number = /^\d+$/.test(wanted) ? Number(wanted) - 1 : -1
  return number >= 0 && number < row.length ? number : undefined
}

function retake(
  taken: Map<MeasuredField, MeasuredColumn>,
  column: MeasuredColumn,
  field: MeasuredField,
): void {
  taken.delete(column.field)
  taken.set(field, { ...column, field })
}

/** Small letters, marks as blanks, `L1`, `phase A` and `1` behind a letter set apart. */
function bare(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/([a-z])_?(?=l[123]\b)/g, '$1 ')
    .replace(/[^\p{L}\p{N}%φ]+/gu, ' ')
    .trim()
}

function guessOf(heading: string): MeasuredField | undefined {
  const words = bare(heading)
  if (words === '' || strangers.test(words)) return undefined
  const leg = legIn(words)
  const plain = words
    .replace(/\b(?:l|leg|phase|line|ph)? ?[123]\b|\b(?:phase|leg|line) ?[abc]\b|\bl[123]\b/g, ' ')
    .replace(/([a-z])[123]\b/g, '$1')
  const found = headings.find(([, form]) => form.test(plain))?.[0]
  if (found === undefined) return undefined
  return (quantities as readonly string[]).includes(found)
    ? (`${found}${leg}` as MeasuredField)
    : (found as MeasuredField)
}

function legIn(words: string): '' | '1' | '2' | '3' {
  const digit = /\b(?:l|leg|phase|line|ph)? ?([123])\b/.exec(words)?.[1] ?? /[a-z]([123])\b/.exec(words)?.[1]
  if (digit !== undefined) return digit as '1' | '2' | '3'
  const letter = /\b(?:phase|leg|line) ?([abc])\b/.exec(words)?.[1]
  return letter === undefined ? '' : (String('abc'.indexOf(letter) + 1) as '1' | '2' | '3')
}

const unitsOf: Readonly<Record<string, readonly MeasuredUnit[]>> = {
  power: ['kW', 'W'],
  apparent: ['kVA', 'VA'],
  current: ['mA', 'A'],
  volts: ['V'],
  factor: ['%'],
  energy: ['kWh', 'Wh'],
}

/** The unit in a heading: in brackets, or as its last word. */
function unitIn(text: string, field: MeasuredField, alone: boolean): MeasuredUnit | undefined {
  const units = unitsOf[field.replace(/[123]$/, '')] ?? []
  const pieces = alone ? [text.replace(/[[\]()]/g, '').trim()] : text.split(/[\s_,/()[\]:.-]+/)
  const exact = units.find((unit) => pieces.includes(unit))
  if (exact !== undefined) return exact
  const words = pieces.map((piece) => piece.toLowerCase())
  const spelt: Readonly<Record<string, MeasuredUnit>> = {
    watts: 'W',
    watt: 'W',
    kilowatts: 'kW',
    amps: 'A',
    volts: 'V',
  }
  const word = words.find((piece) => spelt[piece] !== undefined && units.includes(spelt[piece]!))
  if (word !== undefined) return spelt[word]
  return units.find((unit) => words.includes(unit.toLowerCase()))
}
