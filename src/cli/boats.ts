/**
 * `gensettle boats`: whose logs there are.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { setsOf } from '../register/register.js'
import { allBoats, type DataOption, readCurrent, withReading } from './opened.js'
import { today } from './places.js'
import { type Result, refuse } from './result.js'
import { sayDates } from './say-entry.js'
import { tableText } from './table.js'

export function listBoats(options: DataOption): Promise<Result> {
  return withReading(options, (store) => {
    const named = allBoats(store)
    const problems: Problem[] = []
    const boats = named.flatMap((boat) => {
      const read = readCurrent(boat)
      if (!read.ok) {
        problems.push(...read.problems)
        return []
      }
      const first = read.entries[0]
      const last = read.entries.at(-1)
      return [
        {
          boat: boat.name,
          demonstration: boat.demonstration,
          sets: setsOf(read.entries, today()),
          entries: read.entries.length,
          ...(first && last ? { first: first.from, last: last.until } : {}),
        },
      ]
    })
    if (problems.length > 0) return refuse(...problems)
    const columns = ['boat', 'whose', 'sets', 'entries', 'log'].map((head) => ({ head }))
    const rows = boats.map(({ boat, demonstration, sets, entries, first = '', last = '' }) => [
      boat,
      demonstration ? 'demonstration, read only' : 'yours',
      sets.join(', '),
      String(entries),
      sayDates({ from: first, until: last }),
    ])
    const none = boats.some(({ demonstration }) => !demonstration)
      ? ''
      : '\nNone of them is yours yet. Begin with: gensettle log add set --boat NAME --set main --rating-kw 7 --rpm 1500 --built 2004'
    return {
      ok: true,
      json: { type: 'gensettle/boats', version: 1, boats },
      text: `${boats.length === 0 ? 'No boats.' : tableText(columns, rows)}${none}`,
    }
  })
}
