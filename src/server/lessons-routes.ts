/**
 * Whether the owner's boats hear one another's lessons. What they teach is worked out by the page, and stays there.
 *
 * @module
 */

import { Hono } from 'hono'
import * as z from 'zod'
import { problemsOf } from '../logbook/problems.js'
import { hearLessons, lessonsHeard } from '../store/lessons-setting.js'
import { onlyTypes, refuse } from './guards.js'
import type { LessonsAnswer } from './http-types.js'
import type { Served } from './served.js'

const askedSchema = z.strictObject({ heard: z.boolean() })

export function lessonsRoutes({ store }: Served): Hono {
  const routes = new Hono()
  const answer = (heard: boolean): LessonsAnswer => ({ heard, entries: heard ? entriesKept() : 0 })
  /** Lines are only ever added, so that their number says whether any log is another. */
  const entriesKept = () =>
    store.boats().reduce((sum, boat) => {
      const read = store.lines(boat)
      return sum + (read.ok ? read.texts.length : 0)
    }, 0)
  routes.get('/lessons', (c) => {
    const setting = lessonsHeard(store.folder)
    return setting.ok ? c.json(answer(setting.heard)) : refuse(c, 409, ...setting.problems)
  })
  routes.post('/lessons', onlyTypes('application/json'), async (c) => {
    const value: unknown = await c.req.json().catch(() => undefined)
    const asked = askedSchema.safeParse(value)
    if (!asked.success) return refuse(c, 400, ...problemsOf(asked.error, value))
    const problems = hearLessons(store.folder, asked.data.heard)
    return problems.length > 0 ? refuse(c, 409, ...problems) : c.json(answer(asked.data.heard))
  })
  return routes
}
