/**
 * What the parts of the page of offers share.
 *
 * @module
 */

import { useMemo } from 'react'
import { answerSeed } from '../../alternatives/answer-key.js'
import { lowerFirst } from '../../alternatives/say.js'
import { readSet } from '../../alternatives/settle.js'
import type { Problem } from '../../catalogue/problem.js'
import type { SetCatalogue } from '../../catalogue/scale.js'
import type { LifeModel } from '../../forecast/life-model.js'
import { learnedOverrunOf } from '../../job/actual.js'
import { type Comparison, compareOffers, type RankedOffer } from '../../job/quotes.js'
import { type Offer, offersOf } from '../../job/quotes-offers.js'
import { type OpenQuestion, questionsTo } from '../../job/quotes-questions.js'
import { standsStill } from '../../job/quotes-wait.js'
import { keptWalkAway, type WalkAwayFound } from '../../job/quotes-walk-away.js'
import type { Saying } from '../../job/quotes-words.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { sayDate, sayMoney } from '../words/say.js'
import type { OfJob } from './job-frame.js'

/** The offers of a job and what they are reckoned with. */
export interface OfOffers {
  readonly of: OfSet
  readonly known: OfJob
  readonly model: LifeModel
  readonly catalogue: SetCatalogue
  readonly learned: ReturnType<typeof learnedOverrunOf>
  readonly offers: readonly Offer[]
  readonly kept?: WalkAwayFound
  readonly problems: readonly Problem[]
  readonly say: Saying & { readonly stands: boolean; readonly job: string }
}

/** An offer with what is still to be asked of it. */
export interface AskedOffer extends RankedOffer {
  readonly questions: readonly OpenQuestion[]
}

/** Reads the offers out of the log. */
export function useOffers(of: OfSet, known: OfJob): OfOffers {
  return useMemo(() => {
    const { log, job, catalogue: shipped } = known
    const question = { entries: log.entries, boat: of.boat, set: of.set, asOf: today() }
    const learned = learnedOverrunOf({ ...question, catalogue: shipped })
    const read = readSet({ ...question, seed: answerSeed, catalogue: shipped, overrun: learned })
    const { bare: model, register } = read
    const { catalogue } = read.forSet
    const asked = { ...question, job: job.name }
    const { offers, problems } = offersOf({ ...asked, terms: register.terms, currency: model.currency })
    const kept = keptWalkAway(asked, { model, catalogue, offers })
    return {
      of,
      known,
      model,
      catalogue,
      learned,
      offers,
      ...(kept.found === undefined ? {} : { kept: kept.found }),
      problems: [...problems, ...kept.problems, ...read.forSet.problems],
      say: {
        money: (amount: number) => sayMoney(model.currency, amount),
        day: sayDate,
        part: (id: string) => lowerFirst(catalogue.parts.find((part) => part.id === id)?.name ?? id),
        stands: standsStill(model),
        job: job.name,
      },
    }
  }, [of, known])
}

/** The offers side by side, with the questions. */
export function useComparison(
  { model, catalogue, learned, offers }: OfOffers,
  walkAway: WalkAwayFound | undefined,
): { readonly comparison: Comparison; readonly told: readonly AskedOffer[] } {
  return useMemo(() => {
    const known = { model, catalogue, learned, asOf: today(), seed: answerSeed, walkAway }
    const comparison = compareOffers(offers, known)
    const told = comparison.offers.map((one) => ({
      ...one,
      questions: questionsTo(one, { comparison, known }),
    }))
    return { comparison, told }
  }, [model, catalogue, learned, offers, walkAway])
}
