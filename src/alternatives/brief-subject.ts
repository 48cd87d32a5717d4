/**
 * What a decision brief is made from.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { SetRegister } from '../register/register-types.js'
import type { WhatChanges, WorthFindingOut } from './bearing.js'
import type { SayEntries } from './brief-words.js'
import type { Compared } from './compared.js'
import type { OpenStop } from './open-stops.js'
import type { Report } from './report.js'
import type { WhenToReplace } from './when-to-replace.js'

/** What a brief is made from: an answer that stands, with what bears on it. */
export interface BriefSubject {
  readonly register: SetRegister
  readonly model: LifeModel
  /** What blocks running on, and what of it was passed over. */
  readonly stops: readonly OpenStop[]
  readonly report: Report
  /** Cheapest first. */
  readonly rows: readonly Compared[]
  readonly findingOut: WorthFindingOut
  /** null: only one alternative is open. */
  readonly changes: WhatChanges | null
  /** null: no other set is among the alternatives. */
  readonly when: WhenToReplace | null
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  readonly assumed: readonly string[]
  /** Figures of the owner that could not be used. */
  readonly problems: readonly Problem[]
  readonly catalogue: Catalogue
  /** The number of each entry in the log. */
  readonly numbers: ReadonlyMap<string, number>
  readonly seed: number
  readonly program: string
  readonly demonstration: boolean
  /** What the owner's other boats taught, in words; none: they were not heard. */
  readonly heard?: readonly string[]
}

/** The same with the words that its passages share. */
export interface BriefOf extends BriefSubject {
  readonly boatName: string
  readonly setLine: string
  readonly entries: SayEntries
}
