import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { clear, makeQueue, push, type Queue, takeFirst } from './queue.js'

const horizonYears = 8

/** Takes everything out: the codes in the order in which they come. */
function drain(queue: Queue): number[] {
  const codes: number[] = []
  while (queue.size > 0) codes.push(queue.code[takeFirst(queue)]!)
  return codes
}

const times = fc.array(fc.double({ min: 0, max: 7.9999, noNaN: true }), { maxLength: 3000 })

test('events come in the order of their times, those of one moment in the order put in', () => {
  fc.assert(
    fc.property(times, (list) => {
      const queue = makeQueue(horizonYears)
      list.forEach((time, i) => {
        push(queue, time, i, 0, time, 0)
      })
      const wanted = list.map((time, i) => ({ time, i })).sort((a, b) => a.time - b.time || a.i - b.i)
      expect(drain(queue)).toEqual(wanted.map(({ i }) => i))
    }),
  )
})

test('events put in while others are taken come at their time', () => {
  fc.assert(
    fc.property(
      times,
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1 }),
      (list, later) => {
        const queue = makeQueue(horizonYears)
        list.forEach((time, i) => {
          push(queue, time, i, 7, time, 2)
        })
        let last = 0
        let left = later.length
        while (queue.size > 0) {
          const place = takeFirst(queue)
          const time = queue.time[place]!
          expect(time).toBeGreaterThanOrEqual(last)
          expect([queue.stamp[place], queue.pauses[place], queue.due[place]]).toEqual([7, 2, time])
          last = time
          const next = time + later[--left < 0 ? 0 : left]! * 0.1
          if (left >= 0 && next < horizonYears) push(queue, next, 0, 7, next, 2)
        }
      },
    ),
  )
})

test('a queue cleared in the middle is as good as new', () => {
  const queue = makeQueue(horizonYears)
  for (let i = 0; i < 5000; i++) push(queue, (i % 79) / 10, i, 0, 0, 0)
  for (let i = 0; i < 1234; i++) takeFirst(queue)
  clear(queue)
  expect(queue.size).toBe(0)
  push(queue, 3, 1, 0, 0, 0)
  push(queue, 0, 2, 0, 0, 0)
  expect(drain(queue)).toEqual([2, 1])
})
