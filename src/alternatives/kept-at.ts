/**
 * Places of the quantities kept of each history; money is discounted unless it says otherwise.
 *
 * @module
 */

export const cost = 0
export const now = 1
export const failures = 2
export const planned = 3
export const upkeep = 4
export const fuel = 5
export const power = 6
export const intrusion = 7
export const replacement = 8
export const giveUp = 9
export const resale = 10
/** Overrun factor of the quote: what one unit on the quote costs. */
export const quoteFactor = 11
export const ownHours = 12
export const paidHours = 13
export const trips = 14
/** Not discounted. [days] */
export const daysWithout = 15
export const stops = 16
export const sameDayStops = 17
export const dangers = 18
/** Not discounted: the dearest of the years from now. */
export const largestYear = 19
/** First replacement; −1 if none. [years] */
export const replacedAt = 20
export const replacements = 21
/** First visible failure: mode (−1 none), when, and what its event cost (not discounted). */
export const firstMode = 22
export const firstTime = 23
export const firstCost = 24
/** What could be learnt of the present set: ln κ, and the cost put at risk by the states drawn of the job's parts and of the others. */
export const kappaLog = 25
export const riskOfJob = 26
export const riskOfOthers = 27
/** Failures that leave the set running short of what it should give. */
export const derates = 28
