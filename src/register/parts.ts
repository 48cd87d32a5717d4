/**
 * Parts: what is in each place, since when, and how what was there before ended.
 *
 * @module
 */

import { type Entry, isKind } from '../logbook/kinds.js'
import { partsNamedBy } from '../logbook/oddities-parts.js'
import { byDay, dayOf, hoursAt, type Meters } from './hours.js'
import type { Ages, ModeMend, PartRegister, PastLife, Quality } from './register-types.js'

/** A stop tells why a part was renewed if it lies no further back. Practice. [d] */
const stopBeforeWorkDays = 90

interface Building {
  sinceDay: number | undefined
  sinceHours: number | undefined
  known: boolean
  originalToSet: boolean
  quality: Quality | undefined
  removed: boolean
  firstRenewalDay: number | undefined
  lives: PastLife[]
  mends: ModeMend[]
  entries: string[]
}

/** The parts that the entries of one set name, by id. */
export function partsOf(
  entries: readonly Entry[],
  known: { readonly meters: Meters; readonly asOfDay: number },
): ReadonlyMap<string, PartRegister> {
  const { asOfDay, meters } = known
  const building = new Map<string, Building>()
  const inOrder = byDay(entries, asOfDay)
  const stops = new Map<string, StopThen[]>()
  for (const { entry, day } of inOrder) {
    if (!isKind(entry, 'stop') || entry.body.cause === undefined) continue
    const { part } = entry.body.cause
    stops.set(part, stops.get(part) ?? [])
    stops.get(part)!.push({ entry, day })
  }
  for (const { entry } of inOrder) {
    if (isKind(entry, 'set') || isKind(entry, 'terms') || isKind(entry, 'alternative')) continue
    for (const part of new Set(partsNamedBy(entry).map((named) => named.part))) {
      const place = building.get(part) ?? startOf(meters)
      building.set(part, place)
      place.entries.push(entry.id)
    }
    if (isKind(entry, 'fitted')) putIn(building.get(entry.body.part)!, entry, known)
    if (isKind(entry, 'work')) {
      for (const done of entry.body.parts) work(building.get(done.part)!, entry, done, { ...known, stops })
    }
  }
  return new Map([...building].map(([part, place]) => [part, finish(part, place, known)]))
}

function startOf(meters: Meters): Building {
  return {
    sinceDay: meters.builtDay,
    sinceHours: meters.builtDay === undefined ? undefined : 0,
    known: false,
    originalToSet: false,
    quality: undefined,
    removed: false,
    firstRenewalDay: undefined,
    lives: [],
    mends: [],
    entries: [],
  }
}

interface StopThen {
  readonly entry: Extract<Entry, { kind: 'stop' }>
  readonly day: number
}

/** Stops in the order of their days, by the part that caused them. */
type StopsByPart = ReadonlyMap<string, readonly StopThen[]>

type Known = { readonly meters: Meters; readonly asOfDay: number }

function putIn(place: Building, entry: Extract<Entry, { kind: 'fitted' }>, known: Known): void {
  const { body } = entry
  if (body.originalToSet && known.meters.builtDay !== undefined) {
    // said later of a part that has been renewed since: the renewal stands
    if (place.lives.length === 0 && !place.known) begin(place, { day: known.meters.builtDay, hours: 0 })
    place.originalToSet = place.lives.length === 0
  } else {
    const day = dayOf(entry, known.asOfDay)
    noteFirst(place, day, known)
    begin(place, { day, hours: hoursOf(entry, known) })
    place.originalToSet = body.originalToSet === true
  }
  place.quality = body.quality
  place.removed = false
}

function work(
  place: Building,
  entry: Extract<Entry, { kind: 'work' }>,
  done: Extract<Entry, { kind: 'work' }>['body']['parts'][number],
  known: Known & { readonly stops: StopsByPart },
): void {
  const day = dayOf(entry, known.asOfDay)
  const hours = hoursOf(entry, known)
  if (done.did === 'removed') place.removed = true
  if (done.did === 'renewed') {
    const cause = done.mode ?? causeBefore(done.part, day, known)
    const was = done.was ?? (entry.body.why === 'failed' && cause !== undefined ? 'failed' : undefined)
    const ended = was ?? (entry.body.why === 'preventive' ? 'sound' : undefined)
    if (ended !== undefined && place.known && place.sinceDay !== undefined && day >= place.sinceDay) {
      const mode = ended === 'sound' ? undefined : cause
      place.lives.push({
        age: agesBetween(place, { day, hours }),
        endedDay: day,
        ended,
        entry: entry.id,
        ...(was === undefined ? { presumed: true as const } : {}),
        ...(mode === undefined ? {} : { mode }),
      })
    }
    if (ended !== 'sound') noteFirst(place, day, known)
    begin(place, { day, hours })
    place.originalToSet = false
    place.quality = done.quality ?? 'original'
    place.removed = false
  } else if (!['opened', 'tested', 'removed', 'relinked'].includes(done.did)) {
    place.mends.push({
      day,
      did: done.did,
      entry: entry.id,
      ...(done.mode === undefined ? {} : { mode: done.mode }),
    })
  }
}

/** A piece put in after the set was new, where nothing is known of the one before: that one came to its end by then. */
function noteFirst(place: Building, day: number, { meters: { builtDay } }: Known): void {
  if (!place.known && builtDay !== undefined && day > builtDay) place.firstRenewalDay = day
}

function begin(place: Building, at: { readonly day: number; readonly hours: number | undefined }): void {
  place.sinceDay = at.day
  place.sinceHours = at.hours
  place.known = true
  place.mends = []
}

function hoursOf(entry: Entry, { meters, asOfDay }: Known): number | undefined {
  return meters.hoursOfEntry.get(entry.id) ?? hoursAt(meters.track, dayOf(entry, asOfDay))
}

function causeBefore(
  part: string,
  day: number,
  { stops }: { readonly stops: StopsByPart },
): string | undefined {
  const stop = stops.get(part)?.findLast(({ day: stopDay }) => {
    const ago = day - stopDay
    return ago >= -1 && ago <= stopBeforeWorkDays
  })
  return stop?.entry.body.cause?.mode
}

function agesBetween(
  place: Pick<Building, 'sinceDay' | 'sinceHours'>,
  to: { readonly day: number; readonly hours: number | undefined },
): Ages {
  const years = Math.max(0, to.day - (place.sinceDay ?? to.day)) / 365.25
  if (place.sinceHours === undefined || to.hours === undefined) return { years }
  return { years, hours: Math.max(0, to.hours - place.sinceHours) }
}

function finish(part: string, place: Building, { meters, asOfDay }: Known): PartRegister {
  const now = { day: asOfDay, hours: hoursAt(meters.track, asOfDay) }
  return {
    part,
    age: place.known ? agesBetween(place, now) : 'unknown',
    ...(place.sinceDay === undefined ? {} : { sinceDay: place.sinceDay }),
    originalToSet: place.originalToSet,
    ...(place.quality === undefined ? {} : { quality: place.quality }),
    removed: place.removed,
    ...(place.firstRenewalDay === undefined ? {} : { firstRenewalDay: place.firstRenewalDay }),
    lives: place.lives,
    mends: place.mends,
    entries: place.entries,
  }
}
