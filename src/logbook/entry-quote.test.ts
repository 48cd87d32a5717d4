import { expect, test } from 'vitest'
import { quoteProblems } from './entry-quote.js'

const offer = {
  job: 'rewind',
  amount: 1000,
  firmness: 'firm',
  subjectToStripDown: false,
  excludes: ['removal'],
  covers: { parts: [] },
}
const codes = (body: object) =>
  quoteProblems({ ...offer, ...body }).map(({ code, path }) => `${code} ${path}`)

test('a quote as quotes were before, and one that says everything, hang together', () => {
  expect(codes({})).toEqual([])
  expect(
    codes({
      includes: ['testing'],
      days: 20,
      daysOut: 12,
      stagePayments: [
        { when: 'order', share: 0.3 },
        { at: '2026-12-01', amount: 400 },
        { when: 'tested', share: 0.3 },
      ],
    }),
  ).toEqual([])
  // thirds as they are written
  expect(
    codes({ stagePayments: Array.from({ length: 3 }, () => ({ when: 'order', share: 0.334 })) }),
  ).toEqual([])
})

test('everything that contradicts itself is named at once', () => {
  expect(
    codes({
      includes: ['removal', 'testing'],
      days: 10,
      readyBy: '2026-12-01',
      daysOut: 12,
      stagePayments: [
        { when: 'order', share: 0.6, amount: 10 },
        { share: 0.5 },
        { when: 'tested', at: '2026-12-01', share: 0.1 },
      ],
    }),
  ).toEqual([
    'in-and-out body.includes',
    'told-twice body.readyBy',
    'longer-than-the-whole body.daysOut',
    'one-of-two body.stagePayments.0',
    'one-of-two body.stagePayments.1',
    'one-of-two body.stagePayments.2',
    'more-than-the-price body.stagePayments',
  ])
})

test('amounts in stages are held against the price with its tax', () => {
  const stages = (amount: number) => ({ stagePayments: [{ when: 'order', amount }] })
  expect(codes(stages(1100))).toEqual(['more-than-the-price body.stagePayments'])
  expect(codes({ ...stages(1100), tax: { included: false, percent: 20 } })).toEqual([])
})

test('what is no stage at all is left to the form', () => {
  expect(codes({ stagePayments: [null, 3] })).toEqual([])
  expect(codes({ stagePayments: 'all' })).toEqual([])
})
