/**
 * The worker that chooses what to renew along with a job: the solver is fetched here alone.
 *
 * @module
 */

import * as Comlink from 'comlink'
import solverFile from 'highs/runtime?url'
import { type Bundled, type Bundling, bundleOf } from '../../job/bundle.js'
import { loadSolver } from '../../sizing/plan-milp.js'

export interface Chooser {
  choose(of: Bundling): Promise<Bundled>
}

const solver = loadSolver({ locateFile: () => solverFile })

const chooser: Chooser = {
  async choose(of) {
    return bundleOf(await solver, of)
  },
}

Comlink.expose(chooser)
