/**
 * The recording and the list against each other, in words.
 *
 * @module
 */

import type { DemandBasis } from '../../sizing/demand-basis.js'
import { sayBasis, spoken } from '../../sizing/say-size.js'
import type { MeasuredDemand } from '../../sizing/size-boat.js'
import { words } from '../words/measured.js'

export interface MeasuredSaysProps {
  readonly measured: MeasuredDemand
  readonly basis: DemandBasis
}

export function MeasuredSays({ measured, basis }: MeasuredSaysProps) {
  const { against } = measured
  return (
    <p className="prose gap-small">
      {[
        ...(against === undefined
          ? []
          : [words.against(spoken(against.measuredKW.mean), spoken(against.listKW.mean))]),
        sayBasis({ measured, basis }),
      ].join(' ')}
    </p>
  )
}
