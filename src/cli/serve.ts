/**
 * `gensettle serve` and `gensettle demo`: the pages of this machine, and the answers of all boats at the prompt.
 *
 * @module
 */

import { cautions } from '../alternatives/cautions.js'
import { listen } from '../server/listen.js'
import { readPages } from '../server/pages.js'
import { dataFolder } from '../store/data-folder.js'
import { openStore } from '../store/store.js'
import { colours } from './colours.js'
import { boatsIn, computedOf, type DataOption } from './opened.js'
import { pagesFolder, shippedCatalogue } from './places.js'
import { exitStatus, type Json, print, type Result } from './result.js'
import { shippedDemonstration, shippedFaultModel, shippedKits } from './shipped.js'
import { hearStop } from './stopping.js'
import { type Verdict, verdictsOf, verdictText } from './verdicts.js'
import { verdictsAside } from './verdicts-aside.js'

export interface ServeOptions extends DataOption {
  readonly json?: boolean
  readonly seed: number
}

/** Serves the pages at once, prints the verdicts as they are worked out, and goes on until it is stopped. Gives the exit status. */
export async function serve(options: ServeOptions): Promise<number> {
  const say = (text: string) => {
    if (!options.json) process.stdout.write(`${text}\n`)
  }
  const stopping = hearStop()
  const opened = openStore(dataFolder(options.data))
  if (!opened.ok) return print(opened, options)
  const { store } = opened
  try {
    const listening = await listen({
      store,
      demonstration: shippedDemonstration(),
      catalogue: shippedCatalogue(),
      faults: shippedFaultModel(),
      kits: shippedKits(),
      pages: readPages(pagesFolder),
      computed: computedOf(store.folder),
      onError: (error) => process.stderr.write(`${error.stack ?? error.message}\n`),
    })
    if (!listening.ok) return print(listening, options)
    const { address, entrance } = listening
    store.announce(address)
    say(cautionText())
    say(`Open ${colours.bold(entrance)}\n(this address lets one browser in, once; stop with Ctrl-C)\n`)
    const how = { folder: store.folder, seed: options.seed, signal: stopping.signal }
    const boats = await verdictsAside(how, (verdict) => say(`${verdictText(verdict)}\n`))
    const json: Json = { type: 'gensettle/serve', version: 1, address, entrance, boats, cautions }
    if (!stopping.signal.aborted) {
      print({ ok: true, json, text: `These are all. Serving at ${address} until Ctrl-C.` }, options)
    }
    await stopping.heard
    await listening.stop()
    say('Stopped. Everything entered is kept.')
    return exitStatus.done
  } finally {
    store.close()
    stopping.end()
  }
}

/** The demonstration boats' verdicts; nothing of the owner's is opened. */
export async function demonstrate(options: ServeOptions): Promise<Result> {
  const say = (text: string) => {
    if (!options.json) process.stdout.write(`${text}\n`)
  }
  say(cautionText())
  const boats: Verdict[] = []
  for (const boat of boatsIn(shippedDemonstration(), true)) {
    for (const verdict of await verdictsOf(boat, { seed: options.seed })) {
      boats.push(verdict)
      say(`${verdictText(verdict)}\n`)
    }
  }
  const text = boats.length === 0 ? 'No demonstration boats came with this copy.' : ''
  return { ok: true, json: { type: 'gensettle/demo', version: 1, boats, cautions }, text }
}

function cautionText(): string {
  return [colours.bold('Cautions'), ...cautions.map((caution) => `  ${caution}`), ''].join('\n')
}
