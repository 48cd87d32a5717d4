/**
 * Looking back in the worker: a date at a time, so that a stop is heard in between, and kept when it is done.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import { lookingBack } from '../../alternatives/hindsight.js'
import { afterChoice, pastChoices } from '../../alternatives/hindsight-choices.js'
import { notedLate } from '../../alternatives/hindsight-spans.js'
import { type KeptAnswer, keptModel } from '../../alternatives/kept-answer.js'
import type { Memory } from '../../alternatives/memory.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Crew } from './crew.js'
import { keepAnswer, readAnswer } from './kept-answers.js'
import { saidAtChoice } from './look-back-choices.js'
import type { LookBackHow, LookBackState, LookedAtChoice } from './look-back-says.js'
import type { Entries } from './messages.js'
import { allOf } from './question.js'

/** Choices that are shown, the latest. */
const mostChoices = 12
/** And so many of them, the latest, are asked what would have been said, where nothing was kept. */
const mostAsked = 5

export interface LooksBack {
  readonly look: (
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    tell: (state: LookBackState) => void,
    how: LookBackHow,
  ) => Promise<void>
  readonly stop: () => void
}

/** Only what was asked for last is worked out. What was told on a date is remembered, so that going on costs nothing twice. */
export function makeLooksBack(given: {
  readonly memory: Memory
  readonly catalogue: () => Promise<Catalogue>
  readonly crew: Crew
}): LooksBack {
  let latest = 0
  const look: LooksBack['look'] = async (asked, entries, tell, how) => {
    const mine = ++latest
    const { months, most, by } = how
    const key = `looking back ${asked.key} ${months} ${most} ${by}`
    const kept = (await readAnswer(key)) as LookBackState | undefined
    if (kept !== undefined) return tell(kept)
    if (!how.start) return tell({ stage: 'asleep' })
    let come = { done: 0, total: most }
    tell({ stage: 'working', ...come })
    try {
      const all = await allOf(entries)
      const catalogue = await given.catalogue()
      const { boat, set, asOf, seed } = asked
      const { memory } = given
      const steps = lookingBack({ entries: all, boat, set, asOf, months, most, by, catalogue, seed, memory })
      for (;;) {
        await breath()
        if (mine !== latest) return tell({ stage: 'stopped', ...come })
        const step = steps.next()
        if (!step.done) {
          come = step.value
          tell({ stage: 'working', ...come })
          continue
        }
        const past = pastChoices(all, asked).slice(-mostChoices)
        const choices = past.map(
          ({ kept: answer, ...choice }, c): LookedAtChoice => ({
            ...choice,
            ...(answer === undefined ? {} : { said: saidThen(answer) }),
            ...(answer === undefined && c >= past.length - mostAsked ? { isAsked: true } : {}),
            after: afterChoice(all, choice, { boat, set, asOf, catalogue }),
          }),
        )
        const late = notedLate(all.filter((entry) => entry.set === set))
        const state = { stage: 'done', hindsight: step.value, choices, notedLate: late } as const
        tell(state)
        const stopped = () => mine !== latest
        for (const [c, { isAsked, ...choice }] of choices.entries()) {
          if (!isAsked) continue
          const of = { entries: all, by, asked, catalogue, crew: given.crew, stopped }
          const said = await saidAtChoice(choice, of)
          if (stopped()) return
          choices[c] = { ...choice, ...(said === undefined ? {} : { said }) }
          tell({ ...state, choices: [...choices] })
        }
        return await keepAnswer(key, { ...state, choices })
      }
    } catch (cause) {
      tell({ stage: 'failed', problem: cause instanceof Error ? cause.message : String(cause) })
    }
  }
  return {
    look,
    stop: () => {
      latest++
    },
  }
}

/** What a kept answer said, the best by the name it has in the life model that was kept. */
function saidThen(kept: KeptAnswer): { readonly best: string; readonly walkAway?: number } {
  const { best, walkAway } = kept.result
  const read = keptModel(kept)
  const name = read.ok ? read.model.alternatives.find(({ id }) => id === best)?.name : undefined
  return { best: name ?? best, ...(walkAway === undefined ? {} : { walkAway: walkAway.price }) }
}

function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0))
}
