/**
 * That the lessons of the owner's other boats were heard, in words.
 *
 * @module
 */

import type { Pooled } from '../forecast/pooling-lessons.js'

/** What they say before her own log is read; undefined where there are none. */
export function sayLessons(pooled: Pooled | undefined): string | undefined {
  if (pooled === undefined || pooled.boats === 0) return undefined
  const systems = Object.keys(pooled.systems)
  const whose = pooled.boats === 1 ? 'one of your other boats' : `${pooled.boats} of your other boats`
  const also = systems.length === 0 ? '' : `, ${systems.join(' and ')} apart from that by what theirs did`
  const times = Number(Math.exp(pooled.boat.mean).toPrecision(2))
  return `Heard: the lessons of ${whose}. Before her own log is read, lives are taken as ${times} times the usual${also}`
}
