/**
 * Words of a job's calendar that hang on its figures.
 *
 * @module
 */

import { plural, sayNumber } from '../words/say.js'

/** "3 days", "half a day" */
export function sayDays(days: number): string {
  return days >= 0.95 && days < 1.05 ? '1 day' : plural(Number(sayNumber(days).replace(',', '')), 'day')
}
