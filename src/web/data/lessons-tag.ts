/**
 * What tells lessons of other boats from others.
 *
 * @module
 */

import type { LessonsAnswer } from '../../server/http-types.js'

/** What tells the lessons that are heard from others; none where none are heard. */
export function lessonsTag({ heard, entries }: LessonsAnswer): string | undefined {
  return heard ? String(entries) : undefined
}
