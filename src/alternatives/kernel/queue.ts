/**
 * The queue of coming events, in equal slices of the time to the horizon: a push looks into one slice only, and what
 * comes first stands at the head of the next slice that is not empty.
 *
 * Source: R. Brown, "Calendar queues", Communications of the ACM 31 (1988); recalled.
 *
 * @module
 */

/** A history has one or two events waiting in each, so that the lists stay short. */
const slices = 512

/** Events that wait. */
export let size: i32 = 0

/** An event at a place: when, what (a code), the stamp that must still hold, and the clock value it waits for. */
export let time = new StaticArray<f64>(1024)
export let code = new StaticArray<i32>(1024)
export let stamp = new StaticArray<i32>(1024)
/** Value of the clock at which it is due; for calendar events the time itself. */
export let due = new StaticArray<f64>(1024)
/** How often the clocks had stood still when it was put in. */
export let pauses = new StaticArray<i32>(1024)

/** The event after each in its slice, or the next free place; −1 ends both lists. */
let next = new StaticArray<i32>(1024)
let free: i32 = -1
/** Places that were never used begin here. */
let unused: i32 = 0
let room: i32 = 1024
/** First event of each slice, −1 if none. */
const first = new StaticArray<i32>(slices)
/** The slice that the last event came from: nothing waits in those before it. */
let slice: i32 = 0
let slicesPerYear: f64 = 0

/** Makes ready for events from 0 up to `horizonYears`. */
export function openQueue(horizonYears: f64): void {
  slicesPerYear = <f64>(slices - 1) / horizonYears
  size = 1
  clearQueue()
}

export function clearQueue(): void {
  slice = 0
  free = -1
  unused = 0
  if (size === 0) return
  size = 0
  for (let i = 0; i < slices; i++) first[i] = -1
}

/** Puts an event in at `at`, which is not before the last event taken. Of events at one moment the first put in comes first. */
export function push(at: f64, what: i32, withStamp: i32, dueAt: f64, afterPauses: i32): void {
  const place = takePlace()
  size++
  time[place] = at
  code[place] = what
  stamp[place] = withStamp
  due[place] = dueAt
  pauses[place] = afterPauses
  const into = <i32>(at * slicesPerYear)
  let before = -1
  let after = first[into]
  while (after >= 0 && time[after] <= at) {
    before = after
    after = next[after]
  }
  next[place] = after
  if (before < 0) first[into] = place
  else next[before] = place
}

/** Takes the first event of a queue that is not empty; its place may be read until the next is put in. */
export function takeFirst(): i32 {
  while (first[slice] < 0) slice++
  const place = first[slice]
  size--
  first[slice] = next[place]
  next[place] = free
  free = place
  return place
}

function takePlace(): i32 {
  if (free >= 0) {
    const place = free
    free = next[place]
    return place
  }
  if (unused === room) grow()
  return unused++
}

function grow(): void {
  const wider = room * 2
  time = copyOf(time, new StaticArray<f64>(wider))
  due = copyOf(due, new StaticArray<f64>(wider))
  code = copyOf(code, new StaticArray<i32>(wider))
  stamp = copyOf(stamp, new StaticArray<i32>(wider))
  pauses = copyOf(pauses, new StaticArray<i32>(wider))
  next = copyOf(next, new StaticArray<i32>(wider))
  room = wider
}

function copyOf<T>(from: T, into: T): T {
  memory.copy(changetype<usize>(into), changetype<usize>(from), <usize>room * sizeof<valueof<T>>())
  return into
}
