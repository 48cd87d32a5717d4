import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedKitFiles } from '../../test/shipped-kits.js'
import { compareNumbers, compareSizes } from './kit-compare.js'
import { readSize } from './kit-size-read.js'

const { sizes } = shippedKitFiles().kits
const compare = (old: string, replacement: string) => compareNumbers({ old, replacement }, sizes)
const said = (old: string, replacement: string) => {
  const { verdict, differences } = compare(old, replacement)
  return [verdict, ...differences.map((one) => `${one.what}: ${one.old}, ${one.new}`)]
}

// Boundary dimensions of ISO 15 in a public table of deep-groove ball bearings by JIS B 1520, which follows it; seen.
// Bore, then outside diameter and width of series 60, 62 and 63; 63 from 02 on from memory, ISO 15 (recalled).
const published = `
10 26 8 30 9 35 11
12 28 8 32 10 37 12
15 32 9 35 11 42 13
17 35 10 40 12 47 14
20 42 12 47 14 52 15
25 47 12 52 15 62 17
30 55 13 62 16 72 19
35 62 14 72 17 80 21
40 68 15 80 18 90 23
45 75 16 85 19 100 25
50 80 16 90 20 110 27`
const rows = published
  .trim()
  .split('\n')
  .map((line) => line.split(' ').map(Number))

test.each(rows.map((row, code) => [String(code).padStart(2, '0'), row] as const))(
  'bearings of bore code %s have the published boundary dimensions',
  (code, [bore, ...rest]) => {
    ;['60', '62', '63'].forEach((series, i) => {
      expect(readSize(`${series}${code}`, sizes)).toMatchObject({
        is: 'bearing',
        boreMm: bore,
        outsideMm: rest[2 * i],
        widthMm: rest[2 * i + 1],
      })
    })
  },
)

test('the bore is five times the code from 04 on, and grows in its series as outside diameter and width do', () => {
  for (const series of ['60', '62', '63']) {
    const list = sizes.bearings.list.filter(({ id }) => id.startsWith(series))
    expect(list).toHaveLength(16)
    list.forEach(({ id, boreMm, outsideMm, widthMm }, i) => {
      const code = Number(id.slice(2))
      if (code >= 4) expect(boreMm).toBe(5 * code)
      const before = list[i - 1]
      if (before === undefined) return
      expect(outsideMm).toBeGreaterThan(before.outsideMm)
      expect(widthMm).toBeGreaterThanOrEqual(before.widthMm)
    })
  }
})

test('marks behind the figures tell clearance and seals in any spelling; what is strange is kept', () => {
  const like = { clearance: 'C3', closed: 'sealed both sides', unread: [] }
  for (const spelt of ['6205-2RS/C3', '6205 2RSC3', '6205-2RS1-C3', '6205DDUC3', '6205.2rsr.c3']) {
    expect(readSize(spelt, sizes), spelt).toMatchObject(like)
  }
  expect(readSize('6205ZZ', sizes)).toMatchObject({ closed: 'shielded both sides', clearance: 'usual' })
  expect(readSize('6205-NR', sizes)).toMatchObject({ groove: 'groove with ring' })
  expect(readSize('6205-XYZ9', sizes)).toMatchObject({ unread: ['XYZ9'] })
  expect(readSize('62050', sizes, 'bearing')).toBeUndefined()
})

test('bearings of one size and clearance fit; another series does not; other clearance or seals are thought about', () => {
  expect(said('6205-2RS/C3', '6205 DDU C3')).toEqual(['fits'])
  expect(said('6205', '6305')).toEqual([
    'does-not-fit',
    'outside diameter: 52 mm, 62 mm',
    'width: 15 mm, 17 mm',
  ])
  expect(said('6305-2RS/C3', '6305-ZZ')).toEqual([
    'think',
    'clearance: C3, usual',
    'seals: sealed both sides, shielded both sides',
  ])
  expect(said('6205', '6205-NR')).toEqual(['does-not-fit', 'outer ring: plain, groove with ring'])
})

test('seals, O-rings and hoses fit by their measures, and seals still want their lip looked at', () => {
  expect(said('25x47x7', '25-47-7')).toEqual(['fits'])
  expect(said('25x47x7', '25x47x10')).toEqual(['does-not-fit', 'width: 7 mm, 10 mm'])
  expect(compare('25x47x7', '25x47x7').alsoLook.join()).toMatch(/lip faces/)
  expect(said('AS568-012', '9.25x1.78')).toEqual(['fits'])
  expect(said('20x3', '20x2.5')).toEqual(['does-not-fit', 'thickness: 3 mm, 2.5 mm'])
  expect(said('25 mm', '1 inch hose')).toEqual(['fits'])
  expect(said('25 mm', '32 mm')).toEqual(['does-not-fit', 'inside diameter: 25 mm, 32 mm'])
})

test('belts are held against one another by the length of their middle, whatever length is written on them', () => {
  // A section: datum = inside + 30, outside = inside + 50 mm (belt tables; recalled)
  expect(said('A 1000 Li', 'A 1030 Ld')).toEqual(['fits'])
  expect(said('A 1000 Li', 'A 1050 La')).toEqual(['fits'])
  expect(said('A39', 'A 1021 Ld')).toEqual(['fits'])
  expect(said('A 1000 Li', 'A 1025 Li')).toEqual(['does-not-fit', 'length in its middle: 1030 mm, 1055 mm'])
  expect(said('SPZ 1000', 'XPZ 1000')).toEqual(['think', 'edge: plain, notched'])
  expect(said('A 1000 Ld', 'B 1000 Ld')[1]).toBe('section: A (13 mm), B (17 mm)')
  expect(said('AV10x1013', 'SPZ 1000')[0]).toBe('think')
})

test('threads that start in one another do not fit: parallel, tapered and American pipe, and fine in coarse', () => {
  expect(said('G 1/2', '1/2 BSP')).toEqual(['fits'])
  expect(said('G 1/2', '1/2 NPT')[0]).toBe('does-not-fit')
  expect(said('G 1/8', 'R 1/8')[0]).toBe('does-not-fit')
  expect(said('M8', 'M8x1.25')).toEqual(['fits'])
  expect(said('M10x1', 'M10')).toEqual([
    'does-not-fit',
    'thread: metric M10, pitch 1 mm, metric M10, pitch 1.5 mm',
  ])
  expect(said('M8x30', 'M8x35')).toEqual(['think', 'length: 30 mm, 35 mm'])
})

test('a capacitor needs the same capacity and no fewer volts; without the volts nothing can be told', () => {
  expect(said('30 µF 450 V', '30uF 500 VAC')).toEqual(['fits'])
  expect(said('30 µF 450 V', '31 µF 450 V')).toEqual(['fits'])
  expect(said('30 µF 450 V', '35 µF 450 V')).toEqual(['does-not-fit', 'capacity: 30 µF, 35 µF'])
  expect(said('30 µF 450 V', '30 µF 400 V')).toEqual(['does-not-fit', 'rated voltage: 450 V, 400 V'])
  expect(said('30 µF 450 V class B', '30 µF 450 V class C')).toEqual([
    'think',
    'class: B (10000 h), C (3000 h)',
  ])
  expect(said('30 µF', '30 µF 450 V')).toEqual(['cannot-tell'])
})

test('a battery must not be larger, nor have its pole on the other side; a weaker one is thought about', () => {
  expect(said('12 V 70 Ah 640 A L3 + right', '12 V 72 Ah 680 A L3 + right')).toEqual(['fits'])
  expect(said('12 V 70 Ah 278x175x190', '12 V 80 Ah L4')).toEqual(['does-not-fit', 'length: 278 mm, 315 mm'])
  expect(said('12 V 70 Ah L3 + right', '12 V 70 Ah L3 + left')[1]).toMatch(/positive pole: right, left/)
  expect(said('12 V 70 Ah 640 A L3', '12 V 60 Ah 540 A L2')[0]).toBe('think')
})

test('what is no size, or of another kind, is not judged', () => {
  expect(said('P-40', 'P-40')).toEqual(['cannot-tell'])
  expect(said('6205', '25x47x7')).toEqual(['cannot-tell'])
})

const listed = fc.constantFrom(
  ...sizes.bearings.list.map(({ id }) => id),
  ...sizes.seals.list.map(({ id }) => id),
  ...sizes.oRings.list.map(({ id }) => `AS568-${id}`),
  ...sizes.threads.list.map(({ id }) => id),
  ...sizes.pipeThreads.list.map(({ id }) => `G ${id}`),
)

test('every listed piece fits in its own place, and none goes one way where it does not go the other', () => {
  fc.assert(
    fc.property(listed, listed, (a, b) => {
      const [old, replacement] = [readSize(a, sizes), readSize(b, sizes)]
      if (old === undefined || replacement === undefined) throw new Error(`${a} or ${b} is not read`)
      expect(compareSizes({ old, replacement: old }, sizes).verdict).toBe('fits')
      const verdicts = [
        compareNumbers({ old: a, replacement: b }, sizes),
        compareNumbers({ old: b, replacement: a }, sizes),
      ]
      expect(verdicts[0]!.verdict).toBe(verdicts[1]!.verdict)
    }),
    { numRuns: 200 },
  )
})
