/**
 * Questions about orders: what came without having been ordered, was checked without having come, or is to come too early.
 *
 * @module
 */

import type { orderStates } from './bodies-order.js'
import { firstDay, lastDay } from './dates.js'
import { type Entry, type EntryOf, isKind } from './kinds.js'
import { sayEntryOf } from './oddities-words.js'
import type { Oddity } from './oddity.js'

type OrderState = (typeof orderStates)[number]

/** Questions about orders. Entries in the order of `byDate`. */
export function orderOddities(entries: readonly Entry[]): Oddity[] {
  const seen = new Map<string, ReadonlySet<OrderState>>()
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'order')) return []
    const asked = [...outOfTurn(entry, seen), ...expectedTooEarly(entry)]
    for (const line of entry.body.lines) {
      const key = keyOf(entry, line)
      seen.set(key, new Set([...(seen.get(key) ?? []), entry.body.state]))
    }
    return asked
  })
}

const before: Readonly<Record<OrderState, OrderState | undefined>> = {
  ordered: undefined,
  received: 'ordered',
  checked: 'received',
}
const inWords: Readonly<Record<OrderState, string>> = {
  ordered: 'was ordered',
  received: 'came',
  checked: 'was checked',
}

function outOfTurn(entry: EntryOf<'order'>, seen: ReadonlyMap<string, ReadonlySet<OrderState>>): Oddity[] {
  const { state, lines } = entry.body
  const wanted = before[state]
  if (wanted === undefined) return []
  const missing = lines.filter((line) => !seen.get(keyOf(entry, line))?.has(wanted))
  if (missing.length === 0) return []
  const names = missing.map(
    ({ part, piece }) => `"${piece ?? part}"${piece === undefined ? '' : ` of "${part}"`}`,
  )
  return [
    {
      code: `${state}-before-${wanted}`,
      ids: [entry.id],
      question: `By the ${sayEntryOf(entry)} ${names.join(', ')} ${inWords[state]}, and no entry says that it ${inWords[wanted]}. Was it aboard already, or is an entry missing?`,
    },
  ]
}

function expectedTooEarly(entry: EntryOf<'order'>): Oddity[] {
  const { expected } = entry.body
  if (expected === undefined || lastDay(expected) >= firstDay(entry.from)) return []
  return [
    {
      code: 'expected-before-ordered',
      ids: [entry.id],
      question: `What the ${sayEntryOf(entry)} is about is expected for ${expected}, which is before it. Is one of the dates wrong?`,
    },
  ]
}

function keyOf(
  { set }: EntryOf<'order'>,
  { part, piece }: { readonly part: string; readonly piece?: string | undefined },
): string {
  return `${set} ${part} ${piece ?? ''}`
}
