/**
 * The worker that finds the fewest rules: the solver and its three and a half megabytes are fetched here alone.
 *
 * @module
 */

import * as Comlink from 'comlink'
import solverFile from 'highs/runtime?url'
import type { Terms } from '../../register/register-types.js'
import { loadSolver } from '../../sizing/plan-milp.js'
import { needsOf, type SizeQuestion, sizeBoat } from '../../sizing/size-boat.js'
import { type BoatTrades, tradeBoat } from '../../sizing/trade-boat.js'

export interface RuleFinder {
  find(question: SizeQuestion, terms: Terms): Promise<BoatTrades>
}

const finder: RuleFinder = {
  async find(question, terms) {
    const highs = await loadSolver({ locateFile: () => solverFile })
    return tradeBoat(highs, { question, needs: needsOf(question), sized: sizeBoat(question), terms })
  },
}

Comlink.expose(finder)
