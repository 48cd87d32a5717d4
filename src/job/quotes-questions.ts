/**
 * What offers leave unsaid that could change which is best, or carry one past the price to walk away from.
 *
 * @module
 */

import type { LeavableWork } from '../alternatives/left-out.js'
import { meanOf } from '../alternatives/sum-of-amounts.js'
import type { CatalogueOffers } from '../catalogue/offer-schema.js'
import { normalQuantile } from '../forecast/special-normal.js'
import { leavable } from '../logbook/bodies-work.js'
import type { Comparison, RankedOffer } from './quotes.js'
import type { Offer } from './quotes-offers.js'
import { onScope, type ScopeKnown } from './quotes-scope.js'

export const asked = [
  'tax',
  'left-out',
  'left-out-together',
  'also-left-out',
  'days',
  'guarantee',
  'firm',
  'strip-down',
  'validity',
  'stages',
] as const

/** Something to ask one who offers. */
export interface OpenQuestion {
  readonly about: (typeof asked)[number]
  /** Work that it is about. */
  readonly works: readonly LeavableWork[]
  /** What asking is worth: the mean saving by choosing with the answer. */
  readonly worth: number
  /** The answer furthest from what is reckoned with now: what it would add; less than nothing: take off. */
  readonly swing: number
  /** Some answer makes another offer the best. */
  readonly changesOrder: boolean
  /** Some answer carries the offer past the cost at which to walk away, or brings it below. */
  readonly passesWalkAway: boolean
}

/** What was said in words only, and so has no price. */
const unpriced = { worth: 0, swing: 0, changesOrder: false, passesWalkAway: false } as const

/** An answer that may come: its chance, and the offer as it then stands. What is left of the chance: as reckoned now. */
interface Answer {
  readonly chance: number
  readonly offer: Offer
}

/**
 * Questions to one who offers, what asking is worth first. Worth is `Σ p·(cost of what is chosen now − least cost)` over the answers,
 * the choice being among all offers and, where its cost is known, walking away. Left out: what no answer to can change anything.
 */
export function questionsTo(
  one: RankedOffer,
  of: { readonly comparison: Comparison; readonly known: Omit<ScopeKnown, 'scope'> },
): OpenQuestion[] {
  const { comparison, known } = of
  const { offers } = known.catalogue
  const { offer } = one
  const judge = judgeOf(one, comparison)
  const expected = (changed: Offer) => onScope(changed, { ...known, scope: comparison.scope }).expected
  const judged = (
    about: OpenQuestion['about'],
    answers: readonly Answer[],
    works: readonly LeavableWork[] = [],
  ) => ({
    about,
    works,
    ...judge(
      answers.map((answer) => ({ chance: answer.chance, change: expected(answer.offer) - one.expected })),
    ),
  })
  const others = comparison.offers.filter(({ offer: { entry } }) => entry !== offer.entry)
  const leftOut = leavable
    .filter((work) => !offer.excludes.includes(work) && !offer.includes.includes(work))
    .map((work) => {
      const chance = chanceLeftOut(work, { offers, others: others.map((other) => other.offer) })
      const answer = { chance, offer: { ...offer, excludes: [...offer.excludes, work] } }
      return { work, chance, question: judged('left-out', [answer], [work]) }
    })
  const singly = leftOut.map(({ question }) => question).filter(matters)
  const quiet = leftOut.filter(({ question }) => !matters(question))
  const together = {
    about: 'left-out-together' as const,
    works: quiet.map(({ work }) => work),
    ...judge(everyMixture(quiet.map(({ chance, question }) => ({ chance, change: question.swing })))),
  }
  return [
    ...otherQuestions(one, known).map(({ about, answers }) => judged(about, answers)),
    ...singly,
    together,
  ]
    .filter(matters)
    .concat(offer.alsoExcludes === undefined ? [] : [{ about: 'also-left-out', works: [], ...unpriced }])
    .sort((a, b) => b.worth - a.worth || Math.abs(b.swing) - Math.abs(a.swing))
}

function matters({
  changesOrder,
  passesWalkAway,
}: Pick<OpenQuestion, 'changesOrder' | 'passesWalkAway'>): boolean {
  return changesOrder || passesWalkAway
}

interface Change {
  readonly chance: number
  readonly change: number
}

/** Judges a question by what its answers would add to the cost of one offer. */
function judgeOf(one: RankedOffer, { offers, walkAway }: Comparison) {
  const others = offers.filter(({ offer }) => offer.entry !== one.offer.entry).map(({ expected }) => expected)
  const bestOther = Math.min(...others)
  const elsewhere = Math.min(bestOther, walkAway?.cost ?? Infinity)
  const isBest = one.expected <= bestOther
  return (changes: readonly Change[]): Omit<OpenQuestion, 'about' | 'works'> => ({
    worth: changes.reduce((sum, { chance, change }) => {
      const cost = one.expected + change
      const chosen = one.expected <= elsewhere ? cost : elsewhere
      return sum + chance * (chosen - Math.min(cost, elsewhere))
    }, 0),
    swing: changes.reduce((most, { change }) => (Math.abs(change) > Math.abs(most) ? change : most), 0),
    changesOrder: changes.some(({ chance, change }) => {
      const cost = one.expected + change
      // which of them is best says nothing where all of them are walked away from
      const isTaken = Math.min(cost, one.expected, bestOther) <= (walkAway?.cost ?? Infinity)
      return chance > 0 && others.length > 0 && isTaken && cost <= bestOther !== isBest
    }),
    passesWalkAway:
      walkAway !== undefined &&
      changes.some(
        ({ chance, change }) =>
          chance > 0 && one.expected + change <= walkAway.cost !== one.expected <= walkAway.cost,
      ),
  })
}

/** All mixtures of independent changes, each there or not. */
function everyMixture(list: readonly Change[]): Change[] {
  return list.reduce<Change[]>(
    (all, { chance, change }) =>
      all.flatMap((one) => [
        { chance: one.chance * (1 - chance), change: one.change },
        { chance: one.chance * chance, change: one.change + change },
      ]),
    [{ chance: 1, change: 0 }],
  )
}

/** That work of which nothing was said turns out to be left out; likelier where another offer leaves it out. */
function chanceLeftOut(
  work: LeavableWork,
  { offers: { unsaid }, others }: { readonly offers: CatalogueOffers; readonly others: readonly Offer[] },
): number {
  const usual = {
    removal: unsaid.removalChance,
    refitting: unsaid.refittingChance,
    lifting: unsaid.liftingChance,
    testing: unsaid.testingChance,
    carriage: unsaid.carriageChance,
    travel: unsaid.travelChance,
    parts: unsaid.partsChance,
    consumables: unsaid.consumablesChance,
    'haul-out': unsaid.haulOutChance,
    disposal: unsaid.disposalChance,
  }[work]
  const elsewhere = others.some(({ excludes }) => excludes.includes(work))
  return elsewhere ? Math.max(usual, unsaid.otherLeavesOutChance) : usual
}

/** Weights of the 10, 50 and 90 in 100 of what the days may be. Source: Swanson's rule, as docs/life-model.md, 48; recalled. */
const swanson = [
  [0.1, 0.3],
  [0.5, 0.4],
  [0.9, 0.3],
] as const

/** What else an offer leaves unsaid, with the answers that may come. */
function otherQuestions(
  one: RankedOffer,
  known: Omit<ScopeKnown, 'scope'>,
): { readonly about: OpenQuestion['about']; readonly answers: readonly Answer[] }[] {
  const { offer, wait } = one
  const { offers } = known.catalogue
  const { unsaid, guarantee, promised } = offers
  const list: { about: OpenQuestion['about']; answers: Answer[] }[] = []
  if (offer.taxUnknown && offer.taxPercent > 0) {
    const withTax = offer.amount * (1 + offer.taxPercent / 100)
    list.push({ about: 'tax', answers: [{ chance: unsaid.taxChance, offer: { ...offer, withTax } }] })
  }
  if (wait.by === 'usual') {
    const { days } = wait
    const level = meanOf(days) / (promised.daysFactor * Math.exp(promised.logSd ** 2 / 2))
    const logSd = typeof days === 'object' && 'logSd' in days ? days.logSd : 0
    const answers = swanson.map(([share, chance]) => {
      const daysOut = level * Math.exp(logSd * normalQuantile(share) - logSd ** 2 / 2)
      return { chance, offer: { ...offer, ...(wait.stands ? { days: daysOut } : { daysOut }) } }
    })
    list.push({ about: 'days', answers })
  }
  if (offer.guaranteeMonths === undefined) {
    const given = { ...offer, guaranteeMonths: guarantee.usualMonths }
    list.push({ about: 'guarantee', answers: [{ chance: guarantee.givenChance, offer: given }] })
  }
  if (offer.firmness === 'estimate') {
    list.push({
      about: 'firm',
      answers: [{ chance: unsaid.firmChance, offer: { ...offer, firmness: 'firm' } }],
    })
  }
  if (offer.subjectToStripDown) {
    const answer = { ...offer, subjectToStripDown: false }
    list.push({ about: 'strip-down', answers: [{ chance: unsaid.firmChance, offer: answer }] })
  }
  if (offer.expired) {
    list.push({
      about: 'validity',
      answers: [{ chance: unsaid.heldChance, offer: { ...offer, expired: false } }],
    })
  }
  if (offer.stages.length === 0) {
    const stages = [{ when: 'order' as const, share: unsaid.depositShare }]
    list.push({ about: 'stages', answers: [{ chance: unsaid.depositChance, offer: { ...offer, stages } }] })
  }
  return list
}
