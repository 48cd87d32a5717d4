/**
 * What is believed of a set and its parts now, as tables a simulation can start from.
 *
 * @module
 */

/**
 * The posterior of a life model: nodes of ln κ with their weights, and for each node and mode a table of
 * `POSTERIOR_STEPS` equally likely starting states.
 *
 * Modes are numbered in model order (all modes of part 0, then of part 1 …). Entry `i` of mode `m` at node
 * `n` is at `(n · modes + m) · POSTERIOR_STEPS + i`; entry `i` of part `p` at `(n · parts + p) · POSTERIOR_STEPS + i`.
 */
export interface Posterior {
  /** Nodes of ln κ, rising. */
  readonly kappaLog: Float64Array
  /** Posterior weight of each node; the sum is 1. */
  readonly kappaWeight: Float64Array
  /** ln of the chance of the record given the model. */
  readonly logEvidence: number
  /** Whole factor on the scale of the life in place: θ, κ included, times the quality of the piece in place. */
  readonly theta: Float32Array
  /** 0 sound, 1 defective, 2 failed unnoticed. */
  readonly state: Uint8Array
  /** Age now on the mode's own clock (hours weighted by soot) since its last renewal or clearing. */
  readonly age: Float32Array
  /** Defective or failed: time since onset on the delay's clock; 0 when sound. */
  readonly since: Float32Array
  /** Running hours since the last renewal of the mode: the phase of its checks. */
  readonly ageHours: Float32Array
  /** Time since a service of the part last fell due, done or not, or it was renewed. [years] */
  readonly serviceYears: Float32Array
  /** Running hours since the last service (or renewal) of the part. [h] */
  readonly serviceHours: Float32Array
  /** Per part, 1: one index is drawn for all modes of the part (they belong together); 0: each mode its own. */
  readonly joint: Uint8Array
  /** What is entered and cannot be, three numbers each; {@link setAsideIn} reads them. */
  readonly setAside: Int32Array
}

/** Entries of each table. */
export const POSTERIOR_STEPS = 1024

/** What may be set aside because no scale of a life allows for it. */
export const whatMayBeSetAside = [
  'looks',
  'broken',
  'past-life',
  'age',
  'everything',
  'symptom',
  'let-downs',
] as const

/** Something entered that contradicts the model and was left out. */
export interface SetAside {
  /** Absent: of the set. */
  readonly part?: string
  /** Absent: of the whole part. */
  readonly mode?: string
  readonly what: (typeof whatMayBeSetAside)[number]
}

/** What a posterior leaves out, in the order of the model's parts. */
export function setAsideIn(
  model: {
    readonly parts: readonly { readonly id: string; readonly modes: readonly { readonly id: string }[] }[]
  },
  { setAside }: Pick<Posterior, 'setAside'>,
): SetAside[] {
  return Array.from({ length: setAside.length / 3 }, (_, i) => {
    const part = model.parts[setAside[3 * i]!]
    const mode = part?.modes[setAside[3 * i + 1]!]
    const what = whatMayBeSetAside[setAside[3 * i + 2]!]!
    return {
      ...(part === undefined ? {} : { part: part.id }),
      ...(mode === undefined ? {} : { mode: mode.id }),
      what,
    }
  })
}
