/**
 * Numbers and dates as people type them.
 *
 * @module
 */

import type { LogDate } from '../../logbook/dates.js'
import { inOrder, readDate } from '../../logbook/paper-log-dates.js'

/** `5,240`, `5 240.5`, `12,5`, `£38`: the number meant; undefined where it is none, or could be two. */
export function numberTyped(text: string): number | undefined {
  const bare = text
    .trim()
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^[^\d.,+-]{0,3}/, '')
    .replace(/^[−–]/, '-')
  if (bare === '') return undefined
  const thousands = /^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(bare)
  const decimalComma = /^[+-]?\d*,(\d{1,2}|\d{4,})$/.test(bare)
  const plain = thousands ? bare.replaceAll(',', '') : decimalComma ? bare.replace(',', '.') : bare
  const number = Number(plain)
  return /\d/.test(plain) && Number.isFinite(number) ? number : undefined
}

/** `today`, `25 Nov 2026`, `Nov 2026`, `2026`, `2026-11-25`, and `25/11/2026` with the day first: the date meant. */
export function dateTyped(text: string, today: LogDate): LogDate | undefined {
  const words = text.trim().toLowerCase()
  if (words === 'today') return today
  if (words === 'yesterday') return dayBefore(today)
  const written = readDate(words)
  return written && inOrder(written, 'day-first')
}

function dayBefore(date: LogDate): LogDate {
  return new Date(Date.parse(date) - 86_400_000).toISOString().slice(0, 10)
}
