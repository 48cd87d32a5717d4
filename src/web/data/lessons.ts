/**
 * Whether the owner's boats hear one another's lessons.
 *
 * @module
 */

import { useEffect } from 'react'
import type { Problem } from '../../catalogue/problem.js'
import type { LessonsAnswer } from '../../server/http-types.js'
import { type Answer, askJson, sendJson } from './http.js'
import { lessonsTag } from './lessons-tag.js'
import { type Live, live, useLive } from './value.js'

export interface Lessons {
  readonly status: 'loading' | 'ready'
  readonly heard: boolean
  /** Another one whenever a log may teach otherwise; none where nothing is heard. */
  readonly tag?: string
  readonly problems: readonly Problem[]
}

const held: Live<Lessons> = live<Lessons>({ status: 'loading', heard: false, problems: [] })

export function useLessons(): Lessons {
  useEffect(() => void refreshLessons(), [])
  return useLive(held)
}

export async function refreshLessons(): Promise<void> {
  take(await askJson<LessonsAnswer>('/api/lessons'))
}

/** Lets the boats hear one another, or not. */
export async function hear(heard: boolean): Promise<void> {
  const before = held.get()
  held.set({ ...before, heard })
  const answer = await sendJson<LessonsAnswer>('/api/lessons', { heard })
  if (!answer.ok) held.set({ ...before, problems: answer.problems })
  else take(answer)
}

/** What is not answered leaves things as they are; at first as nothing heard. */
function take(answer: Answer<LessonsAnswer>): void {
  const before = held.get()
  if (!answer.ok) {
    held.set({ ...before, status: 'ready', problems: answer.problems })
    return
  }
  const tag = lessonsTag(answer.value)
  const { heard } = answer.value
  if (
    before.status === 'ready' &&
    before.heard === heard &&
    before.tag === tag &&
    before.problems.length === 0
  )
    return
  held.set({ status: 'ready', heard, problems: [], ...(tag === undefined ? {} : { tag }) })
}
