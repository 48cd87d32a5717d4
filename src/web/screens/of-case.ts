/**
 * A case of a set as the screens show it, worked out from the log, and how it is written.
 *
 * @module
 */

import { useContext, useMemo, useState } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { FaultModel } from '../../catalogue/read-fault-model.js'
import { type CaseBody, casesOf, type FaultCase, type Step, stepped } from '../../faults/case.js'
import { draftOfCase } from '../../faults/case-entries.js'
import { type Diagnosis, diagnose } from '../../faults/diagnose.js'
import { givenOf } from '../../faults/given.js'
import { type FaultTables, faultTables } from '../../faults/infer.js'
import { type FaultMoney, faultMoneyOf } from '../../faults/mending-costs.js'
import type { Draft } from '../../logbook/draft.js'
import { isKind } from '../../logbook/kinds.js'
import type { Problem } from '../../logbook/problems.js'
import { limitsOf } from '../../proof/limits.js'
import { openLinesOf } from '../../proof/open-lines.js'
import { registerOf } from '../../register/register.js'
import type { SetRegister } from '../../register/register-types.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { type Boat, useBoat, useCatalogue } from '../data/boat.js'
import { useFaultModel } from '../data/fault-model.js'
import { RegionOfPage } from '../data/region.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { inRegion } from '../words/region.js'
import { sayMoney, withUnits } from '../words/say.js'
import { useForecast } from '../work/answers.js'

/** The room before a case is chosen. */
export interface Room extends OfSet {
  readonly model: FaultModel
  readonly tables: FaultTables
  readonly register: SetRegister
  readonly catalogue: Catalogue
  readonly money: FaultMoney
  readonly log: Boat
  readonly cases: readonly FaultCase[]
  readonly say: (sentence: string) => string
  readonly sayCost: (amount: number) => string
  readonly worked: (body: CaseBody) => Diagnosis
  /** Writes drafts; undefined where they were written, else what was wrong. */
  readonly write: (drafts: readonly Draft[]) => Promise<readonly Problem[] | undefined>
}

export interface OfCase extends Room {
  readonly own: FaultCase
  readonly diagnosis: Diagnosis
  readonly busy: boolean
  readonly wrong: readonly Problem[]
  /** One more answer. */
  readonly take: (step: Step) => void
  /** The whole case anew, with what follows from it. */
  readonly put: (body: CaseBody, drafts?: readonly Draft[]) => void
  /** The case before the last answer; none at its beginning. */
  readonly before: CaseBody | undefined
}

/** Everything that the faults room starts from; undefined until it is here. */
export function useRoom({ boat, set }: OfSet): Room | undefined {
  const log = useBoat(boat)
  const catalogue = useCatalogue()
  const found = useFaultModel()
  const region = useContext(RegionOfPage)
  const { view } = useForecast(boat, set)
  const parts = view?.forecast.parts
  return useMemo(() => {
    if (catalogue === undefined || found === undefined || log.status !== 'ready') return undefined
    const say = (sentence: string) => withUnits(inRegion(sentence, region))
    const model = inWords(found, say)
    const tables = faultTables(model)
    const { entries } = log
    const register = registerOf({ entries, boat, set, asOf: today(), catalogue })
    const money = faultMoneyOf(model, setCatalogueOf(register, catalogue).catalogue, register.terms)
    const cases = casesOf(entries, set)
    const inLog = openLinesOf({ ...catalogue, entries, register, limits: limitsOf(catalogue) })
    const standing = Object.fromEntries(
      (parts ?? []).map((one) => [one.part, Math.min(1, one.defectiveNow + one.failedUnnoticedNow)]),
    )
    return {
      boat,
      set,
      model,
      tables,
      register,
      catalogue,
      money,
      log,
      cases,
      say,
      sayCost: (amount) => sayMoney(money.currency, amount),
      worked: (body) =>
        diagnose(tables, {
          body,
          money,
          inLog,
          given: givenOf({ model, register, entries, cases, body, standing }),
        }),
      write: async (drafts) => {
        const written = await log.append(drafts)
        return written.ok ? undefined : written.problems
      },
    }
  }, [catalogue, found, log, region, parts, boat, set])
}

/** One case, with what is done to it. */
export function useCase(room: Room, own: FaultCase): OfCase {
  const [busy, setBusy] = useState(false)
  const [wrong, setWrong] = useState<readonly Problem[]>([])
  const diagnosis = useMemo(() => room.worked(own.body), [room, own])
  const put = (body: CaseBody, drafts: readonly Draft[] = []) => {
    setBusy(true)
    const at = { boat: room.boat, set: room.set, from: today() }
    void room
      .write([draftOfCase(at, body, own), ...drafts])
      .then((problems) => setWrong(problems ?? []))
      .finally(() => setBusy(false))
  }
  const take = (step: Step) => {
    const next = stepped(room.model, own.body, step)
    if (next.ok) put(next.body)
    else setWrong(next.problems)
  }
  return { ...room, own, diagnosis, busy, wrong, take, put, before: bodyBefore(room, own) }
}

/** What the case was before its last answer, as the log still has it. */
function bodyBefore({ log }: Room, own: FaultCase): CaseBody | undefined {
  const [last] = log.kept.concat(log.entries).filter(({ id }) => id === own.entry)
  const corrected = last?.corrects.at(-1)
  const before = log.kept.find(({ id }) => id === corrected)
  return before !== undefined && isKind(before, 'case') ? before.body : undefined
}

function inWords(model: FaultModel, say: (sentence: string) => string): FaultModel {
  const named = <T extends { readonly name: string }>(one: T): T => ({ ...one, name: say(one.name) })
  return {
    ...model,
    faults: model.faults.map((fault) => ({ ...named(fault), mend: say(fault.mend) })),
    symptoms: model.symptoms.map(named),
    checks: model.checks.map((check) => ({
      ...named(check),
      how: say(check.how),
      outcomes: check.outcomes.map(named),
    })),
    stopLines: model.stopLines.map((line) => ({
      ...line,
      when: say(line.when),
      act: say(line.act),
      clearWhen: line.clearWhen.map(say),
      ...(line.asked === undefined ? {} : { asked: say(line.asked) }),
    })),
  }
}
