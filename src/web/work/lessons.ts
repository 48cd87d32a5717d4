/**
 * What the owner's other boats have taught, worked out beside the page. Nothing of it leaves the browser.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import type { Memory } from '../../alternatives/memory.js'
import { posteriorIn, readSet } from '../../alternatives/settle.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { LifeModel } from '../../forecast/life-model.js'
import {
  type BoatLessons,
  lessonsOf,
  type Pooled,
  poolLessons,
  type SetLessons,
} from '../../forecast/pooling-lessons.js'
import { setsOf } from '../../register/register.js'
import type { BoatsAnswer, LessonsAnswer } from '../../server/http-types.js'
import { lessonsTag } from '../data/lessons-tag.js'
import { fetchLog } from './question.js'

/** What tells the lessons that are heard now from others; none where none are heard. */
export async function fetchLessonsTag(): Promise<string | undefined> {
  const answer = await fetch('/api/lessons')
  return answer.ok ? lessonsTag((await answer.json()) as LessonsAnswer) : undefined
}

/** Lessons for the boat that is asked about; none where they are not to be heard. */
export async function lessonsFor(
  asked: AskedOf,
  of: { readonly catalogue: Catalogue; readonly memory: Memory },
): Promise<Pooled | undefined> {
  if (asked.lessons === undefined) return undefined
  const answer = await fetch('/api/boats')
  if (!answer.ok) return undefined
  const { boats } = (await answer.json()) as BoatsAnswer
  const taught: BoatLessons[] = []
  let spread: LifeModel['setFactor'] | undefined
  for (const { boat, demonstration } of boats) {
    if (demonstration || boat === asked.boat) continue
    const { entries } = await fetchLog(boat)
    const models = setsOf(entries, asked.asOf).map(
      (set) => readSet({ ...asked, entries, boat, set, catalogue: of.catalogue }).bare,
    )
    if (models.length === 0) continue
    spread ??= models[0]!.setFactor
    taught.push({ boat, sets: models.map((model) => lessonsIn(model, asked.seed, of.memory)) })
  }
  return spread === undefined ? undefined : poolLessons(taught, spread)
}

function lessonsIn(model: LifeModel, seed: number, memory: Memory): SetLessons {
  const key = { what: 'lessons', model, seed }
  const found = memory.find(key) as { readonly value: SetLessons } | undefined
  if (found !== undefined) return found.value
  const lessons = lessonsOf(model, posteriorIn(memory, model, seed))
  memory.keep(key, lessons)
  return lessons
}
