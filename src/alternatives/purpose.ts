/**
 * What a draw of the simulator is for. The two words of one draw serve two ends, named after "and".
 *
 * @module
 */

/** Index of the starting state, and onset of the first life. */
export const start = 0
/** Onsets of a life of a mode with an even number, and of its neighbour's life of the same number. */
export const life = 1
/** A check in each word: in its high bits how good it is at this defect, in the others the looks until found. */
export const check = 2
/** A check in each word: the looks until a failure unnoticed is found. */
export const checkFailed = 3
/** Whether a failure stops the set, and whether it is met at fitting out. */
export const failure = 4
/** Whether the set is rested. */
export const rest = 5
/** Per link: whether it hits. */
export const link = 6
/** Scale of a mode in a new set. */
export const scale = 7
/** Delay of a patched defect. */
export const patch = 8
/** Overrun of a job. */
export const overrun = 9
/** Price, and which supply. */
export const price = 16
/** Days of the supply, and whether the wrong part comes. */
export const supply = 17
/** Workshop days, and days of the second supply. */
export const workshop = 18
/** Whether work puts in a fault, and where. */
export const intrusion = 19
/** Its mode, and when it shows. */
export const intrusionMode = 20
/** Whether a service is done, and whether the next one is. */
export const service = 21
/** Delay of a life. */
export const delay = 22
/** Node of κ, and the boat's part in it. */
export const kappa = 32
/** The new set's part of κ. */
export const newSet = 33
/** Overrun of the quote, and what it leaves out. */
export const quote = 34
/** Days of the job in hand, and its wait. */
export const quoteDays = 35
/** Price of a replacement, and its installation. */
export const replacement = 36
/** Its lead time, and days to install. */
export const replacementDays = 37
/** Number of infant faults. */
export const infants = 38
/** Per infant fault: part and mode. */
export const infant = 39
/** Per infant fault: when it shows. */
export const infantOnset = 40
/** Cost of giving up. */
export const giveUp = 41
