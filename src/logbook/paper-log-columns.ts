/**
 * Which column of an old log holds what.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

/** What a column can hold. */
export const paperFields = ['date', 'hours', 'part', 'what', 'by', 'cost', 'remark'] as const

export type PaperField = (typeof paperFields)[number]

/** The heading of the column of each field. */
export type PaperColumns = Readonly<Partial<Record<PaperField, string>>>

/** Headings that are taken for a field, best first. */
const headings: Readonly<Record<PaperField, readonly string[]>> = {
  date: ['date', 'day', 'when', 'dated'],
  hours: ['hours', 'hour meter', 'engine hours', 'meter', 'meter hours', 'hrs', 'hour', 'h', 'run hours'],
  part: ['part', 'parts', 'item', 'component', 'piece'],
  what: [
    'what',
    'work',
    'work done',
    'done',
    'job',
    'description',
    'entry',
    'action',
    'details',
    'event',
    'notes',
    'note',
  ],
  by: ['by', 'who', 'done by', 'by whom', 'mechanic'],
  cost: ['cost', 'price', 'amount', 'paid', 'spent', 'total', 'money', 'costs'],
  remark: ['remark', 'remarks', 'comment', 'comments', 'notes', 'note', 'observations'],
}

export interface FoundColumns {
  /** Place of each field in a row. */
  readonly places: ReadonlyMap<PaperField, number>
  /** Headings as they stand in the file, field by field. */
  readonly columns: PaperColumns
  /** Columns that are none of ours: what they hold goes into the remark under their heading. */
  readonly others: readonly { readonly heading: string; readonly place: number }[]
}

/** Columns from the headings, those that were named first. */
export function findColumns(
  row: readonly string[],
  asked: PaperColumns,
): FoundColumns & { readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const bare = row.map(bareHeading)
  const places = new Map<PaperField, number>()
  const taken = new Set<number>()
  const take = (field: PaperField, place: number) => {
    places.set(field, place)
    taken.add(place)
  }
  const allowed = `one of the headings: ${row.map((heading) => shown(heading.trim())).join(', ')}`
  for (const field of paperFields) {
    const heading = asked[field]
    if (heading === undefined) continue
    const place = bare.indexOf(bareHeading(heading))
    if (place < 0)
      problems.push({ code: 'no-such-column', path: `columns.${field}`, found: shown(heading), allowed })
    else if (taken.has(place)) {
      problems.push({
        code: 'column-twice',
        path: `columns.${field}`,
        found: shown(heading),
        allowed: 'a column for one field only',
      })
    } else take(field, place)
  }
  for (const field of paperFields) {
    if (places.has(field) || asked[field] !== undefined) continue
    const place = headings[field].map((name) => bare.indexOf(name)).find((at) => at >= 0 && !taken.has(at))
    if (place !== undefined) take(field, place)
  }
  if (!places.has('date') && asked.date === undefined) {
    const found = row.map((heading) => shown(heading.trim())).join(', ') || 'an empty first row'
    problems.push({
      code: 'no-date-column',
      path: 'row 1',
      found,
      allowed: 'a first row of headings, one of them "date", or the heading of the dates named',
    })
  }
  const others = row.flatMap((heading, place) =>
    taken.has(place) ? [] : [{ heading: heading.trim(), place }],
  )
  const columns = Object.fromEntries([...places].map(([field, place]) => [field, row[place]?.trim() ?? '']))
  return { places, columns, others, problems }
}

/** A heading without case, unit in brackets, currency and marks. */
function bareHeading(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/\(.*?\)|\[.*?\]/g, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}
