/**
 * What was seen and measured, what stands open, and what protects.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { dayNumber, daySpanOf, lastDay } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { dayOf } from './hours.js'
import type { Broken, Look, Measured, OpenDanger, Protection, SetFacts, Stop } from './register-types.js'

/** Deeds after which a defect need no longer be there; a patch leaves it. */
const mending = ['renewed', 'reconditioned', 'cleaned', 'freed', 'adjusted', 'topped-up']

type Work = Extract<Entry, { kind: 'work' }>

/** Findings, and what work laid bare without mending it or found sound. */
export function looksOf(entries: readonly Entry[], asOfDay: number): Look[] {
  return entries.flatMap((entry): Look[] => {
    const day = dayOf(entry, asOfDay)
    if (isKind(entry, 'finding')) {
      const { about, verdict, check, seen } = entry.body
      return [
        {
          entry: entry.id,
          day,
          about: about.map(named),
          verdict,
          ...(check === undefined ? {} : { check }),
          ...(seen === undefined ? {} : { seen }),
        },
      ]
    }
    if (!isKind(entry, 'work')) return []
    return entry.body.parts.flatMap((done): Look[] => {
      if (done.was === undefined || done.was === 'failed' || mending.includes(done.did)) return []
      const verdict = done.was === 'sound' ? 'nothing-seen' : 'defect-seen'
      return [{ entry: entry.id, day, about: [named(done)], verdict, check: 'open-up' }]
    })
  })
}

export function readingsOf(entries: readonly Entry[], asOfDay: number): Measured[] {
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'reading')) return []
    const { test, part, values, conditions = [], answers } = entry.body
    return [
      {
        entry: entry.id,
        day: dayOf(entry, asOfDay),
        test,
        values,
        conditions,
        ...(answers === undefined ? {} : { answers }),
        ...(part === undefined ? {} : { part }),
      },
    ]
  })
}

export function stopsOf(entries: readonly Entry[], asOfDay: number): Stop[] {
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'stop')) return []
    const { daysWithoutPower, curedSameDay, cause } = entry.body
    const span = daySpanOf(entry)
    return [
      {
        entry: entry.id,
        day: dayOf({ from: entry.from, until: entry.from }, asOfDay),
        lastDay: Math.min(span.last, asOfDay),
        daysWithoutPower,
        sameDay: curedSameDay,
        ...(cause === undefined ? {} : { cause: named(cause) }),
        open: !curedSameDay && dayNumber(lastDay(entry.until)) >= asOfDay,
      },
    ]
  })
}

/** Looks that saw a defect which no work has mended and no later look of the same kind has taken back. */
export function openDefectsOf(looks: readonly Look[], entries: readonly Entry[], asOfDay: number): Look[] {
  const workAt = worksByPart(entries, asOfDay)
  const soundAt = soundLooksByPart(looks)
  return looks.filter((look) => {
    if (look.verdict === 'nothing-seen') return false
    const places = look.about.map((one) => ({
      one,
      touched: (workAt.get(one.part) ?? []).filter(({ day, entry }) => day >= look.day && mends(entry, one)),
    }))
    const cured = places.some(({ one, touched }) => touched.some(({ entry }) => provedBad(entry, one.part)))
    if (cured || places.every(({ touched }) => touched.length > 0)) return false
    return !look.about.every((one) =>
      (soundAt.get(one.part) ?? []).some(
        (later) =>
          later.day > look.day &&
          later.check === look.check &&
          later.about.some((other) => sameThing(other, one)),
      ),
    )
  })
}

/** What is known to stand failed: by a stop that goes on, or laid bare by work that did not mend it. */
export function brokenOf(stops: readonly Stop[], entries: readonly Entry[], asOfDay: number): Broken[] {
  const workAt = worksByPart(entries, asOfDay)
  const mendedLast = new Map<string, number>()
  for (const [part, works] of workAt) {
    const days = works.filter(({ entry }) => mends(entry, { part })).map(({ day }) => day)
    mendedLast.set(
      part,
      days.reduce((last, day) => Math.max(last, day), Number.NEGATIVE_INFINITY),
    )
  }
  const since = (day: number, part: string) => (mendedLast.get(part) ?? Number.NEGATIVE_INFINITY) >= day
  const stopped = stops.flatMap(({ open, cause, day, entry }) =>
    open && cause !== undefined && !since(day, cause.part) ? [{ ...cause, entry }] : [],
  )
  const laidBare = entries.flatMap((entry) =>
    !isKind(entry, 'work')
      ? []
      : entry.body.parts.flatMap((done) => {
          const leftFailed = done.was === 'failed' && !mending.includes(done.did) && done.did !== 'patched'
          if (!leftFailed || since(dayOf(entry, asOfDay), done.part)) return []
          return [{ ...named(done), entry: entry.id }]
        }),
  )
  const first = new Map<string, Broken>()
  for (const one of [...laidBare, ...stopped]) first.set(one.part, one)
  return [...first.values()]
}

interface WorkThen {
  readonly entry: Work
  readonly day: number
}

/** Work by the parts that it names, so that a long log is not gone through anew for each look. */
function worksByPart(entries: readonly Entry[], asOfDay: number): ReadonlyMap<string, readonly WorkThen[]> {
  const works = new Map<string, WorkThen[]>()
  for (const entry of entries) {
    if (!isKind(entry, 'work')) continue
    const day = dayOf(entry, asOfDay)
    for (const part of new Set(entry.body.parts.map((done) => done.part))) {
      const known = works.get(part)
      if (known === undefined) works.set(part, [{ entry, day }])
      else known.push({ entry, day })
    }
  }
  return works
}

function soundLooksByPart(looks: readonly Look[]): ReadonlyMap<string, readonly Look[]> {
  const sound = new Map<string, Look[]>()
  for (const look of looks) {
    if (look.verdict !== 'nothing-seen') continue
    for (const part of new Set(look.about.map((one) => one.part))) {
      const known = sound.get(part)
      if (known === undefined) sound.set(part, [look])
      else known.push(look)
    }
  }
  return sound
}

/** Dangers that modes found defective or failed carry, each with the entry that made it safe, if any. */
export function openDangersOf(
  found: { readonly defects: readonly Look[]; readonly broken: readonly Broken[] },
  entries: readonly Entry[],
  catalogue: Pick<Catalogue, 'parts'>,
): OpenDanger[] {
  const named = [
    ...found.defects.flatMap(({ about, entry, verdict }) =>
      verdict === 'defect-seen' && about.length === 1 ? about.map((one) => ({ ...one, entry })) : [],
    ),
    ...found.broken,
  ]
  const dangers = new Map<string, OpenDanger>()
  for (const { part, mode, entry } of named) {
    for (const known of catalogue.parts.find(({ id }) => id === part)?.modes ?? []) {
      if (mode !== undefined && known.id !== mode) continue
      for (const danger of known.dangers) {
        const safe = madeSafe(entries, { danger, part, entry })
        const open = { danger, part, mode: known.id, entry }
        dangers.set(
          `${danger} ${part} ${known.id}`,
          safe === undefined ? open : { ...open, madeSafeBy: safe },
        )
      }
    }
  }
  return [...dangers.values()]
}

/** The parts that stand between a fault and what it would ruin or whom it would hurt. */
export function protectionsOf(
  catalogue: Pick<Catalogue, 'parts'>,
  known: { readonly setFacts: SetFacts; readonly entries: readonly Entry[]; readonly asOfDay: number },
): Protection[] {
  const { setFacts, entries, asOfDay } = known
  const named = (part: string) => entries.some((entry) => isKind(entry, 'fitted') && entry.body.part === part)
  return catalogue.parts
    .filter(({ system, fits, id }) => system === 'trips' || (fits?.whenFitted && id !== 'fuel-tank'))
    .map(({ id, fits }) => {
      const fitted = setFacts.hasNot?.includes(id)
        ? 'not-fitted'
        : setFacts.has?.includes(id) || named(id) || !fits?.whenFitted
          ? 'fitted'
          : 'not-known'
      const tested = entries.findLast((entry) => isTest(entry, id))
      return {
        part: id,
        fitted,
        ...(tested === undefined ? {} : { lastTestedDay: dayOf(tested, asOfDay) }),
      }
    })
}

function isTest(entry: Entry, part: string): boolean {
  if (isKind(entry, 'finding')) {
    return entry.body.check === 'function-test' && entry.body.about.some((one) => one.part === part)
  }
  if (isKind(entry, 'reading')) return entry.body.part === part
  return isKind(entry, 'work') && entry.body.parts.some((one) => one.part === part && one.did === 'tested')
}

function madeSafe(
  entries: readonly Entry[],
  what: { readonly danger: string; readonly part: string; readonly entry: string },
): string | undefined {
  return entries.findLast(
    (entry) =>
      isKind(entry, 'danger-safe') &&
      entry.body.danger === what.danger &&
      (entry.body.found === what.entry || entry.body.at?.part === what.part),
  )?.id
}

function mends(entry: Work, one: { readonly part: string; readonly mode?: string }): boolean {
  return entry.body.parts.some(
    ({ part, did, mode }) =>
      part === one.part &&
      mending.includes(did) &&
      (did === 'renewed' || mode === undefined || one.mode === undefined || mode === one.mode),
  )
}

function provedBad(entry: Work, part: string): boolean {
  return entry.body.parts.some(
    (done) => done.part === part && (done.was === 'failed' || done.was === 'defective'),
  )
}

function sameThing(
  a: { readonly part: string; readonly mode?: string },
  b: { readonly part: string; readonly mode?: string },
): boolean {
  return a.part === b.part && (a.mode === undefined || a.mode === b.mode)
}

function named(one: { readonly part: string; readonly mode?: string | undefined }): {
  part: string
  mode?: string
} {
  return one.mode === undefined ? { part: one.part } : { part: one.part, mode: one.mode }
}
