import { expect, test } from 'vitest'
import { chance, figure, tableText } from './table.js'

const plain = (text: string) => text.replace(new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, 'g'), '')

test('columns are as wide as they need, numbers to the right', () => {
  const columns = [{ head: 'part' }, { head: 'years', align: 'right' as const }]
  expect(
    plain(
      tableText(columns, [
        ['impeller', '3.1'],
        ['elbow', '12'],
      ]),
    ),
  ).toBe('part      years\n───────────────\nimpeller    3.1\nelbow        12')
})

test('a long cell goes on below, between its words', () => {
  const columns = [
    { head: 'what', wrap: 12 },
    { head: 'cost', align: 'right' as const },
  ]
  expect(
    plain(
      tableText(columns, [
        ['renew the elbow and the hose', '700'],
        ['unbreakablebeyondtwelve', '1'],
        ['', ''],
      ]),
    ).split('\n'),
  ).toEqual([
    'what                     cost',
    '─────────────────────────────',
    'renew the                 700',
    '  elbow and',
    '  the hose',
    'unbreakablebeyondtwelve     1',
    '',
  ])
})

test('figures and chances as they are spoken', () => {
  expect([figure(1234.5), figure(99.96), figure(0), figure(0.0049), figure(Number.NaN)]).toEqual([
    '1,235',
    '100',
    '0',
    '0.0049',
    '–',
  ])
  expect([chance(0), chance(1), chance(0.61), chance(1 / 120), chance(1e-9)]).toEqual([
    'none',
    'all',
    '61 in 100',
    '1 in 120',
    '1 in 1,000,000,000',
  ])
})
