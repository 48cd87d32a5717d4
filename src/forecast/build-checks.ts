/**
 * The checks of ordinary care, and what it takes to make one out of turn.
 *
 * @module
 */

import type { Check } from '../catalogue/file-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Terms } from '../register/register-types.js'
import { ordinaryDiligence, usualOwnerDoes } from './build-repair.js'
import type { LifeModelInput } from './life-model.js'

type CheckInput = NonNullable<LifeModelInput['checks']>[number]

/** The way in that a check with panels off opens. */
const panelsOff = 'panels-off'

/** Checks at the owner's diligence. */
export function checksOf(catalogue: SetCatalogue, terms: Terms): CheckInput[] {
  const diligence = (terms.diligence ?? ordinaryDiligence) / ordinaryDiligence
  return catalogue.checks.map((check) => ({
    id: check.id,
    name: check.name,
    everyHours: check.ordinaryIntervalHours,
    diligence: Math.min(0.98, check.ordinaryDiligence * diligence),
    effort: effortOf(check, catalogue, terms),
  }))
}

/** A look that asks for skill is the owner's where they do deeper work than minor; else somebody comes for it. Practice. */
function effortOf(check: Check, catalogue: SetCatalogue, terms: Terms): NonNullable<CheckInput['effort']> {
  const skilled = (terms.ownerDoes ?? usualOwnerDoes).some((depth) => depth !== 'minor')
  const own = { owner: true, laboratory: true, skilled, workshop: false }[check.who]
  const { minorRepairChance, ownerFactor } = catalogue.wholeSet.intrusion
  const panels = check.opens === 'nothing' ? [] : catalogue.access.filter(({ id }) => id === panelsOff)
  return {
    hours: (check.minutes ?? 0) / 60,
    shareOfRepairHours: check.shareOfPartHours ?? 0,
    by: own ? 'owner' : 'paid',
    trips: own ? 0 : 1,
    price: check.fee?.typical ?? 0,
    access: panels.map(({ id }) => id),
    opensPart: check.opens === 'some-parts' || check.opens === 'much',
    intrusionChance: check.intrusive ? Math.min(1, minorRepairChance * (own ? ownerFactor : 1)) : 0,
  }
}
