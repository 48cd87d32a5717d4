/**
 * The queue of coming events: a binary heap of times, each with the slot in which the rest of its event is kept.
 *
 * @module
 */

/** Events that may wait at once in the beginning; doubled when they do not suffice. */
const firstRoom = 1024

/** An event: when, what (a code), the stamp that must still hold, and the clock value it waits for. */
export interface Queue {
  size: number
  /** Heap: earliest first. */
  time: Float64Array
  /** Beside each time the slot of its event; past `size` the slots that are free. */
  slot: Int32Array
  code: Int32Array
  stamp: Int32Array
  /** Value of the clock at which it is due; for calendar events the time itself. */
  due: Float64Array
}

export function makeQueue(): Queue {
  return {
    size: 0,
    time: new Float64Array(firstRoom),
    slot: Int32Array.from({ length: firstRoom }, (_, i) => i),
    code: new Int32Array(firstRoom),
    stamp: new Int32Array(firstRoom),
    due: new Float64Array(firstRoom),
  }
}

export function push(queue: Queue, time: number, code: number, stamp: number, due: number): void {
  if (queue.size === queue.time.length) grow(queue)
  const { time: times, slot: slots } = queue
  let i = queue.size++
  const slot = slots[i]!
  queue.code[slot] = code
  queue.stamp[slot] = stamp
  queue.due[slot] = due
  while (i > 0) {
    const parent = (i - 1) >> 1
    const above = times[parent]!
    if (above <= time) break
    times[i] = above
    slots[i] = slots[parent]!
    i = parent
  }
  times[i] = time
  slots[i] = slot
}

/** Takes the first event away; read it at slot `slot[0]` before, or after until the next is pushed. */
export function removeFirst(queue: Queue): void {
  const { time: times, slot: slots } = queue
  const last = --queue.size
  const freed = slots[0]!
  const time = times[last]!
  const slot = slots[last]!
  let i = 0
  for (;;) {
    let child = 2 * i + 1
    if (child >= last) break
    let next = times[child]!
    if (child + 1 < last) {
      const other = times[child + 1]!
      if (other < next) {
        next = other
        child++
      }
    }
    if (next >= time) break
    times[i] = next
    slots[i] = slots[child]!
    i = child
  }
  times[i] = time
  slots[i] = slot
  slots[last] = freed
}

function grow(queue: Queue): void {
  const room = queue.time.length * 2
  const time = new Float64Array(room)
  const slot = Int32Array.from({ length: room }, (_, i) => i)
  const code = new Int32Array(room)
  const stamp = new Int32Array(room)
  const due = new Float64Array(room)
  time.set(queue.time)
  slot.set(queue.slot)
  code.set(queue.code)
  stamp.set(queue.stamp)
  due.set(queue.due)
  queue.time = time
  queue.slot = slot
  queue.code = code
  queue.stamp = stamp
  queue.due = due
}
