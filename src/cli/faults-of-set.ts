/**
 * What the commands of the faults room start from: the fault model, a case of a set, and all that the log says beforehand.
 *
 * @module
 */

import type { Memory } from '../alternatives/memory.js'
import { posteriorIn, posteriorKey } from '../alternatives/settle.js'
import type { Catalogue } from '../catalogue/catalogue.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { type CaseBody, casesOf, type FaultCase } from '../faults/case.js'
import { type Diagnosis, diagnose } from '../faults/diagnose.js'
import { givenOf } from '../faults/given.js'
import { type FaultTables, faultTables } from '../faults/infer.js'
import { type FaultMoney, faultMoneyOf } from '../faults/mending-costs.js'
import { buildLifeModel } from '../forecast/build-life-model.js'
import { type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { standingDefective } from '../forecast/standing.js'
import { limitsOf } from '../proof/limits.js'
import { type OpenLine, openLinesOf } from '../proof/open-lines.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { type SetOptions, type SetQuestion, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { shippedFaultModel } from './shipped.js'

export interface FaultOptions extends SetOptions {
  /** Of this case; left out: the only one that is open, or else the latest. */
  readonly case?: string
}

/** A set, its cases, and how to work one out. */
export interface FaultQuestion extends SetQuestion {
  readonly model: FaultModel
  readonly tables: FaultTables
  readonly register: SetRegister
  readonly catalogue: Catalogue
  readonly money: FaultMoney
  readonly cases: readonly FaultCase[]
  /** Stop lines that the log holds open or had passed over. */
  readonly inLog: readonly OpenLine[]
  readonly diagnosed: (body: CaseBody) => Diagnosis
}

/** The same seed as the other commands take, so that what is remembered serves all. */
const usualSeed = 1

export function withFaults(
  options: FaultOptions,
  work: (question: FaultQuestion) => Result | Promise<Result>,
): Promise<Result> {
  return withSet(options, (question) => {
    const { entries, boat, set, asOf, memory } = question
    const model = shippedFaultModel()
    const catalogue = shippedCatalogue()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const forSet = setCatalogueOf(register, catalogue).catalogue
    const tables = faultTables(model)
    const money = faultMoneyOf(model, forSet, register.terms)
    const cases = casesOf(entries, set)
    const inLog = openLinesOf({ ...catalogue, entries, register, limits: limitsOf(catalogue) })
    let standing: Readonly<Record<string, number>> | undefined
    const forecast = () => {
      standing ??= standingIn(memory, lifeModelSchema.parse(buildLifeModel(register, forSet).model))
      return standing
    }
    return work({
      ...question,
      model,
      tables,
      register,
      catalogue,
      money,
      cases,
      inLog,
      diagnosed: (body) => {
        // where nothing was seen yet the forecast would be waited for in vain
        const seen = body.symptoms.length + body.checks.length > 0 ? { standing: forecast() } : {}
        return diagnose(tables, {
          body,
          given: givenOf({ model, register, entries, cases, body, ...seen }),
          money,
          inLog,
        })
      },
    })
  })
}

/** The case that is meant. */
export function withCase(
  options: FaultOptions,
  work: (question: FaultQuestion & { readonly case: FaultCase }) => Result | Promise<Result>,
): Promise<Result> {
  return withFaults(options, (question) => {
    const { cases } = question
    const open = cases.filter(({ body }) => body.closed === undefined)
    const meant =
      options.case === undefined
        ? (open.length === 1 ? open : open.length === 0 ? cases.slice(-1) : [])[0]
        : cases.find(({ body }) => body.name === options.case)
    if (meant === undefined) {
      const names = cases.map(({ body }) => body.name)
      const allowed =
        names.length === 0 ? 'a case; begin with "gensettle faults start"' : `one of: ${names.join(', ')}`
      return refuse({ code: 'unknown-case', path: '--case', found: options.case ?? 'nothing', allowed })
    }
    return work({ ...question, case: meant })
  })
}

/** What the forecast says of each part, remembered by itself: the whole posterior is large. */
function standingIn(memory: Memory, life: LifeModel): Readonly<Record<string, number>> {
  const key = { what: 'standing', of: posteriorKey(life, usualSeed) }
  const found = memory.find(key)
  if (found !== undefined) return found.value as Readonly<Record<string, number>>
  const standing = standingDefective(life, posteriorIn(memory, life, usualSeed))
  memory.keep(key, standing)
  return standing
}
