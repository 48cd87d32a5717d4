/**
 * The worker that plans a day: the solver is fetched here alone.
 *
 * @module
 */

import * as Comlink from 'comlink'
import solverFile from 'highs/runtime?url'
import { loadSolver } from '../../sizing/plan-milp.js'
import { type PlannedBoat, type PlanQuestion, planBoat } from '../../sizing/plan-whole.js'

export interface DayPlanner {
  plan(question: PlanQuestion): Promise<PlannedBoat>
}

const planner: DayPlanner = {
  async plan(question) {
    return planBoat(await loadSolver({ locateFile: () => solverFile }), question)
  },
}

Comlink.expose(planner)
