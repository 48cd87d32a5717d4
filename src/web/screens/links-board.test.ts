import fc from 'fast-check'
import { expect, test } from 'vitest'
import { links } from '../../../test/catalogue-links.js'
import { patternJoined, patternOf } from '../../proof/links/patterns.js'
import type { Joined } from '../../proof/links/winding.js'
import { type Tapped, tapLead } from './links-board.js'

const nothing: Joined = { joints: [], lines: [], sensing: [] }

function tapped(from: Joined, ...taps: readonly (string | { readonly name: string })[]): Joined {
  let [joined, first]: [Joined, Tapped] = [from, undefined]
  for (const tap of taps) {
    if (typeof tap !== 'string') first = tap
    else ({ joined, first } = tapLead(joined, { first, lead: tap }))
  }
  return joined
}

test('two taps join two leads, two more on the same take the second out again', () => {
  const joined = tapped(nothing, 'T2', 'T3')
  expect(joined.joints).toEqual([['T2', 'T3']])
  expect(tapped(joined, 'T3', 'T2').joints).toEqual([])
  expect(tapped(joined, 'T3', 'T7').joints).toEqual([['T2', 'T3', 'T7']])
  expect(tapped(joined, 'T3', 'T7', 'T2', 'T3').joints).toEqual([['T2', 'T7']])
  expect(tapped(joined, 'T4', 'T4')).toEqual(joined)
})

test('a name leaves from the lead tapped after it, one lead only, and no more when tapped again', () => {
  const joined = tapped(nothing, { name: 'L1' }, 'T1', { name: 'S1' }, 'T1')
  expect(joined).toMatchObject({ lines: [{ name: 'L1', lead: 'T1' }], sensing: [{ name: 'S1', lead: 'T1' }] })
  expect(tapped(joined, { name: 'L1' }, 'T4').lines).toEqual([{ name: 'L1', lead: 'T4' }])
  expect(tapped(joined, { name: 'L1' }, 'T1').lines).toEqual([])
})

test('every pattern can be tapped together, in any order of its leads', () => {
  fc.assert(
    fc.property(fc.constantFrom(...links.patterns), fc.infiniteStream(fc.nat()), (pattern, chance) => {
      const wanted = patternJoined(links, pattern)
      let joined = nothing
      for (const joint of wanted.joints) {
        const leads = [...joint].sort(() => (chance.next().value % 2 === 0 ? 1 : -1))
        for (const lead of leads.slice(1)) joined = tapped(joined, leads[0]!, lead)
      }
      for (const { name, lead } of wanted.lines) joined = tapped(joined, { name }, lead)
      expect(patternOf(links, { winding: pattern.winding, joined })!.id).toBe(pattern.id)
    }),
    { numRuns: 40 },
  )
})
