/**
 * What a meter or logger recorded of the power drawn, folded together: never its rows.
 *
 * @module
 */

import * as z from 'zod'
import { common, listOf, nameSchema, oneOf, sha256Schema, text, wholeWithin, within } from './atoms.js'

const seconds = within(0, 4e9, 's')

export const measuredBody = z.strictObject({
  /** Whether the meter saw what the set gives, or all that the boat draws, from shore or battery too. */
  of: oneOf(['set', 'boat']),
  /** The recording itself, by its name and digest; left out: it came live. */
  file: z.strictObject({ name: text(200), sha256: sha256Schema, bytes: wholeWithin(1, 1e12) }).optional(),
  /** Where it came from, where it is no file: the address, or the path that was listened to. */
  source: text(300).optional(),
  rows: wholeWithin(1, 1e10),
  badRows: wholeWithin(0, 1e10),
  /** Measured, and left out between. */
  coveredS: seconds,
  gapS: seconds,
  /** Calendar days of which something was measured. */
  days: wholeWithin(1, 40_000),
  /** Times that power came after none. */
  starts: wholeWithin(0, 1e7),
  energyKwh: within(0, 1e8, 'kWh'),
  mostKw: within(0, 200, 'kW'),
  mostKva: within(0, 400, 'kVA').optional(),
  /** Most of each leg, where each was measured. */
  mostLegKw: listOf(within(0, 200, 'kW'), 2, 3).optional(),
  stepKw: within(0.01, 10, 'kW'),
  /** For each hour of the day, from midnight: seconds at 0 up to one step, one to two, and so on. */
  hours: listOf(z.array(seconds).max(1001), 24, 24),
  /** How its columns were understood. */
  columns: listOf(text(200), 0, 30).optional(),
  /** What had to be taken for granted. */
  assumed: listOf(text(300), 0, 20).optional(),
  /** The meter's own name. */
  meter: nameSchema.optional(),
  ...common,
})
