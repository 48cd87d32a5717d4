/**
 * Doors to single pieces of the simulator's kernel, so that each can be held to what it should be.
 *
 * @module
 */

import {
  Amounts,
  drawAmount,
  meanAmount,
  normalFrom,
  readNormal,
} from '../../../src/alternatives/kernel/amounts'
import {
  counterOfLife,
  counterOfUse,
  threefry,
  uniformFrom,
  uniformFromLow,
  word0,
  word1,
} from '../../../src/alternatives/kernel/draws'
import { normalCdf, normalQuantile } from '../../../src/alternatives/kernel/normal'
import * as queue from '../../../src/alternatives/kernel/queue'
import { openSections } from '../../../src/alternatives/kernel/sections'

export { counterOfLife, counterOfUse, normalCdf, normalFrom, normalQuantile, uniformFrom, uniformFromLow }

export function draw(key0: u32, key1: u32, counter0: u32, counter1: u32): u64 {
  threefry(key0, key1, counter0, counter1)
  return ((<u64>word1) << 32) | <u64>word0
}

export function openQueue(horizonYears: f64): void {
  queue.openQueue(horizonYears)
}

export function clearQueue(): void {
  queue.clearQueue()
}

export function push(at: f64, code: i32): void {
  queue.push(at, code, 7, at, 2)
}

/** The code of the first event, −1 of an empty queue or where an event has not what was put in with it. */
export function takeFirst(): i32 {
  if (queue.size === 0) return -1
  const place = queue.takeFirst()
  const whole =
    queue.stamp[place] === 7 && queue.pauses[place] === 2 && queue.due[place] === queue.time[place]
  return whole ? queue.code[place] : -1
}

let amounts = changetype<Amounts>(0)

export function reserve(bytes: usize): usize {
  return heap.alloc(bytes)
}

export function openAmounts(at: usize): void {
  openSections(at)
  readNormal()
  amounts = new Amounts('amounts')
}

export function amountFrom(i: i32, word: u32): f64 {
  return drawAmount(amounts, i, word)
}

export function meanOf(i: i32): f64 {
  return meanAmount(amounts, i)
}
