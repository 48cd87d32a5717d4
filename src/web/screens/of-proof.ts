/**
 * What the log proves of a set, and what is owed, as the pages of proof need it.
 *
 * @module
 */

import { useMemo } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { type Limits, limitsOf } from '../../proof/limits.js'
import { type Owed, owedOf } from '../../proof/owed.js'
import { registerOf } from '../../register/register.js'
import type { SetRegister } from '../../register/register-types.js'
import { type Boat, useBoat } from '../data/boat.js'
import { useCatalogue } from '../data/catalogue.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'

export interface OfProof {
  readonly log: Boat
  readonly catalogue: Catalogue
  readonly limits: Limits
  readonly register: SetRegister
  readonly owed: Owed
}

/** Undefined until log and catalogue are here. */
export function useProof(of: OfSet): OfProof | undefined {
  const log = useBoat(of.boat)
  const catalogue = useCatalogue()
  const limits = useMemo(() => (catalogue === undefined ? undefined : limitsOf(catalogue)), [catalogue])
  const worked = useMemo(() => {
    if (catalogue === undefined || limits === undefined || log.status !== 'ready') return undefined
    const { entries } = log
    const register = registerOf({ entries, boat: of.boat, set: of.set, asOf: today(), catalogue })
    return { register, owed: owedOf({ ...catalogue, entries, register, limits }) }
  }, [catalogue, limits, log, of.boat, of.set])
  if (catalogue === undefined || limits === undefined || worked === undefined) return undefined
  return { log, catalogue, limits, ...worked }
}
