import fc from 'fast-check'
import { expect, test } from 'vitest'
import { stepKW } from './measured-fold.js'
import { type MeasuredOptions, readMeasured } from './measured-table.js'
import { timeFormOf, timeReader } from './measured-times.js'

function read(text: string, options: MeasuredOptions = {}, pieces = [text.length]) {
  const reader = readMeasured(options)
  let from = 0
  for (const length of [...pieces, text.length]) {
    reader.take(text.slice(from, from + length))
    from += length
  }
  return reader.end()
}

function readWell(text: string, options: MeasuredOptions = {}) {
  const measured = read(text, options)
  if (!measured.ok) throw new Error(JSON.stringify(measured.problems))
  return measured
}

/** Seconds at a step, in an hour of the day. */
const at = (measured: ReturnType<typeof readWell>, hour: number, kW: number) =>
  measured.folded.seconds[hour]![Math.floor(kW / stepKW + 1e-9)]

/** A minute's rows from ten in the morning, each with what comes behind the time. */
function minutes(head: string, values: readonly string[], separator = ','): string {
  const rows = values.map((value, n) => `2024-07-01 10:${String(n).padStart(2, '0')}:00${separator}${value}`)
  return [head, ...rows, ''].join('\n')
}

test.each([
  ['watts in brackets', minutes('Time stamp,Power (W)', ['1500', '2500']), {}],
  [
    'kilowatts, other columns beside',
    minutes('timestamp,Freq Hz,Active power kW,Temperature', ['50,1.5,20', '50,2.5,21']),
    {},
  ],
  ['no unit, told by size', minutes('Date/Time,Load', ['1500', '2500']), {}],
  ['current and volts', minutes('DateTime,Volts,Amps', ['230,6.53', '230,10.88']), {}],
  ['current alone, volts told', minutes('time,I [A]', ['6.53', '10.88']), { volts: 230 }],
  ['apparent power with its factor', minutes('time,S (kVA),PF', ['2,0.75', '2.5,1']), {}],
  ['by leg', minutes('time,P_L1 [W],P_L2 [W]', ['1000,500', '500,2000']), {}],
  [
    'by leg, current and volts',
    minutes('time;I1/A;I2/A;U_L1 (V);U_L2 (V)', ['10;2,5;120;120', '10;10,84;120;120'], ';'),
    {},
  ],
  ['comma decimals', minutes('time;Power (kW)', ['1,5', '2,5'], ';'), {}],
  [
    'units in a row below',
    minutes('time\tTotal', ['x\ty'], '\t')
      .replace(/2024.*x\ty/, 's\tW\n2024-07-01 10:00:00\t1500\n2024-07-01 10:01:00\t2500')
      .replace('Total', 'Demand'),
    {},
  ],
  ['preamble above', `Logger 7\nserial,0042\n\n${minutes('Time,Watts', ['1500', '2500'])}`, {}],
  ['quoted', minutes('"Time","Power, total (W)"', ['"1,500"', '"2,500"']), {}],
  [
    'headings that say nothing',
    minutes('aaa,bbb', ['1500', '2500']),
    { columns: { time: 'aaa', power: 'bbb' }, units: { power: 'W' } },
  ],
  [
    'no headings at all',
    minutes('', ['1500', '2500']),
    { columns: { time: '1', power: '2' }, units: { power: 'W' } },
  ],
  ['energy counted', minutes('time,Energy (Wh)', ['100000', '100025', '100066.66666667']), {}],
] as const)('%s', (_, text, options) => {
  const measured = readWell(text, options as MeasuredOptions)
  expect(at(measured, 10, 1.5)).toBeCloseTo(60, 6)
  expect(at(measured, 10, 2.5)).toBeCloseTo(60, 6)
  expect(measured.folded.kWh).toBeCloseTo(4 / 60, 3)
  expect(measured.read.badRows).toBe(0)
})

test('what was guessed or assumed is told', () => {
  const bare = readWell(minutes('time,load', ['1500', '2500']))
  expect(bare.read).toMatchObject({
    guessedUnits: ['power'],
    columns: [{ field: 'time' }, { field: 'power', unit: 'W' }],
  })
  const amps = readWell(minutes('time,Amps', ['5', '6']), { volts: 230 })
  expect(amps.read.assumed).toEqual([
    'no power factor was measured; 1 is taken: the kW are the most that they can be',
    '230 V throughout',
  ])
  expect(amps.folded.mostKVA).toBeCloseTo(1.38, 9)
})

test.each([
  ['2024-07-01 10:00:00', 10, 0],
  ['2024-07-01T10:00:00Z', 12, 0],
  ['2024-07-01T10:00:00+02:00', 10, 0],
  ['2024-07-01 10:00', 10, 0],
  ['2024-07-01T10:00:00.250', 10, 0.25],
  ['20240701 10:00:00', 10, 0],
  ['01/07/2024 10:00:00', 10, 0],
  ['1.7.24 10:00', 10, 0],
  ['01-Jul-2024 10:00:00 AM', 10, 0],
  ['July 1, 2024 10:00 pm', 22, 0],
  ['1 Jul 2024, 12:00 a.m.', 0, 0],
])('the time %s', (text, hour, fraction) => {
  const seconds = timeReader({ form: 'written', order: 'day-first', offsetS: 7200 })(text)
  expect(seconds).toBe(Date.UTC(2024, 6, 1, hour) / 1000 + fraction)
})

test.each([
  [['1719828000', '1719828060'], 'epoch-seconds'],
  [['1719828000000'], 'epoch-milliseconds'],
  [['45474.4166667', '45474.4173611'], 'spreadsheet-days'],
  [['0', '1', '2'], 'elapsed-seconds'],
  [['12 Jul 2024 7:05'], 'written'],
  [['tea'], undefined],
])('times such as %j are %s', (texts, form) => {
  expect(timeFormOf(texts)).toBe(form)
})

test('epoch, milliseconds and spreadsheet days all tell the same moment', () => {
  const moment = Date.UTC(2024, 6, 1, 10) / 1000
  const rules = { order: 'day-first', offsetS: 0 } as const
  expect(timeReader({ ...rules, form: 'epoch-seconds' })('1719828000')).toBe(moment)
  expect(timeReader({ ...rules, form: 'epoch-milliseconds' })('1719828000000')).toBe(moment)
  expect(timeReader({ ...rules, form: 'spreadsheet-days' })('45474.416666666664')).toBeCloseTo(moment, 3)
})

test('day or month first has to be told where nothing shows it', () => {
  const text = 'time,W\n3/4/2024 10:00,500\n3/4/2024 10:01,700\n'
  expect(read(text)).toMatchObject({ ok: false, problems: [{ code: 'date-order-open' }] })
  expect(readWell(text, { dateOrder: 'month-first' }).folded.firstTime).toBe(Date.UTC(2024, 2, 4, 10) / 1000)
  expect(readWell(text.replaceAll('3/4', '3/14')).folded.firstTime).toBe(Date.UTC(2024, 2, 14, 10) / 1000)
})

test('a gap is not filled, and a log that the set feeds counts each return as a start', () => {
  const row = (second: number) => `${1_719_792_000 + second},1000`
  const rows = [...Array(100).keys()].map(row)
  const later = [...Array(50).keys()].map((n) => row(7200 + n))
  const { folded } = readWell(['epoch,W', ...rows, ...later].join('\n'))
  expect(folded).toMatchObject({ everyS: 1, gaps: 1, gapS: 7200 - 100, coveredS: 150, starts: 2, days: 1 })
})

test('a clock that is set back loses no row', () => {
  const rows = ['02:00', '02:20', '02:40', '02:00', '02:20', '02:40'].map(
    (clock) => `2024-10-27 ${clock}:00,1000`,
  )
  const { folded } = readWell(['time,W', ...rows].join('\n'))
  expect(folded).toMatchObject({ setBack: 1, samples: 6, coveredS: 7200 })
})

test('bad rows are told by their line and left out', () => {
  const text = minutes('time,W', ['1500', 'tea', '2500', '-900', '900000', '1500', '1', '2', '3']).replace(
    '10:05',
    '10:xx',
  )
  const measured = readWell(text)
  expect(measured.read).toMatchObject({
    rows: 9,
    badRows: 4,
    bad: [
      { line: 3, code: 'no-number' },
      { line: 5, code: 'negative' },
      { line: 6, code: 'too-much' },
      { line: 7, code: 'no-time' },
    ],
  })
  expect(read(text.replaceAll('500', 'none'))).toMatchObject({
    ok: false,
    problems: [{ code: 'not-understood' }],
  })
})

test('headings that come again are no rows, and may have changed places', () => {
  const text = `${minutes('time,W', ['1500', '1500'])}time,W\n2024-07-01 10:02:00,1500\nkW,time\n2.5,2024-07-01 10:03:00\n2.5,2024-07-01 10:04:00\n`
  const measured = readWell(text)
  expect(measured.read).toMatchObject({ rows: 5, badRows: 0 })
  expect(at(measured, 10, 1.5)).toBe(180)
  expect(at(measured, 10, 2.5)).toBe(120)
})

test('a file that is no log says what was found', () => {
  expect(read('name,colour\ntea,brown\n')).toMatchObject({
    ok: false,
    problems: [{ code: 'no-headings', found: '"name,colour"' }],
  })
  expect(read('')).toMatchObject({ ok: false, problems: [{ code: 'no-headings' }] })
  expect(read(minutes('time,Amps', ['5']))).toMatchObject({ ok: false, problems: [{ code: 'volts-open' }] })
  const asked = { columns: { power: 'strength' } } as const
  expect(read(minutes('time,W', ['5']), asked)).toMatchObject({
    ok: false,
    problems: [{ code: 'no-such-column' }],
  })
})

test('however a file is cut, it comes out alike', () => {
  const values = [...Array(90).keys()].map((n) => `${(n * 37) % 4000}`)
  const rows = values.map(
    (value, n) => `2024-07-01 ${10 + Math.floor(n / 60)}:${String(n % 60).padStart(2, '0')}:00,${value}`,
  )
  const text = ['time,Power W', ...rows].join('\r\n')
  const whole = readWell(text)
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 700 }), { maxLength: 8 }), (pieces) => {
      expect(read(text, {}, pieces)).toEqual(whole)
    }),
    { numRuns: 12 },
  )
})

test('time covered and energy are those of the rows, whatever their order of size', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 9000 }), { minLength: 2, maxLength: 60 }), (watts) => {
      const { folded } = readWell(minutes('time,W', watts.map(String)), { units: { power: 'W' } })
      expect(folded.coveredS).toBeCloseTo(60 * watts.length, 6)
      expect(folded.kWh).toBeCloseTo(watts.reduce((sum, each) => sum + each, 0) / 60_000, 6)
      expect(folded.seconds.flatMap((hour) => [...hour]).reduce((sum, each) => sum + each, 0)).toBeCloseTo(
        folded.coveredS,
        6,
      )
    }),
    { numRuns: 15 },
  )
})
