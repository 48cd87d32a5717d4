/**
 * What is reckoned by, where a meter recorded what the set gives: the list, the recording, or the list corrected by it.
 *
 * @module
 */

import { useId } from 'react'
import { type DemandBasis, demandBases } from '../../sizing/demand-basis.js'
import { words } from '../words/measured.js'

export interface BasisChoiceProps {
  readonly chosen: DemandBasis
  readonly onChoose: (basis: DemandBasis) => void
}

export function BasisChoice({ chosen, onChoose }: BasisChoiceProps) {
  const name = useId()
  return (
    <fieldset className="kinds">
      <legend className="small">{words.basis.which}</legend>
      {demandBases.map((basis) => (
        <label key={basis}>
          <input type="radio" name={name} checked={basis === chosen} onChange={() => onChoose(basis)} />
          {words.basis.names[basis]}
        </label>
      ))}
    </fieldset>
  )
}
