/**
 * `npm run bench -- plan`: how fast a day is planned, and how a recording of five million rows is read, in what memory.
 *
 * @module
 */

import { join } from 'node:path'
import { parseCatalogue } from '../src/catalogue/parse.js'
import { readMeasured } from '../src/sizing/measured-table.js'
import { planDay } from '../src/sizing/plan.js'
import type { RunDay } from '../src/sizing/plan-day.js'
import { loadSolver } from '../src/sizing/plan-milp.js'
import { planBoat } from '../src/sizing/plan-whole.js'
import type { SizeQuestion } from '../src/sizing/size-boat.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

const millionRows = 5
const pieceLength = 1 << 18

/** Ten hours and five jobs that may not be split: found by trying every plan, in the tests. */
const tenHours: RunDay = {
  slotHours: 1,
  baseKW: [0, 0, 2.2, 0.6, 0, 0, 0, 3.0, 0.8, 0],
  batches: [
    { id: 'heater', kW: 1.5, slots: 2 },
    { id: 'water', kW: 1.2, slots: 3 },
    { id: 'charger', kW: 2.0, slots: 3 },
    { id: 'washer', kW: 0.9, slots: 1 },
    { id: 'dryer', kW: 1.4, slots: 1, after: 'washer' },
  ],
  stores: [],
  set: { ratingKW: 8, mostKW: 7.2, lowKW: 2.4 },
  costs: { perHour: 0.48, perKWh: 0.27, perStart: 0.2, perLowHour: 0.25 },
}

/** What may wait on a usual boat, and the hob that has her set run by the clock. */
const aboard = [
  'induction-hob',
  'lights',
  'water-heater-75',
  'watermaker-small',
  'charger-12v-100',
  'washing-machine',
  'dryer-vented',
  'freezer',
]

export async function benchPlan(): Promise<void> {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const size: SizeQuestion = {
    book: parsed.catalogue,
    set: 'main',
    use: undefined,
    setFacts: { ratingKw: 7, volts: [230], hertz: 50, rpm: 1500, has: [], hasNot: [] },
    facts: {
      loads: aboard.map((id) => ({ id, is: id, entry: id })),
      rules: [],
      habits: {
        days: { hot: 0, warm: 100, mild: 0, cold: 0 },
        setHours: { day: 0, evening: 1, night: 0, cooking: 2, laundry: 1, charging: 3 },
      },
      space: {},
      candidates: [],
    },
  }
  const highs = await loadSolver()
  planDay(highs, tenHours)
  say(
    'ten hours and five jobs planned, proved',
    `${timed(() => planDay(highs, tenHours)).toFixed(0)} ms`,
    'under 1000 ms',
  )
  for (const [what, ratingKw] of [
    ['the day of a boat of eight loads planned, proved', 7],
    ['the same on a set that they barely fit, 5 kW', 5],
    ['the same on 4.5 kW', 4.5],
  ] as const) {
    const asked = { ...size, setFacts: { ...size.setFacts, ratingKw } }
    let isPlanned = false
    const tookMs = timed(() => {
      isPlanned = planBoat(highs, { size: asked, powerNeededByMonth: Array(12).fill(1) }).ok
    })
    if (!isPlanned) throw new Error('the day must be planned; found problems')
    say(what, `${tookMs.toFixed(0)} ms`, 'under 1000 ms')
  }
  const { seconds, moreMb } = recording()
  say(`${millionRows} million rows of a recording read`, `${seconds.toFixed(1)} s`, 'seconds')
  say('memory that took beyond what was taken before', `${moreMb.toFixed(0)} MB`, 'under 150 MB')
}

function say(what: string, found: string, wanted: string): void {
  console.log(`${what.padEnd(58)} ${found.padStart(12)}   wanted ${wanted}`)
}

/** Rows are made as they are read, a second apart; the memory is what the reading took more than before it, at its most. */
function recording(): { readonly seconds: number; readonly moreMb: number } {
  const reader = readMeasured({})
  reader.take('time,Power (W),Volts\n')
  const before = process.memoryUsage().rss
  let most = before
  let readingMs = 0
  let piece = ''
  const first = Date.UTC(2024, 5, 1)
  for (let row = 0; row < millionRows * 1_000_000; row++) {
    const time = new Date(first + 1000 * row).toISOString()
    piece += `${time.slice(0, 10)} ${time.slice(11, 19)},${(row * 37) % 4000},230\n`
    if (piece.length < pieceLength) continue
    const whole = piece
    piece = ''
    readingMs += timed(() => reader.take(whole))
    most = Math.max(most, process.memoryUsage().rss)
  }
  reader.take(piece)
  const read = reader.end()
  if (!read.ok || read.read.badRows > 0) throw new Error('every row must be read; found problems')
  return { seconds: readingMs / 1000, moreMb: (most - before) / 1e6 }
}

function timed(work: () => void): number {
  const began = performance.now()
  work()
  return performance.now() - began
}
