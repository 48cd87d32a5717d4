/**
 * Symptoms that several modes may give: what each comes to for each of its suspects.
 *
 * @module
 */

import { chanceOfOnsetBefore, type KnownMode, knownModes } from './known-modes.js'
import type { LifeModel } from './life-model.js'
import type { Look } from './mode-looks.js'
import type { PlayedSample } from './posterior-played.js'
import type { UseTrack } from './track.js'

/** What a posterior is worked out from. */
export interface Sources {
  readonly model: LifeModel
  readonly past: UseTrack
  readonly kappaLogSd: number
  /** Even points of ln θ, where they are fewer than usual. */
  readonly thetaPoints?: number
}

/**
 * Brings symptoms in. The chances that the other modes were defective before each symptom are those without any
 * symptom, so that the order of entry does not matter; a pair is divided by the symptom's own chance, so that its
 * evidence is not counted once for every mode.
 */
export function withSymptoms(
  sources: Sources,
  parts: {
    readonly known: readonly (readonly KnownMode[])[]
    readonly samples: readonly (PlayedSample | null)[]
  },
): {
  readonly known: KnownMode[][]
  /** Suspects of a symptom that was seen though none of them can have given it. */
  readonly unexplained: readonly { readonly p: number; readonly m: number }[]
} {
  const { model } = sources
  const unexplained: { p: number; m: number }[] = []
  const extra = new Map<string, Look[]>()
  const nth = model.parts.map(() => 0)
  const played: { p: number; symptom: number; pair: SymptomPair }[] = []
  for (const symptom of model.symptoms) {
    const suspects = symptom.modes.flatMap(({ part, mode, detection }) => {
      const p = model.parts.findIndex(({ id }) => id === part)
      const m = p < 0 ? -1 : model.parts[p]!.modes.findIndex(({ id }) => id === mode)
      if (m < 0) return []
      const sample = parts.samples[p]
      const place = sample ? nth[p]!++ : -1
      const chance = sample
        ? chanceDefectiveAtSymptom(sample, place)
        : chanceOfOnsetBefore(parts.known[p]![m]!, symptom.yearsAgo)
      return [{ p, m, place, detection, chance }]
    })
    const canBe = symptom.falseAlarm > 0 || suspects.some(({ chance, detection }) => chance * detection > 0)
    if (symptom.seen && !canBe) {
      unexplained.push(...suspects.map(({ p, m }) => ({ p, m })))
      continue
    }
    suspects.forEach((suspect, i) => {
      const pair = symptomPair(symptom, { suspects, i })
      if (suspect.place >= 0) played.push({ p: suspect.p, symptom: suspect.place, pair })
      else {
        const key = `${suspect.p} ${suspect.m}`
        const look = { yearsAgo: symptom.yearsAgo, seen: { ...pair, failed: pair.defective } }
        extra.set(key, [...(extra.get(key) ?? []), look])
      }
    })
  }
  for (const { p, symptom, pair } of played) weighBySymptom(parts.samples[p]!, symptom, pair)
  const known = model.parts.map((part, p) =>
    part.modes.some((_, m) => extra.has(`${p} ${m}`))
      ? knownModes(model, part, { ...sources, extra: (m) => extra.get(`${p} ${m}`) ?? [] })
      : [...parts.known[p]!],
  )
  return { known, unexplained }
}

interface SymptomPair {
  readonly sound: number
  readonly defective: number
}

/** Likelihoods of a symptom for suspect i: seen, 1 − (1 − f)(1 − dᵢ) Π (1 − dₖ pₖ) against 1 − (1 − f) Π (1 − dₖ pₖ). */
function symptomPair(
  symptom: { readonly seen: boolean; readonly falseAlarm: number },
  of: {
    readonly suspects: readonly { readonly detection: number; readonly chance: number }[]
    readonly i: number
  },
): SymptomPair {
  const own = of.suspects[of.i]!
  if (!symptom.seen) return { sound: 1, defective: 1 - own.detection }
  let silent = 1 - symptom.falseAlarm
  of.suspects.forEach(({ detection, chance }, k) => {
    if (k !== of.i) silent *= 1 - detection * chance
  })
  const whole = 1 - silent * (1 - own.detection * own.chance)
  if (!(whole > 0)) return { sound: 1, defective: 1 }
  return { sound: (1 - silent) / whole, defective: (1 - silent * (1 - own.detection)) / whole }
}

function chanceDefectiveAtSymptom(sample: PlayedSample, symptom: number): number {
  const { lives, weight } = sample
  let sum = 0
  let defective = 0
  for (let life = 0; life < lives.count; life++) {
    sum += weight[life]!
    if (lives.atSymptom[life * lives.symptoms + symptom]! > 0) defective += weight[life]!
  }
  return sum > 0 ? defective / sum : 0
}

function weighBySymptom(sample: PlayedSample, symptom: number, pair: SymptomPair): void {
  const { lives, weight } = sample
  for (let life = 0; life < lives.count; life++) {
    const sound = lives.atSymptom[life * lives.symptoms + symptom] === 0
    weight[life]! *= sound ? pair.sound : pair.defective
  }
}
