import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/served-folder.js'
import { wayOutOf } from './apart-out.js'

const catalogue = shippedCatalogue()
const facts = { ratingKw: 10, rpm: 1500 }
const row = catalogue.wholeSet.size.find(({ ratingKW }) => ratingKW === 10)!

test('the set goes through end on: its two shorter edges against the opening', () => {
  const [, height, width] = [row.lengthMm, row.heightMm, row.widthMm].sort((a, b) => b - a) as [
    number,
    number,
    number,
  ]
  const way = (widthMm: number, heightMm: number) =>
    wayOutOf(catalogue, {
      facts,
      space: {
        wayOut: [
          { widthMm, heightMm },
          { name: 'door', widthMm: 2000, heightMm: 2000 },
        ],
      },
    })
  expect(way(width, height)).toMatchObject({ passage: 'passes', tightest: { overMm: 0 } })
  expect(way(height, width)).toMatchObject({ passage: 'passes' })
  expect(way(width - 25, height)).toMatchObject({ passage: 'too-large', tightest: { overMm: 25 } })
  expect(way(width, height).edgesMm).toEqual([row.lengthMm, row.heightMm, row.widthMm].sort((a, b) => b - a))
})

test('it is lifted where the heaviest that it may be is carried', () => {
  const { weightKg } = wayOutOf(catalogue, { facts, space: {} })
  const { fixedKg, kgPerKW } = catalogue.wholeSet.weight
  expect(weightKg!.typical).toBe(Math.round(fixedKg + 10 * kgPerKW))
  expect(wayOutOf(catalogue, { facts, space: { liftKg: weightKg!.high + 1 } }).lift).toBe('passes')
  expect(wayOutOf(catalogue, { facts, space: { liftKg: weightKg!.typical } }).lift).toBe('too-large')
})

test('nothing told, nothing claimed', () => {
  expect(wayOutOf(catalogue, { facts: {}, space: {} })).toEqual({
    passage: 'cannot-tell',
    lift: 'cannot-tell',
  })
  expect(wayOutOf(catalogue, { facts, space: {} })).toMatchObject({
    passage: 'cannot-tell',
    lift: 'cannot-tell',
  })
})
