/**
 * Keeping in touch with the server: what it has new when someone looks again, and trying again when it does not answer.
 *
 * @module
 */

import { useSyncExternalStore } from 'react'
import type { HealthAnswer } from '../../server/http-types.js'
import { askJson, lastReach, onReach, type Reach } from './http.js'
import { refreshLessons } from './lessons.js'
import { refreshAll } from './log.js'
import { reloadOutbox } from './outbox.js'
import { sendSoon } from './sending.js'

/** Begins. Called once, when the page starts. */
export function keepInTouch(): void {
  onReach(watch)
  window.addEventListener('focus', catchUp)
  window.addEventListener('online', tryNow)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') catchUp()
  })
  void reloadOutbox().then(sendSoon)
}

/** Whether the server answers. */
export function useReach(): Reach {
  return useSyncExternalStore(onReach, lastReach)
}

/** Asks at once whether the server is back. */
export function tryNow(): void {
  pauseMs = shortest
  clearTimeout(timer)
  timer = undefined
  void ask()
}

const shortest = 1_000
const longest = 30_000
let pauseMs = shortest
let timer: ReturnType<typeof setTimeout> | undefined

function watch(): void {
  if (lastReach() === 'reachable') {
    pauseMs = shortest
    catchUp()
  } else if (lastReach() === 'unreachable') later()
}

function later(): void {
  timer ??= setTimeout(() => {
    timer = undefined
    void ask()
  }, pauseMs)
  pauseMs = Math.min(longest, pauseMs * 1.6)
}

async function ask(): Promise<void> {
  await askJson<HealthAnswer>('/api/health')
  if (lastReach() === 'unreachable') later()
}

function catchUp(): void {
  if (lastReach() === 'unreachable') return
  void refreshAll()
  void refreshLessons()
  sendSoon()
}
