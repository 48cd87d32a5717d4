/**
 * What was seen on a part, as chances under each state it may have been in.
 *
 * @module
 */

import { requireWithin } from '../../src/units/require.js'

/** One look by a check that shows a defect or does not. */
export interface Look {
  readonly kind: 'look'
  /** Age of the part at the look. [clock of the mode] */
  readonly age: number
  /** Name of the check: looks by the same check at the same defect hang together. */
  readonly check: string
  /** Chance that the check shows a defect that is there. */
  readonly detection: number
  /** Chance that it shows one that is not. */
  readonly falseAlarm: number
  /** Chance that it shows a hidden mode that has failed; as `detection` if left out. */
  readonly failedDetection?: number
  readonly seen: boolean
}

/**
 * Anything else that was learnt at an age, already put as its chance under each state. Only the ratios matter, so
 * likelihoods above 1 will do as well.
 */
export interface StatePair {
  readonly kind: 'pair'
  readonly age: number
  readonly ifSound: number
  readonly ifDefective: number
  /** For a hidden mode that has failed; as `ifDefective` if left out. */
  readonly ifFailed?: number
}

export type Observation = Look | StatePair

/**
 * Whether looks by one check at one defect each have their own luck, or the check tends to miss what it missed before.
 *
 * `persistent`: the check's chance d of showing this defect is itself drawn once, from a beta with weights a = 2d and
 * b = 2(1 − d), so that n misses have chance Π_{i<n} (b + i)/(a + b + i). Practice.
 */
export type RepeatedLooks = 'independent' | 'persistent'

/**
 * Chances of the observations, cut by when the defect arose and when it failed. Observations are numbered by age.
 */
export interface LookChances {
  readonly ages: Float64Array
  /** `sound[i]`: of observations before the i-th, all made on a sound part; one longer than `ages`. */
  readonly sound: Float64Array
  /** `defective(i, k)`: of observations i to k − 1, all made on one defect that arose just before the i-th. */
  readonly defective: (from: number, to: number) => number
  /** `failed[k]`: of observations from the k-th on, all made on a part that failed just before it; one longer. */
  readonly failed: Float64Array
}

/**
 * Chances of a run of observations under every order of sound, defective, failed.
 *
 * @throws RangeError if an observation lies outside age 0 to `untilAge`, or a chance outside its span.
 */
export function lookChances(record: {
  readonly observations: readonly Observation[]
  readonly untilAge: number
  readonly repeatedLooks: RepeatedLooks
}): LookChances {
  const { observations, untilAge, repeatedLooks } = record
  for (const observation of observations) requireObservation(observation, untilAge)
  const inOrder = [...observations].sort((one, other) => one.age - other.age)
  const count = inOrder.length

  const sound = new Float64Array(count + 1)
  sound[0] = 1
  for (let j = 0; j < count; j++) sound[j + 1] = sound[j]! * chanceIfSound(inOrder[j]!)

  const rows: Float64Array[] = []
  const failed = new Float64Array(count + 1)
  for (let from = 0; from <= count; from++) {
    rows.push(runChances(inOrder.slice(from), { state: 'defective', repeatedLooks }))
    failed[from] = runChances(inOrder.slice(from), { state: 'failed', repeatedLooks }).at(-1)!
  }
  return {
    ages: Float64Array.from(inOrder, (observation) => observation.age),
    sound,
    defective: (from, to) => rows[from]![to - from]!,
    failed,
  }
}

/** A finding that several modes can cause. */
export interface SharedSymptom {
  readonly seen: boolean
  /** Chance that the check shows it with nothing wrong. */
  readonly falseAlarm: number
  /** Chance that it shows this mode's defect. */
  readonly detection: number
  /** The other modes that could show the same: chance that each is defective now, and that the check shows it. */
  readonly others: readonly { readonly defectiveChance: number; readonly detection: number }[]
}

/**
 * Chances of a shared symptom for one mode, the others weighed by what is known of them:
 *
 *     seen if defective = 1 − (1 − f)(1 − dᵢ) Π_{k≠i} (1 − dₖ pₖ)
 *     seen if sound     = 1 − (1 − f)         Π_{k≠i} (1 − dₖ pₖ)
 *
 * so that one vibration never makes three defects.
 *
 * @throws RangeError if a chance is outside 0 to 1.
 */
export function sharedSymptom(symptom: SharedSymptom): {
  readonly ifSound: number
  readonly ifDefective: number
} {
  const { seen, falseAlarm, detection, others } = symptom
  requireWithin('falseAlarm', falseAlarm, 0, 1, '')
  requireWithin('detection', detection, 0, 1, '')
  let quiet = 1 - falseAlarm
  for (const other of others) {
    requireWithin('defectiveChance', other.defectiveChance, 0, 1, '')
    requireWithin('detection', other.detection, 0, 1, '')
    quiet *= 1 - other.detection * other.defectiveChance
  }
  const quietIfDefective = quiet * (1 - detection)
  return seen
    ? { ifSound: 1 - quiet, ifDefective: 1 - quietIfDefective }
    : { ifSound: quiet, ifDefective: quietIfDefective }
}

/** Chance of each opening of a run of observations, all in one state: entry n is for the first n of them. */
function runChances(
  run: readonly Observation[],
  rule: { readonly state: 'defective' | 'failed'; readonly repeatedLooks: RepeatedLooks },
): Float64Array {
  const chances = new Float64Array(run.length + 1)
  chances[0] = 1
  const earlier = new Map<string, { looks: number; seen: number }>()
  for (const [index, observation] of run.entries()) {
    let chance: number
    if (observation.kind === 'pair') {
      chance =
        rule.state === 'failed' ? (observation.ifFailed ?? observation.ifDefective) : observation.ifDefective
    } else {
      const before = earlier.get(observation.check) ?? { looks: 0, seen: 0 }
      const own =
        rule.state === 'failed'
          ? (observation.failedDetection ?? observation.detection)
          : observation.detection
      // Of a beta with weights 2d and 2(1 − d), after `seen` of `looks` have shown: (2d + seen) / (2 + looks).
      const shows = rule.repeatedLooks === 'independent' ? own : (2 * own + before.seen) / (2 + before.looks)
      chance = observation.seen ? shows : 1 - shows
      earlier.set(observation.check, {
        looks: before.looks + 1,
        seen: before.seen + (observation.seen ? 1 : 0),
      })
    }
    chances[index + 1] = chances[index]! * chance
  }
  return chances
}

function chanceIfSound(observation: Observation): number {
  if (observation.kind === 'pair') return observation.ifSound
  return observation.seen ? observation.falseAlarm : 1 - observation.falseAlarm
}

function requireObservation(observation: Observation, untilAge: number): void {
  requireWithin('age', observation.age, 0, untilAge, 'of the clock')
  if (observation.kind === 'look') {
    requireWithin('detection', observation.detection, 0, 1, '')
    requireWithin('falseAlarm', observation.falseAlarm, 0, 1, '')
    requireWithin('failedDetection', observation.failedDetection ?? 0, 0, 1, '')
  } else {
    requireWithin('ifSound', observation.ifSound, 0, 1e6, '')
    requireWithin('ifDefective', observation.ifDefective, 0, 1e6, '')
    requireWithin('ifFailed', observation.ifFailed ?? 0, 0, 1e6, '')
  }
}
