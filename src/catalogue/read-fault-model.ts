/**
 * The fault model as it is once it has been read.
 *
 * @module
 */

import type { Fault, FaultCheck, FaultRule, Symptom } from './fault-schema.js'
import type { Source } from './file-schema.js'
import type { Provenance } from './provenance.js'
import type { StopLine } from './stop-line-schema.js'

/** What is known of faults before this set's own log is read. Plain data. */
export interface FaultModel {
  readonly faults: readonly Fault[]
  readonly symptoms: readonly Symptom[]
  readonly checks: readonly FaultCheck[]
  /** Those of the catalogue. */
  readonly stopLines: readonly StopLine[]
  readonly rule: FaultRule
}

export interface ReadFaultModel {
  readonly model: FaultModel
  /** Documents that it leans on besides those of the catalogue. */
  readonly sources: readonly Source[]
  /** Path of a figure to where it comes from. */
  readonly origins: ReadonlyMap<string, Provenance>
}
