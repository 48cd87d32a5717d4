/**
 * The queue of coming events, in equal slices of the time to the horizon: a push looks into one slice only, and what
 * comes first stands at the head of the next slice that is not empty.
 *
 * Source: R. Brown, "Calendar queues", Communications of the ACM 31 (1988); recalled.
 *
 * @module
 */

/** Events that may wait at once in the beginning; doubled when they do not suffice. */
const firstRoom = 1024
/** A history has one or two events waiting in each, so that the lists stay short. */
const slices = 512

/** An event: when, what (a code), the stamp that must still hold, and the clock value it waits for. */
export interface Queue {
  size: number
  /** The slice that the last event came from: nothing waits in those before it. */
  slice: number
  readonly slicesPerYear: number
  /** First event of each slice, −1 if none. */
  readonly first: Int32Array
  /** The event after each in its slice, or the next free place; −1 ends both lists. */
  next: Int32Array
  free: number
  time: Float64Array
  code: Int32Array
  stamp: Int32Array
  /** Value of the clock at which it is due; for calendar events the time itself. */
  due: Float64Array
  /** How often the clocks had stood still when it was put in. */
  pauses: Int32Array
}

/** A queue for events from 0 up to `horizonYears`. */
export function makeQueue(horizonYears: number): Queue {
  return {
    size: 0,
    slice: 0,
    slicesPerYear: (slices - 1) / horizonYears,
    first: new Int32Array(slices).fill(-1),
    next: freePlaces(firstRoom, 0),
    free: 0,
    time: new Float64Array(firstRoom),
    code: new Int32Array(firstRoom),
    stamp: new Int32Array(firstRoom),
    due: new Float64Array(firstRoom),
    pauses: new Int32Array(firstRoom),
  }
}

/** Places from `from` on, each followed by the next, the last by none. */
function freePlaces(room: number, from: number): Int32Array {
  return Int32Array.from({ length: room }, (_, i) => (i < from || i === room - 1 ? -1 : i + 1))
}

export function clear(queue: Queue): void {
  queue.slice = 0
  if (queue.size === 0) return
  queue.size = 0
  queue.first.fill(-1)
  queue.next = freePlaces(queue.next.length, 0)
  queue.free = 0
}

/** Puts an event in at `time`, which is not before the last event taken. Of events at one moment the first put in comes first. */
export function push(
  queue: Queue,
  time: number,
  code: number,
  stamp: number,
  due: number,
  pauses: number,
): void {
  if (queue.free < 0) grow(queue)
  const { time: times, next } = queue
  const place = queue.free
  queue.free = next[place]!
  queue.size++
  times[place] = time
  queue.code[place] = code
  queue.stamp[place] = stamp
  queue.due[place] = due
  queue.pauses[place] = pauses
  const slice = (time * queue.slicesPerYear) | 0
  let before = -1
  let after = queue.first[slice]!
  while (after >= 0 && times[after]! <= time) {
    before = after
    after = next[after]!
  }
  next[place] = after
  if (before < 0) queue.first[slice] = place
  else next[before] = place
}

/** Takes the first event of a queue that is not empty; its place may be read until the next is put in. */
export function takeFirst(queue: Queue): number {
  const { first, next } = queue
  let slice = queue.slice
  while (first[slice]! < 0) slice++
  const place = first[slice]!
  queue.slice = slice
  queue.size--
  first[slice] = next[place]!
  next[place] = queue.free
  queue.free = place
  return place
}

function grow(queue: Queue): void {
  const full = queue.next.length
  const room = full * 2
  const next = freePlaces(room, full)
  next.set(queue.next)
  queue.next = next
  queue.free = full
  queue.time = wider(queue.time, new Float64Array(room))
  queue.code = wider(queue.code, new Int32Array(room))
  queue.stamp = wider(queue.stamp, new Int32Array(room))
  queue.due = wider(queue.due, new Float64Array(room))
  queue.pauses = wider(queue.pauses, new Int32Array(room))
}

function wider<T extends Float64Array | Int32Array>(values: T, into: T): T {
  into.set(values)
  return into
}
