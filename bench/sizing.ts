/**
 * `npm run bench -- sizing`: a boat of thirty loads, six occasions, four seasons and eight sets, sized; and what smaller sets
 * would ask. Processor time, the best of several, so that the machine's other work counts little.
 *
 * @module
 */

import { join } from 'node:path'
import { parseCatalogue } from '../src/catalogue/parse.js'
import { loadSolver } from '../src/sizing/plan-milp.js'
import { needsOf, type SizeQuestion, sizeBoat } from '../src/sizing/size-boat.js'
import { tradeBoat } from '../src/sizing/trade-boat.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

/** Thirty kinds that one boat may well have together. */
const aboard = [
  ...['air-conditioner-16000', 'air-conditioner-10000', 'cooling-sea-pump', 'cabin-blower', 'dehumidifier'],
  ...[
    'water-heater-75',
    'refrigerator',
    'freezer',
    'ice-maker',
    'induction-hob',
    'oven',
    'microwave',
    'kettle',
  ],
  ...['coffee-maker', 'toaster', 'dishwasher', 'washing-machine', 'dryer-vented', 'iron', 'watermaker-large'],
  ...[
    'fresh-water-pump',
    'toilet-vacuum-pump',
    'sewage-treatment',
    'charger-24v-100',
    'lights',
    'television',
  ],
  ...['computers-and-satellite', 'hair-dryer', 'vacuum-cleaner', 'dive-compressor'],
]

const rounds = 9

export async function benchSizing(): Promise<void> {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
  const question: SizeQuestion = {
    book: parsed.catalogue,
    set: 'main',
    use: undefined,
    setFacts: { ratingKw: 11, volts: [240, 120], hertz: 60, rpm: 1800, has: [], hasNot: [] },
    facts: {
      loads: aboard.map((id) => ({ id, is: id, entry: id })),
      rules: [],
      habits: {
        days: { hot: 60, warm: 60, mild: 60, cold: 10 },
        setHours: { day: 1, evening: 2, night: 8, cooking: 1.5, laundry: 1, charging: 3 },
      },
      space: { engineSpaceC: 48 },
      candidates: [],
    },
  }
  let sized = sizeBoat(question)
  const sizingMs = bestOf(() => {
    sized = sizeBoat(question)
  })
  const what = `${sized.loads.length} loads, ${sized.figures.length} occasions and seasons, ${sized.sets.length} sets`
  say(`sized: ${what}`, sizingMs, 'under 200 ms')
  const highs = await loadSolver()
  const needs = needsOf(question)
  let choices = 0
  const tradesMs = bestOf(() => {
    choices = tradeBoat(highs, { question, needs, sized, terms: {} }).choices.length
  })
  say(`what smaller sets would ask, ${choices} choices, proved`, tradesMs, 'under 2000 ms')
}

/** Processor time of the quickest of several rounds. [ms] */
function bestOf(work: () => void): number {
  let best = Number.POSITIVE_INFINITY
  for (let round = 0; round < rounds; round += 1) {
    const before = process.cpuUsage()
    work()
    const { user, system } = process.cpuUsage(before)
    best = Math.min(best, (user + system) / 1000)
  }
  return best
}

function say(what: string, ms: number, wanted: string): void {
  console.log(`${what.padEnd(62)} ${`${ms.toFixed(0)} ms`.padStart(10)}   wanted ${wanted}`)
}
