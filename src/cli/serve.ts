/**
 * `gensettle serve` and `gensettle demo`: the answers of all boats at the prompt, and on a page.
 *
 * @module
 */

import colours from 'picocolors'
import { cautions } from '../alternatives/cautions.js'
import { listen } from '../server/listen.js'
import type { BoatOnPage } from '../server/page.js'
import { dataFolder } from '../store/data-folder.js'
import { openDemonstration } from '../store/demonstration.js'
import { openStore } from '../store/store.js'
import { allBoats, type DataOption, memoryOf, type NamedBoat } from './opened.js'
import { demonstrationFolder } from './places.js'
import { exitStatus, type Json, print, type Result, refuse } from './result.js'
import { hearStop } from './stopping.js'
import { type HowSaid, verdictsOf, verdictText } from './verdicts.js'

export interface ServeOptions extends DataOption {
  readonly json?: boolean
  readonly seed: number
}

/** Prints the cautions, every verdict and the address, and serves until it is stopped. Gives the exit status. */
export async function serve(options: ServeOptions): Promise<number> {
  const say = (text: string) => {
    if (!options.json) process.stdout.write(`${text}\n`)
  }
  const stopping = hearStop()
  const opened = openStore(dataFolder(options.data))
  if (!opened.ok) return print(opened, options)
  const { store } = opened
  try {
    const named = allBoats(store)
    if ('problems' in named) return print(refuse(...named.problems), options)
    say(cautionText())
    const how = { seed: options.seed, memory: memoryOf(store.folder), signal: stopping.signal }
    const boats = await sayAll(named, how, say)
    const listening = await listen(store.folder, { cautions, boats })
    if (!listening.ok) return print(listening, options)
    store.announce(listening.address)
    const json: Json = { type: 'gensettle/serve', version: 1, address: listening.address, boats, cautions }
    print({ ok: true, json, text: `Open ${colours.bold(listening.address)}  (stop with Ctrl-C)` }, options)
    await stopping.heard
    await listening.stop()
    say(stoppedText)
    return exitStatus.done
  } catch (error) {
    if (!stopping.signal.aborted) throw error
    say(stoppedText)
    return exitStatus.done
  } finally {
    store.close()
    stopping.end()
  }
}

const stoppedText = 'Stopped. Everything entered is kept.'

/** The demonstration boats' verdicts; nothing of the owner's is opened. */
export async function demonstrate(options: ServeOptions): Promise<Result> {
  const demonstration = openDemonstration(demonstrationFolder)
  if (!demonstration.ok) return demonstration
  const { store } = demonstration
  const named = store.boats().map((name) => ({ name, demonstration: true, store }))
  const say = (text: string) => {
    if (!options.json) process.stdout.write(`${text}\n`)
  }
  say(cautionText())
  const boats = await sayAll(named, { seed: options.seed }, say)
  const text = boats.length === 0 ? 'No demonstration boats came with this copy.' : ''
  return { ok: true, json: { type: 'gensettle/demo', version: 1, boats, cautions }, text }
}

function cautionText(): string {
  return [colours.bold('Cautions'), ...cautions.map((caution) => `  ${caution}`), ''].join('\n')
}

async function sayAll(
  named: readonly NamedBoat[],
  how: HowSaid,
  say: (text: string) => void,
): Promise<readonly BoatOnPage[]> {
  const boats: BoatOnPage[] = []
  for (const boat of named) {
    for (const verdict of await verdictsOf(boat, how)) {
      boats.push(verdict)
      say(`${verdictText(verdict)}\n`)
    }
  }
  return boats
}
