/**
 * What the register says of each part, in the words of the life model.
 *
 * @module
 */

import type { Mode, Part } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Look, PartRegister, SetRegister } from '../register/register-types.js'
import { insulationOf, insulationSymptoms } from './build-insulation.js'
import { clears, isOfPresent, yearsAgo } from './build-present.js'
import type { LifeModelInput } from './life-model.js'

type PartInput = LifeModelInput['parts'][number]
type ObservationInput = NonNullable<PartInput['modes'][number]['observations']>[number]
type SymptomInput = NonNullable<LifeModelInput['symptoms']>[number]

/** What the log says of one part. */
export interface PartEvidence {
  readonly age: NonNullable<PartInput['age']>
  /** By mode. */
  readonly clearedYearsAgo: ReadonlyMap<string, number>
  /** Of the piece in place. */
  readonly quality: number
  readonly firstRenewal?: NonNullable<PartInput['firstRenewal']>
  readonly pastLives: NonNullable<PartInput['pastLives']>
  readonly complete: NonNullable<PartInput['complete']>
  readonly broken?: string
  readonly observations: ReadonlyMap<string, readonly ObservationInput[]>
}

/** Of a look by no check that the mode knows. Practice. */
const seenByEye = { sound: 0.03, defective: 0.9, failed: 0.9 }
/** A person unsure of what was seen says so of a sound part with this chance. Practice. */
const unsureOfSound = 0.3
/** The check taken where a finding names none. Practice. */
const usualCheck = 'close-look'
/** Work entered on a part this near to a span declared complete belongs to it. [a] Practice. */
const besideWorkYears = 0.1

export function partEvidence(part: Part, register: SetRegister, catalogue: SetCatalogue): PartEvidence {
  const place = register.parts.get(part.id)
  const broken = brokenMode(part, register)
  const observations = new Map<string, readonly ObservationInput[]>()
  for (const mode of part.modes) {
    const seen = [
      ...register.looks.flatMap((look) =>
        broken?.entries.has(look.entry) && mode.id === broken.mode
          ? []
          : lookAt({ look, part, mode, place, register, catalogue }),
      ),
      ...insulationOf({ part, mode, place, register }),
    ]
    if (seen.length > 0) observations.set(mode.id, seen)
  }
  return {
    age: knownAge(place),
    clearedYearsAgo: clearedOf(part, place, register),
    quality: qualityOf(place, catalogue),
    ...firstRenewalOf(part, place, register),
    pastLives: pastLivesOf(part, place),
    complete: completeOf(place, register),
    ...(broken === undefined ? {} : { broken: broken.mode }),
    observations,
  }
}

/** Findings that several modes may explain, and low readings of insulation. */
export function symptomsOf(register: SetRegister, catalogue: SetCatalogue): SymptomInput[] {
  const seen = register.looks.flatMap((look): SymptomInput[] => {
    if (look.verdict === 'nothing-seen') return []
    const modes = candidatesOf(look, register, catalogue)
    if (modes.length < 2) return []
    const check = catalogue.checks.find(({ id }) => id === look.check)
    const unsure = look.verdict === 'unsure'
    return [
      {
        yearsAgo: yearsAgo(register, look.day),
        falseAlarm: unsure ? unsureOfSound : (check?.falseAlarm ?? seenByEye.sound),
        seen: true,
        modes: modes.map(({ part, mode, detection }) => ({ part: part.id, mode: mode.id, detection })),
      },
    ]
  })
  return [...seen, ...insulationSymptoms(register, catalogue)]
}

/** The one mode that a look is about; several are a symptom, told elsewhere. */
function lookAt(at: {
  readonly look: Look
  readonly part: Part
  readonly mode: Mode
  readonly place: PartRegister | undefined
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
}): ObservationInput[] {
  const { look, part, mode, place, register, catalogue } = at
  const ago = yearsAgo(register, look.day)
  if (!isOfPresent(place, { day: look.day, mode: mode.id })) return []
  const about = look.about.filter((one) => one.part === part.id && (one.mode ?? mode.id) === mode.id)
  if (about.length === 0) return []
  const check = look.check ?? usualCheck
  const known = mode.checks.find((one) => one.check === check)
  if (look.verdict === 'nothing-seen') {
    return known === undefined ? [] : [{ yearsAgo: ago, check, seen: false }]
  }
  const candidates = candidatesOf(look, register, catalogue)
  const [only] = candidates
  if (candidates.length !== 1 || only?.part.id !== part.id || only.mode.id !== mode.id) return []
  if (look.verdict === 'unsure') {
    const bad = Math.max(unsureOfSound, only.detection)
    return [{ yearsAgo: ago, likelihood: { sound: unsureOfSound, defective: bad, failed: bad } }]
  }
  if (known !== undefined) return [{ yearsAgo: ago, check, seen: true }]
  return [{ yearsAgo: ago, likelihood: seenByEye }]
}

/** Modes that may have given what was seen: those named, else those of the named parts that the check knows. */
function candidatesOf(
  look: Look,
  register: SetRegister,
  catalogue: SetCatalogue,
): { readonly part: Part; readonly mode: Mode; readonly detection: number }[] {
  const check = look.check ?? usualCheck
  return look.about.flatMap((one) => {
    const part = catalogue.parts.find(({ id }) => id === one.part)
    if (part === undefined) return []
    const living = part.modes.filter(({ clock }) => clock !== 'relinkings')
    const named = living.filter(({ id }) => id === one.mode)
    const knowing = living.filter(({ checks }) => checks.some((known) => known.check === check))
    const modes = named.length > 0 ? named : knowing.length > 0 ? knowing : living
    return modes
      .filter(({ id }) => isOfPresent(register.parts.get(part.id), { day: look.day, mode: id }))
      .map((mode) => {
        const known = mode.checks.find((entry) => entry.check === check)
        return { part, mode, detection: known?.detects ?? seenByEye.defective }
      })
  })
}

/** Age of a part since it was fitted. */
function knownAge(place: PartRegister | undefined): NonNullable<PartInput['age']> {
  if (place === undefined || place.age === 'unknown') return 'unknown'
  const { years, hours } = place.age
  return { years, ...(hours === undefined ? {} : { hours }) }
}

/** When each mode was last cleared, where the log tells. */
function clearedOf(part: Part, place: PartRegister | undefined, register: SetRegister): Map<string, number> {
  const mends = (place?.mends ?? []).filter(clears)
  return new Map(
    part.modes.flatMap(({ id }) => {
      const days = mends.flatMap(({ mode, day }) => ((mode ?? id) === id ? [day] : []))
      return days.length === 0 ? [] : [[id, yearsAgo(register, Math.max(...days))] as const]
    }),
  )
}

/** How long the piece in place lasts against an original one. */
function qualityOf(place: PartRegister | undefined, catalogue: SetCatalogue): number {
  const quality = place?.quality ?? 'original'
  return quality === 'original' ? 1 : catalogue.wholeSet.repairQuality[quality]
}

/** When the first piece came to its end of which that is all there is; what was added to a set had none before it. */
function firstRenewalOf(
  part: Part,
  place: PartRegister | undefined,
  register: SetRegister,
): Pick<PartEvidence, 'firstRenewal'> {
  const day = place?.firstRenewalDay
  if (day === undefined || part.fits?.whenFitted) return {}
  const watched = register.complete.find(
    ({ of, firstDay, lastDay }) => of === 'work' && firstDay <= day && day <= lastDay,
  )
  return {
    firstRenewal: {
      yearsAgo: yearsAgo(register, day),
      ...(watched === undefined ? {} : { watchedFromYearsAgo: yearsAgo(register, watched.firstDay) }),
    },
  }
}

function pastLivesOf(part: Part, place: PartRegister | undefined): NonNullable<PartInput['pastLives']> {
  return (place?.lives ?? []).flatMap((life): NonNullable<PartInput['pastLives']> => {
    const only = part.modes.length === 1 ? part.modes[0]?.id : undefined
    const mode = part.modes.some(({ id }) => id === life.mode) ? life.mode : only
    // of a mode that shows only when it is tested, a renewal by rote says nothing
    if (life.presumed && part.modes.some(({ hidden }) => hidden)) return []
    const { years, hours } = life.age
    const age = { years, ...(hours === undefined ? {} : { hours }) }
    if (life.ended === 'sound') return [{ age, ended: 'sound' as const }]
    if (life.ended === 'failed') {
      return [{ age, ended: mode === undefined ? ('failed-cause-unknown' as const) : { failed: mode } }]
    }
    // a part of several modes of which one had begun to fail, nobody knows which, tells little
    return mode === undefined ? [] : [{ age, ended: { defective: mode } }]
  })
}

/** Spans declared complete, from the last work on the part on: before it something was entered. */
function completeOf(
  place: PartRegister | undefined,
  register: SetRegister,
): NonNullable<PartInput['complete']> {
  const works = (place?.mends ?? []).map(({ day }) => yearsAgo(register, day))
  const lastWork = Math.min(Infinity, ...works) - besideWorkYears
  const stops = register.stops.filter(({ cause }) => cause?.part === place?.part && cause !== undefined)
  const lastStop = Math.min(Infinity, ...stops.map(({ day }) => yearsAgo(register, day))) - besideWorkYears
  return register.complete.flatMap(({ of, firstDay, lastDay }) => {
    const latest = of === 'work' ? Math.min(lastWork, lastStop) : Math.min(lastStop, lastWork)
    const from = Math.min(yearsAgo(register, firstDay), latest)
    const to = yearsAgo(register, lastDay)
    return from > to ? [{ of, fromYearsAgo: from, toYearsAgo: to }] : []
  })
}

/** The mode that is known to stand failed: entered as such, or a fault found in what gives no warning. */
function brokenMode(
  part: Part,
  register: SetRegister,
): { readonly mode: string; readonly entries: ReadonlySet<string> } | undefined {
  const living = part.modes.filter(({ clock }) => clock !== 'relinkings')
  const entered = register.broken.find((one) => one.part === part.id)
  if (entered !== undefined) {
    const named = living.find(({ id }) => id === entered.mode)
    const likeliest = [...living].sort((a, b) => b.stops - a.stops)[0]
    const mode = named ?? likeliest
    return mode === undefined ? undefined : { mode: mode.id, entries: new Set([entered.entry]) }
  }
  for (const look of register.openDefects) {
    const [one] = look.about
    if (look.about.length !== 1 || one?.part !== part.id || look.verdict !== 'defect-seen') continue
    const mode = living.find(({ id }) => id === one.mode) ?? (living.length === 1 ? living[0] : undefined)
    if (mode !== undefined && mode.warning === null) return { mode: mode.id, entries: new Set([look.entry]) }
  }
  return undefined
}
