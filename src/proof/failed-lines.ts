/**
 * Stop lines that a failed test holds open, as far as the register's readings tell.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { SetRegister } from '../register/register-types.js'
import { limitsOf } from './limits.js'
import { latestResults, readingsIn, whichOf } from './results.js'
import { proofTestOf } from './tests.js'

/** What is read of a catalogue to judge the readings of a log. */
export type ProofBook = Pick<Catalogue, 'limits' | 'origins' | 'sources' | 'owed'>

export interface FailedLine {
  readonly line: string
  readonly hazard: string
  readonly test: string
  readonly part?: string
  readonly entry: string
  /** What was found, with its limit. */
  readonly says: string
}

/** Lines of the table with the latest readings that open them, in the order of the table; each reading once. */
export function failedLinesIn(
  { readings, setFacts }: Pick<SetRegister, 'readings' | 'setFacts'>,
  book: ProofBook,
): FailedLine[] {
  const limits = limitsOf(book)
  const results = [...readings]
    .sort((a, b) => a.day - b.day)
    .flatMap((reading) => {
      const test = proofTestOf(reading.test)
      if (test === undefined) return []
      const read = readingsIn(reading, test, setFacts)
      const which = whichOf(test, read)
      const { band, says } = test.judge(read, limits)
      const { entry, part } = reading
      return [
        {
          entry,
          test: test.id,
          band,
          says,
          ...(part === undefined ? {} : { part }),
          ...(which === undefined ? {} : { which }),
        },
      ]
    })
  const latest = latestResults(results)
  return book.owed.lines.flatMap(({ line, hazard, opens }) =>
    latest.flatMap(({ band, test, says, entry, part }) => {
      const isOpen = opens.some((one) => one.test === test && band !== undefined && one.bands.includes(band))
      return isOpen ? [{ line, hazard, test, entry, says, ...(part === undefined ? {} : { part }) }] : []
    }),
  )
}
