/**
 * Numbers that stand for words in the compiled model; the simulator's kernel shares them.
 *
 * @module
 */

export const HOURS = 0
export const YEARS = 1
export const STARTS = 2

/** Outcomes, the stronger ones higher: a part that is in an event for several reasons takes the strongest. */
export const PATCHED = 0
export const CLEARED = 1
export const RECONDITIONED = 2
export const RENEWED = 3

/** Kinds of amount: fixed, lognormal (median, log-sd), exponential (mean). */
export const FIXED = 0
export const LOGNORMAL = 1
export const EXPONENTIAL = 2

/** Kinds of delay from defect to failure; a lognormal one has a median and a log-sd, a Weibull one a scale and a shape. */
export const NO_DELAY = 0
export const LOGNORMAL_DELAY = 1
export const WEIBULL_DELAY = 2

/** What an alternative does now. */
export const LEAVE = 0
export const MEND = 1
export const REPLACE = 2
export const GIVE_UP = 3

/** What is done above a repair limit, where it is not the number of the candidate that is fitted. */
export const NO_LIMIT = -2
export const GIVE_UP_ABOVE = -1

/** A word of 32 bits shifted right by this is its slice in a row of 256. */
export const sliceShift = 24
