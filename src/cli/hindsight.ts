/**
 * `gensettle hindsight`: whether past forecasts came true, and what past choices came to.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { type Hindsight, type HindsightQuestion, lookingBack } from '../alternatives/hindsight.js'
import {
  afterChoice,
  entriesAtChoice,
  type PastChoice,
  pastChoices,
} from '../alternatives/hindsight-choices.js'
import { type KnownBy, notedLate, type SpanMonths } from '../alternatives/hindsight-spans.js'
import type { KeptResult } from '../alternatives/kept-answer.js'
import { moneyIn } from '../alternatives/say.js'
import { readSet } from '../alternatives/settle.js'
import { setsOf } from '../register/register.js'
import { answerFor } from './answer.js'
import { hindsightText, type LookedAtChoice, type Said } from './hindsight-text.js'
import { type SetOptions, type SetQuestion, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { progressOf } from './progress.js'
import type { Result } from './result.js'

export interface HindsightOptions extends SetOptions {
  readonly seed: number
  /** Months that each forecast reaches; as commander gives a choice, a text. */
  readonly months: string
  readonly dates: number
  readonly choices: number
  readonly byDate?: boolean
}

export function showHindsight(options: HindsightOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, dates, choices: mostChoices } = options
    const by: KnownBy = options.byDate ? 'happened' : 'noted'
    const months = Number(options.months) as SpanMonths
    const catalogue = shippedCatalogue()
    const { all, boat, set, asOf, memory } = question
    const asked = { entries: all, boat, set, asOf, months, most: dates, by, catalogue, seed, memory }
    const { currency, name } = namesOf({ ...question, seed })
    const hindsight = await lookBack(asked)
    const choices: LookedAtChoice[] = []
    for (const { kept, ...choice } of mostChoices > 0 ? pastChoices(all, question).slice(-mostChoices) : []) {
      const after = afterChoice(all, choice, { boat, set, asOf, catalogue })
      const said =
        kept === undefined ? await saidAt(choice, { ...question, by, seed }) : saidKept(kept.result, currency)
      choices.push({ ...choice, said, after })
    }
    const late = notedLate(all.filter((entry) => entry.set === set))
    const value = { ...hindsight, choices, notedLate: late }
    return {
      ok: true,
      json: {
        type: 'gensettle/hindsight',
        version: 1,
        boat,
        set,
        asOf,
        currency,
        seed,
        ...value,
        caution: shortCaution,
      },
      text: hindsightText(value, { name, currency }),
    }
  })
}

/** The looks back one after the other; whatever else waits is heard in between. */
async function lookBack(question: HindsightQuestion): Promise<Hindsight> {
  const bar = progressOf(`looking back on ${question.boat}`)
  try {
    const steps = lookingBack(question)
    for (;;) {
      const step = steps.next()
      if (step.done) return step.value
      bar.show(step.value.done, step.value.total)
      await new Promise((resolve) => setImmediate(resolve))
    }
  } finally {
    bar.end()
  }
}

function namesOf(question: SetQuestion & { readonly seed: number }) {
  const { register, bare } = readSet({ ...question, catalogue: shippedCatalogue() })
  return { currency: bare.currency, name: register.boatFacts.name ?? question.boat }
}

/** A first answer's histories: enough to say what would have been said. */
const histories = 2_000

/** What would have been said with what was known then; kept, since what was known then does not change any more. */
async function saidAt(
  choice: Omit<PastChoice, 'kept'>,
  { all, boat, set, memory, by, seed }: SetQuestion & { readonly by: KnownBy; readonly seed: number },
): Promise<Said | null> {
  const { asOf } = choice
  const entries = entriesAtChoice(all, choice, by)
  if (!setsOf(entries, asOf).includes(set)) return null
  // the model holds the figures of the catalogue that the answer rests on
  const { bare } = readSet({ entries, boat, set, asOf, seed, catalogue: shippedCatalogue() })
  const key = { what: 'said then', entries, asOf, set, seed, histories, model: bare }
  const found = memory.find(key) as { readonly value: Said } | undefined
  if (found !== undefined) return found.value
  const { report, saying } = await answerFor({ entries, boat, set, asOf, seed, histories, first: true })
  const said = {
    kept: false,
    best: report.verdict.best,
    walkAway: report.walkAway?.price ?? null,
    verdict: saying.verdict,
    walkAwaySaying: report.walkAway === null ? null : saying.walkAway,
  }
  memory.keep(key, said)
  return said
}

function saidKept({ best, walkAway, alternatives }: KeptResult, currency: string): Said {
  const cost = alternatives.find(({ alternative }) => alternative === best)?.mean
  const at = cost === undefined ? '' : `, at ${moneyIn(currency, cost)} in the mean`
  return {
    kept: true,
    best,
    walkAway: walkAway?.price ?? null,
    verdict: `Best: ${best}${at}.`,
    walkAwaySaying:
      walkAway === undefined
        ? null
        : `Walk away above ${moneyIn(currency, walkAway.price)} (${moneyIn(currency, walkAway.quote)} quoted).`,
  }
}
