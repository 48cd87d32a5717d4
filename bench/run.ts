/**
 * `npm run bench`: how fast the simulator is, as ratios of things timed side by side in this one run.
 * `npm run bench -- --million` plays a million histories beside the programs in C; `npm run bench -- advice` tries the
 * advice itself against rules of thumb; `npm run bench -- faults` tries the faults room; `npm run bench -- sizing` times sizing,
 * `npm run bench -- plan` the run plan and recordings, `npm run bench -- pictures` photographs.
 *
 * @module
 */

import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { compile } from '../src/alternatives/program.js'
import { type Prepared, usedStates } from '../src/alternatives/settle.js'
import { playSpan } from '../src/alternatives/simulate.js'
import type { LifeModel } from '../src/forecast/life-model.js'
import { posteriorOf } from '../src/forecast/posterior.js'
import { benchBearing } from './bearing.js'
import { agreement, compileC, hasCompiler, inTurns } from './beside-c.js'
import { benchBoatFile, benchLogbook } from './logbook.js'
import { prepareMarram } from './marram.js'
import { benchPages, hasChromium } from './pages.js'
import { benchPictures } from './pictures.js'

const seed = 3
const root = join(import.meta.dirname, '..')
const histories = {
  turns: 2000,
  agreement: 10_000,
  million: 1_000_000,
  workers: 6000,
  full: 20_000,
  first: 500,
}
/** Things that are compared take turns this often, and the best of each counts. */
const rounds = 3

type Played = typeof import('../src/server/play.js')

async function main(): Promise<void> {
  let prepared = prepareMarram(seed)
  const preparedMs = timed(() => {
    prepared = prepareMarram(seed)
  })
  say('log read, model built, posterior and alternatives', `${preparedMs.toFixed(0)} ms`, 'under 2000 ms')
  await benchC(prepared)
  benchFirst(prepared)
  const { playOnWorkers, openPlayers } = await compiledPlay()
  await benchWorkers(prepared, playOnWorkers)
  const open = firstSix(prepared.model).alternatives.map(({ barred: _, ...one }) => one)
  const { findingOutMs, bothMs } = await benchBearing(
    prepared,
    { ...prepared.model, alternatives: open },
    { seed, histories: histories.full, openPlayers },
  )
  const both = `${(bothMs / 1000).toFixed(1)} s`
  say('what is worth finding out, 20,000 histories of six', `${(findingOutMs / 1000).toFixed(1)} s`, '')
  say('that, and what would change the answer', both, 'under 3 s')
  const { totalMs, entries, registerMs, odditiesMs } = benchLogbook()
  say(`logbook of ${entries} entries opened`, `${totalMs.toFixed(0)} ms`, 'under 300 ms')
  say(`the same folded into its register`, `${registerMs.toFixed(0)} ms`, 'under 500 ms')
  say(`the same looked through for what is odd`, `${odditiesMs.toFixed(0)} ms`, 'under 500 ms')
  const file = await benchBoatFile()
  const took = `${((file.exportMs + file.importMs) / 1000).toFixed(1)} s, ${file.mostMemoryMb.toFixed(0)} MB`
  say(`boat file of ${file.fileMb.toFixed(0)} MB out and in, memory it took`, took, 'memory bounded')
  await benchPhotographs()
  await benchBrowser()
}

async function benchPhotographs(): Promise<void> {
  const { megabytes, uploadMs, thumbnailMs, keptMs } = await benchPictures()
  const size = `${megabytes.toFixed(1)} MB`
  say(`photograph of 12 megapixels, ${size}, into the store`, `${uploadMs.toFixed(0)} ms`, 'under 1000 ms')
  say('small picture of it, made; kept', `${thumbnailMs.toFixed(0)} ms; ${keptMs.toFixed(0)} ms`, '(no aim)')
}

async function benchBrowser(): Promise<void> {
  if (!hasChromium()) {
    console.log('No Chromium was found (GENSETTLE_CHROMIUM names one): the pages are left out.')
    return
  }
  const told = await benchPages()
  const alone = await benchPages({ verdictsTold: false })
  say('page opened cold, usable', `${told.usableMs.toFixed(0)} ms`, 'under 1000 ms')
  say('page opened cold, first verdict', `${told.verdictMs.toFixed(0)} ms`, 'under 1500 ms')
  say('the same before the start has told its verdicts', `${alone.verdictMs.toFixed(0)} ms`, '')
  const spent = [told, alone].map(({ processorMs }) => `${processorMs.toFixed(0)} ms`).join(', ')
  say('processor time of page and workers until then', spent, '')
  const { longTasksMs, scriptKb } = told
  const longest = Math.max(0, ...longTasksMs)
  say('tasks over 50 ms while it refines, and the longest', `${longTasksMs.length}, ${longest} ms`, 'none')
  say('scripts of the page, compressed', `${scriptKb.toFixed(0)} kB`, 'under 450 kB')
}

function say(what: string, found: string, wanted: string): void {
  console.log(`${what.padEnd(58)} ${found.padStart(12)}   wanted ${wanted}`)
}

async function benchC({ model, posterior, used }: Prepared): Promise<void> {
  if (!hasCompiler()) {
    console.log('No C compiler (cc) was found: the comparison with C is left out.')
    return
  }
  compileC()
  const six = compile(firstSix(model), posterior, used)
  const speed = await inTurns(six, { histories: histories.turns, rounds })
  say(
    'product, histories per processor second, one thread',
    speed.product.toFixed(0),
    '(the machine decides)',
  )
  say('the same algorithm in C', speed.same.toFixed(0), '(the machine decides)')
  say('the model written plainly in C', speed.plain.toFixed(0), '(the machine decides)')
  say('product over the same algorithm in C', (speed.product / speed.same).toFixed(2), 'at least 0.35')
  say('product over the model written plainly', (speed.product / speed.plain).toFixed(2), 'at least 0.7')
  const million = process.argv.includes('--million')
  const count = million ? histories.million : histories.agreement
  const played = million ? six : compile(model, posterior, used)
  console.log(`Costs of ${count} histories in C beside the product's; --million plays a million.`)
  console.log('Wanted: at most 1 in 200 of the same histories part; means at most 3 standard errors apart.')
  console.table(
    (await agreement(played, count)).map(({ alternative, parted, same, plain }) => ({
      alternative,
      'histories that part': parted,
      'errors apart, same algorithm': same.errors.toFixed(3),
      'errors apart, written plainly': plain.errors.toFixed(2),
      'share of the cost': `${(plain.share * 100).toFixed(2)} %`,
    })),
  )
}

function benchFirst({ model, posterior, used }: Prepared): void {
  const six = firstSix(model)
  const posteriorMs = timed(() => posteriorOf(six, { seed }))
  say('posterior', `${posteriorMs.toFixed(0)} ms`, 'under 1000 ms')
  const usedMs = timed(() => usedStates(six, posterior, seed))
  say('starting states of the used candidates', `${usedMs.toFixed(0)} ms`, 'under 600 ms')
  const firstMs = timed(() =>
    playSpan(compile(six, posterior, used), { seed, from: 0, count: histories.first }),
  )
  const what = `first figures, ${histories.first} histories of ${six.alternatives.length} alternatives`
  say(what, `${firstMs.toFixed(0)} ms`, 'under 300 ms')
}

async function benchWorkers(prepared: Prepared, play: Played['playOnWorkers']): Promise<void> {
  const { posterior, used } = prepared
  const model = firstSix(prepared.model)
  const playWith = (workers: number, count: number) =>
    timedAsync(() => play(model, posterior, { seed, from: 0, count, workers, used }))
  const one = Math.min(await playWith(1, histories.workers), await playWith(1, histories.workers))
  const two = Math.min(await playWith(2, histories.workers), await playWith(2, histories.workers))
  say('two workers over one', (one / two).toFixed(2), 'at least 1.7')
  const full = await playWith(2, histories.full)
  const what = `${model.alternatives.length} alternatives × ${histories.full} histories, two workers`
  say(what, `${(full / 1000).toFixed(1)} s`, 'under 5 s')
}

function firstSix(model: LifeModel): LifeModel {
  return { ...model, alternatives: model.alternatives.slice(0, 6) }
}

/** Workers run as they are shipped: from the compiled program. */
async function compiledPlay(): Promise<Played> {
  execFileSync('npx', ['tsc', '-p', 'tsconfig.build.json'], { cwd: root, stdio: 'inherit' })
  return import(pathToFileURL(join(root, 'dist/server/play.js')).href)
}

function timed(work: () => unknown): number {
  const began = performance.now()
  work()
  return performance.now() - began
}

async function timedAsync(work: () => Promise<unknown>): Promise<number> {
  const began = performance.now()
  await work()
  return performance.now() - began
}

const [what, ...more] = process.argv.slice(2)
if (what === 'advice') await (await import('./advice/run.js')).benchAdvice(more)
else if (what === 'faults') (await import('./faults.js')).benchFaults()
else if (what === 'plan') await (await import('./plan.js')).benchPlan()
else if (what === 'pictures') await benchPhotographs()
else if (what === 'sizing') await (await import('./sizing.js')).benchSizing()
else if (what === 'advice-shard') (await import('./advice/shard.js')).tryBoatsAsTheyCome()
else await main()
