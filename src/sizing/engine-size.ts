/**
 * How large an engine is for its rating, as told or as usual for its kind.
 *
 * @module
 */

import type { SizingLimits } from '../catalogue/sizing-schema.js'
import { alternatorEfficiency } from './alternator-rating.js'
import { meanPressureBar } from './engine-derating.js'
import type { SizedSet } from './sized-set.js'

type Sizing = Pick<SizingLimits, 'engine' | 'alternator'>
type Engine = Pick<SizedSet, 'aspiration' | 'ratingKW' | 'rpm' | 'sweptLitres'>

/** Mean effective pressure at the rating: by the swept volume where that is told. [bar] */
export function meanPressureOf(sizing: Sizing, set: Engine): number {
  return set.sweptLitres === undefined
    ? usualMeanPressure(sizing, set)
    : meanPressureBar({ shaftKW: shaftKW(sizing, set), sweptLitres: set.sweptLitres, rpm: set.rpm })
}

/** Swept volume: as told, or that of the usual mean pressure. [l] */
export function sweptLitresOf(sizing: Sizing, set: Engine): number {
  return (
    set.sweptLitres ??
    meanPressureBar({ shaftKW: shaftKW(sizing, set), sweptLitres: 1, rpm: set.rpm }) /
      usualMeanPressure(sizing, set)
  )
}

/** Ratio of boost: mean pressures are to one another as the air that is let in. Practice. */
export function boostRatio(sizing: Sizing, set: Engine): number {
  return usualMeanPressure(sizing, set) / sizing.engine.usualMeanPressureBar.natural
}

function usualMeanPressure({ engine }: Sizing, { aspiration }: Engine): number {
  const { natural, turbo, turboCooled } = engine.usualMeanPressureBar
  return aspiration === 'turbo' ? turbo : aspiration === 'turbo-cooled' ? turboCooled : natural
}

function shaftKW({ alternator }: Sizing, { ratingKW }: Engine): number {
  return ratingKW / alternatorEfficiency(alternator, ratingKW)
}
