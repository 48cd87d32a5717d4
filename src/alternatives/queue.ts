/**
 * The queue of coming events: a binary heap over columns of numbers.
 *
 * @module
 */

/** An event: when, what (a code), the stamp that must still hold, and the clock value it waits for. */
export interface Queue {
  size: number
  time: Float64Array
  code: Int32Array
  stamp: Int32Array
  /** Value of the clock at which it is due; for calendar events the time itself. */
  due: Float64Array
}

export function makeQueue(): Queue {
  const room = 1024
  return {
    size: 0,
    time: new Float64Array(room),
    code: new Int32Array(room),
    stamp: new Int32Array(room),
    due: new Float64Array(room),
  }
}

export function push(queue: Queue, time: number, code: number, stamp: number, due: number): void {
  if (queue.size === queue.time.length) grow(queue)
  const { time: times } = queue
  let i = queue.size++
  while (i > 0) {
    const parent = (i - 1) >> 1
    if (times[parent]! <= time) break
    move(queue, parent, i)
    i = parent
  }
  put(queue, i, time, code, stamp, due)
}

/** Takes the first event away; read it at index 0 before. */
export function removeFirst(queue: Queue): void {
  const last = --queue.size
  if (last === 0) return
  const { time: times } = queue
  const time = times[last]!
  const code = queue.code[last]!
  const stamp = queue.stamp[last]!
  const due = queue.due[last]!
  let i = 0
  for (;;) {
    let child = 2 * i + 1
    if (child >= last) break
    if (child + 1 < last && times[child + 1]! < times[child]!) child++
    if (times[child]! >= time) break
    move(queue, child, i)
    i = child
  }
  put(queue, i, time, code, stamp, due)
}

function move(queue: Queue, from: number, to: number): void {
  queue.time[to] = queue.time[from]!
  queue.code[to] = queue.code[from]!
  queue.stamp[to] = queue.stamp[from]!
  queue.due[to] = queue.due[from]!
}

function put(queue: Queue, i: number, time: number, code: number, stamp: number, due: number): void {
  queue.time[i] = time
  queue.code[i] = code
  queue.stamp[i] = stamp
  queue.due[i] = due
}

function grow(queue: Queue): void {
  const room = queue.time.length * 2
  const time = new Float64Array(room)
  const code = new Int32Array(room)
  const stamp = new Int32Array(room)
  const due = new Float64Array(room)
  time.set(queue.time)
  code.set(queue.code)
  stamp.set(queue.stamp)
  due.set(queue.due)
  queue.time = time
  queue.code = code
  queue.stamp = stamp
  queue.due = due
}
