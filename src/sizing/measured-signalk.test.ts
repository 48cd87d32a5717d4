import { expect, test } from 'vitest'
import { readSignalK, type SignalKOptions } from './measured-signalk.js'

const moment = (second: number) => new Date(Date.UTC(2024, 6, 1, 10, 0, second)).toISOString()
const message = (second: number, values: Record<string, unknown>) =>
  JSON.stringify({
    context: 'vessels.self',
    updates: [
      { timestamp: moment(second), values: Object.entries(values).map(([path, value]) => ({ path, value })) },
    ],
  })

function read(lines: readonly string[], options: SignalKOptions = {}) {
  const reader = readSignalK(options)
  for (const line of lines) reader.take(line)
  return reader.end()
}

const genset = 'electrical.ac.genset.phase'

test('watts of two phases are added up, and everything else in the stream is passed over', () => {
  const lines = [
    '{"name":"a server","version":"1.0","self":"vessels.urn"}',
    ...[...Array(20).keys()].map((n) =>
      message(n, {
        [`${genset}.A.realPower`]: 1000,
        [`${genset}.B.realPower`]: 500 + n,
        'navigation.speedOverGround': 2.1,
        [`${genset}.A.frequency`]: 50,
      }),
    ),
    '',
  ]
  const measured = read(lines)
  expect(measured.ok && measured.folded).toMatchObject({
    samples: 20,
    coveredS: 20,
    mostKW: expect.closeTo(1.519, 9),
    mostLegKW: [1, 0.519],
  })
  expect(measured.ok && measured.read.columns).toEqual([
    { field: 'power', heading: 'electrical.ac.genset.phase.*.realPower', unit: 'W' },
  ])
})

test('current, voltage and power factor, told one after another', () => {
  const lines = [...Array(20).keys()].flatMap((n) => [
    message(3 * n, { [`${genset}.single.current`]: 10 }),
    message(3 * n + 1, { [`${genset}.single.lineNeutralVoltage`]: 230 }),
    message(3 * n + 2, { [`${genset}.single.powerFactor`]: 0.8 }),
  ])
  const measured = read(lines)
  expect(measured.ok && measured.folded.mostKVA).toBeCloseTo(2.3, 9)
  expect(measured.ok && measured.folded.seconds[10]![18]).toBeGreaterThan(50)
})

test('a recording whose lines begin with a time, and messages without one', () => {
  const bare = JSON.stringify({ updates: [{ values: [{ path: `${genset}.A.realPower`, value: 2000 }] }] })
  const lines = [...Array(10).keys()].map((n) => `${Date.UTC(2024, 6, 1, 10) + 1000 * n};I;${bare}`)
  const measured = read([...lines, bare, 'tea', '{"updates":[{'])
  expect(measured.ok && measured.folded).toMatchObject({
    samples: 10,
    coveredS: 10,
    kWh: expect.closeTo(20 / 3600, 9),
  })
  expect(measured.ok && measured.read).toMatchObject({
    badRows: 3,
    bad: [
      { line: 11, code: 'no-time' },
      { line: 12, code: 'broken' },
      { line: 13, code: 'broken' },
    ],
  })
})

test('of several sources one has to be named', () => {
  const both = [...Array(5).keys()].map((n) =>
    message(n, { [`${genset}.A.realPower`]: 1000, 'electrical.ac.shore.phase.A.realPower': 300 }),
  )
  expect(read(both)).toMatchObject({
    ok: false,
    problems: [{ code: 'several-sources', found: 'electrical.ac.genset, electrical.ac.shore' }],
  })
  const measured = read(both, { path: 'electrical.ac.shore' })
  expect(measured.ok && measured.folded.mostKW).toBe(0.3)
  expect(read([message(0, { 'environment.water.temperature': 290 })])).toMatchObject({
    ok: false,
    problems: [{ code: 'no-power' }],
  })
})

test('hours of the day are those of the boat', () => {
  const measured = read(
    [...Array(5).keys()].map((n) => message(n, { [`${genset}.A.realPower`]: 1000 })),
    { utcOffsetHours: -4 },
  )
  expect(measured.ok && measured.folded.seconds[6]![10]).toBe(5)
})
