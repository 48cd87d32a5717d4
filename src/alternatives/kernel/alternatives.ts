/**
 * What each alternative does now, and from then on.
 *
 * @module
 */

import { Amounts } from './amounts'
import { bytes, doubles, integers } from './sections'

/** LEAVE, MEND, REPLACE or GIVE_UP. */
export let now = changetype<StaticArray<u8>>(0)
/** Candidate that is fitted now. */
export let replaceWith = changetype<StaticArray<i32>>(0)
/** Candidate that is fitted later, −1 if none, and in which year. */
export let laterWith = changetype<StaticArray<i32>>(0)
export let laterYear = changetype<StaticArray<f64>>(0)
/** Candidate that is fitted instead of a mend above the limit, or GIVE_UP_ABOVE, or NO_LIMIT. */
export let above = changetype<StaticArray<i32>>(0)
/** Three knots of the limit of each. */
export let knots = changetype<StaticArray<f64>>(0)

/** Rows of what is mended now. */
export let itemFrom = changetype<StaticArray<i32>>(0)
export let itemPart = changetype<StaticArray<i32>>(0)
export let itemMode = changetype<StaticArray<i32>>(0)
export let itemOutcome = changetype<StaticArray<u8>>(0)
export let itemQuality = changetype<StaticArray<f64>>(0)
export let itemAgesLess = changetype<StaticArray<f64>>(0)
/** 1 with a quote, and with a quote or a usual price; else it is priced from the repairs of its parts. */
export let isQuoted = changetype<StaticArray<u8>>(0)
export let isPriced = changetype<StaticArray<u8>>(0)
export let price = changetype<Amounts>(0)
export let besides = changetype<Amounts>(0)
export let wait = changetype<Amounts>(0)
export let days = changetype<Amounts>(0)
/** 1 if the days of work are given; else they follow from the work. */
export let areDaysGiven = changetype<StaticArray<u8>>(0)
export let overrunMedian = changetype<StaticArray<f64>>(0)
export let overrunLogSd = changetype<StaticArray<f64>>(0)
export let intrusionChance = changetype<StaticArray<f64>>(0)

export function readAlternatives(): void {
  now = bytes('alternatives.now')
  replaceWith = integers('alternatives.replaceWith')
  laterWith = integers('alternatives.laterWith')
  laterYear = doubles('alternatives.laterYear')
  above = integers('alternatives.above')
  knots = doubles('alternatives.knots')
  itemFrom = integers('alternatives.itemFrom')
  itemPart = integers('alternatives.itemPart')
  itemMode = integers('alternatives.itemMode')
  itemOutcome = bytes('alternatives.itemOutcome')
  itemQuality = doubles('alternatives.itemQuality')
  itemAgesLess = doubles('alternatives.itemAgesLess')
  isQuoted = bytes('alternatives.isQuoted')
  isPriced = bytes('alternatives.isPriced')
  price = new Amounts('alternatives.price')
  besides = new Amounts('alternatives.besides')
  wait = new Amounts('alternatives.wait')
  days = new Amounts('alternatives.days')
  areDaysGiven = bytes('alternatives.areDaysGiven')
  overrunMedian = doubles('alternatives.overrunMedian')
  overrunLogSd = doubles('alternatives.overrunLogSd')
  intrusionChance = doubles('alternatives.intrusionChance')
}
