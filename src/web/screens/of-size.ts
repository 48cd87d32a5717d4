/**
 * What the page on sizing starts from: the log read as far as today.
 *
 * @module
 */

import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Entry } from '../../logbook/kinds.js'
import { loadFactsOf } from '../../register/load-facts.js'
import { registerOf } from '../../register/register.js'
import type { SetRegister } from '../../register/register-types.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { DemandBasis } from '../../sizing/demand-basis.js'
import { recordingOf } from '../../sizing/measured-summary.js'
import type { SizeQuestion } from '../../sizing/size-boat.js'
import { today } from '../data/today.js'

export interface OfSize {
  readonly register: SetRegister
  readonly question: SizeQuestion
}

export function ofSize(
  catalogue: Catalogue,
  of: {
    readonly entries: readonly Entry[]
    readonly boat: string
    readonly set: string
    readonly basis?: DemandBasis | undefined
  },
): OfSize {
  const { entries, boat, set, basis } = of
  const asOf = today()
  const register = registerOf({ entries, boat, set, asOf, catalogue })
  const recording = recordingOf(entries, { set, asOf })
  const { loads, loadRules, motors, sizing, wholeSet } = setCatalogueOf(register, catalogue).catalogue
  return {
    register,
    question: {
      book: { loads, loadRules, motors, sizing, wholeSet },
      facts: loadFactsOf(entries, { boat, set, asOf }),
      setFacts: register.setFacts,
      set,
      use: register.use?.months,
      ...(recording === undefined ? {} : { recording }),
      ...(basis === undefined ? {} : { basis }),
    },
  }
}
