/**
 * Back to what the case was before the last answer.
 *
 * @module
 */

import { Button } from '../parts/index.js'
import { words } from '../words/faults.js'
import type { OfCase } from './of-case.js'

export function BackButton({ before, put, busy }: OfCase) {
  if (before === undefined) return null
  return (
    <Button look="light" disabled={busy} onClick={() => put(before)}>
      {words.back}
    </Button>
  )
}
