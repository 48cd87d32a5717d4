/**
 * A job’s record of taking apart: what to undo in which order, what was undone, and the same list reversed to put it back.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { StopLine } from '../catalogue/stop-line-schema.js'
import { type Entry, type EntryOf, isKind } from '../logbook/kinds.js'
import { jobSteps } from './apart-first.js'
import { leadsOfWinding } from './apart-leads.js'
import { partStep, type WayStep, ways } from './apart-ways.js'
import type { JobPart } from './jobs.js'

/** A step that is proposed. */
export interface ProposedStep extends Pick<WayStep, 'id' | 'what' | 'pictures' | 'bag'> {
  /** The way in that it opens, or that its part is reached by; left out: neither. */
  readonly access?: string
  /** Leads that will come off there, by their marks as far as the set tells them; left out: none come off. */
  readonly leads?: readonly string[]
  readonly joined: boolean
  /** Stop lines that are answered before it. */
  readonly lines: readonly string[]
}

/** A step as it stands: proposed, done, or both. */
export interface ApartStep {
  /** Its name: of the proposal, else of its entry. */
  readonly key: string
  readonly what: string
  readonly access?: string
  readonly proposal?: ProposedStep
  /** Written down. */
  readonly entry?: EntryOf<'apart-step'>
  /** Put back again. */
  readonly refit?: EntryOf<'refit-step'>
}

export interface Apart {
  /** In the order of undoing: those done as they were done, then those to come. */
  readonly steps: readonly ApartStep[]
  /** The first that is neither done nor passed by. */
  readonly next?: ApartStep
  /** Those that were undone, the last one first. */
  readonly back: readonly ApartStep[]
  /** The first of those that is not put back yet. */
  readonly nextBack?: ApartStep
  /** The place that the next step takes. */
  readonly nextN: number
  /** Entries of putting back whose step is not, or no more, in the log. */
  readonly loose: readonly EntryOf<'refit-step'>[]
  /** Places in the order that two steps claim. */
  readonly sharedPlaces: readonly number[]
}

/** What a job asks to be opened. */
export interface ApartAsked {
  readonly parts: readonly Pick<JobPart, 'part' | 'did'>[]
  /** Ways in beside those of its parts. */
  readonly access?: readonly string[]
  /** Leads that the set’s windings bring out. */
  readonly leads?: number | undefined
}

type Ways = Pick<Catalogue, 'access' | 'parts' | 'links'>

/** The steps of a job, in the order of undoing: each way in after those that it includes, each part after its ways. */
export function proposedSteps(asked: ApartAsked, catalogue: Ways): ProposedStep[] {
  const partOf = (id: string) => catalogue.parts.find((part) => part.id === id)
  const parts = asked.parts.filter(({ part }, i) => asked.parts.findIndex((one) => one.part === part) === i)
  const opened = inOrder(
    [...parts.flatMap(({ part }) => partOf(part)?.access.opens ?? []), ...(asked.access ?? [])],
    catalogue,
  )
  if (opened.length === 0 && parts.length === 0) return []
  const leads = leadsOfWinding(catalogue.links, asked.leads)
  const proposed = (step: WayStep, access: string | undefined, lines: readonly string[]): ProposedStep => ({
    id: step.id,
    what: step.what,
    pictures: step.pictures,
    ...(step.bag === undefined ? {} : { bag: step.bag }),
    ...(access === undefined ? {} : { access }),
    ...(step.leads ? { leads: windingBoxes.includes(access ?? '') ? leads : [] } : {}),
    joined: step.joined === true,
    lines: [...new Set([...alwaysFirst, ...lines, ...(step.lines ?? [])])],
  })
  const wanted = ({ forParts, unless }: WayStep) =>
    (forParts === undefined || parts.some(({ part }) => forParts.includes(part))) &&
    (unless === undefined || !opened.includes(unless))
  return [
    ...jobSteps
      .filter(
        ({ forWays, forParts = [] }) =>
          forWays === undefined ||
          opened.some((access) => forWays.includes(access)) ||
          parts.some(({ part }) => forParts.includes(part)),
      )
      .map((step) => proposed(step, undefined, [])),
    ...opened.flatMap((access) => {
      const way = ways.find((one) => one.access === access)
      const steps = way?.steps.filter(wanted).map((step) => proposed(step, access, way.lines)) ?? []
      const reached = parts.filter(({ part }) => lastOf(partOf(part)?.access.opens ?? [], opened) === access)
      return [
        ...steps,
        ...reached.map(({ part, did }) =>
          proposed(partStep(part, partOf(part)?.name ?? part, did), access, way?.lines ?? []),
        ),
      ]
    }),
    ...parts
      .filter(({ part }) => (partOf(part)?.access.opens ?? []).length === 0)
      .map(({ part, did }) => proposed(partStep(part, partOf(part)?.name ?? part, did), undefined, [])),
  ]
}

/** Stop lines that every step has. */
const alwaysFirst = jobSteps[0].lines ?? []

/** Ways in at which the leads of the windings themselves are joined. */
const windingBoxes = ['terminal-box', 'alternator-apart', 'set-out']

/** Ways in with all that they include: each after those, else in the order in which they are opened. */
function inOrder(ids: readonly string[], { access }: Ways): string[] {
  const included = (id: string) => access.find((one) => one.id === id)?.includes ?? []
  const open = new Set(ids)
  for (const id of open) for (const other of included(id)) open.add(other)
  const rank = (id: string) => ways.findIndex((way) => way.access === id)
  const left = [...open].sort((a, b) => rank(a) - rank(b))
  const order: string[] = []
  while (left.length > 0) {
    const free = left.findIndex((id) => included(id).every((other) => order.includes(other)))
    order.push(...left.splice(Math.max(free, 0), 1))
  }
  return order
}

/** The one of some ways in that is opened last. */
function lastOf(ids: readonly string[], opened: readonly string[]): string | undefined {
  return opened.findLast((id) => ids.includes(id))
}

/**
 * How far a job has come apart and back, from the log alone: whatever was written down before is found again.
 *
 * @param entries in their current form.
 * @param of.all as they were written, so that putting back finds a step that was corrected since.
 */
export function apartOf(
  entries: readonly Entry[],
  of: {
    readonly set: string
    readonly job: string
    readonly proposed: readonly ProposedStep[]
    readonly all?: readonly Pick<Entry, 'id' | 'corrects'>[]
  },
): Apart {
  const mine = entries.filter(({ set, body }) => set === of.set && 'job' in body && body.job === of.job)
  const done = mine
    .filter((entry) => isKind(entry, 'apart-step'))
    .sort(
      (a, b) =>
        a.body.n - b.body.n || (a.noted < b.noted ? -1 : a.noted > b.noted ? 1 : a.id < b.id ? -1 : 1),
    )
  const refits = mine.filter((entry) => isKind(entry, 'refit-step'))
  const older = new Map((of.all ?? entries).map(({ id, corrects }) => [id, corrects]))
  const stepOf = new Map<string, string>()
  for (const { id } of done) for (const name of namesOf(id, older)) stepOf.set(name, id)
  const refitOf = new Map(refits.flatMap((refit) => named(stepOf.get(refit.body.step), refit)))
  const recorded = done.map((entry): ApartStep => {
    const proposal = of.proposed.find(({ id }) => id === entry.body.proposed)
    const refit = refitOf.get(entry.id)
    const { what, access } = entry.body
    return {
      key: entry.id,
      what,
      ...(access === undefined ? {} : { access }),
      ...(proposal === undefined ? {} : { proposal }),
      entry,
      ...(refit === undefined ? {} : { refit }),
    }
  })
  const met = new Set(done.map(({ body }) => body.proposed))
  const toCome = of.proposed
    .filter(({ id }) => !met.has(id))
    .map((proposal): ApartStep => {
      const { id, what, access } = proposal
      return { key: id, what, ...(access === undefined ? {} : { access }), proposal }
    })
  const back = recorded.filter(({ entry }) => entry?.body.notNeeded !== true).toReversed()
  const nextBack = back.find(({ refit }) => refit === undefined)
  const [next] = toCome
  const places = done.map(({ body }) => body.n)
  return {
    steps: [...recorded, ...toCome],
    ...(next === undefined ? {} : { next }),
    back,
    ...(nextBack === undefined ? {} : { nextBack }),
    nextN: Math.max(0, ...places) + 1,
    loose: refits.filter(({ body }) => !stepOf.has(body.step)),
    sharedPlaces: [...new Set(places.filter((n, i) => places.indexOf(n) < i))],
  }
}

/** An entry and all that it stands in the place of. */
function namesOf(id: string, older: ReadonlyMap<string, readonly string[]>): ReadonlySet<string> {
  const names = new Set([id])
  for (const name of names) for (const other of older.get(name) ?? []) names.add(other)
  return names
}

function named<T>(name: string | undefined, value: T): (readonly [string, T])[] {
  return name === undefined ? [] : [[name, value]]
}

/**
 * Stop lines that are to be answered before a step: those of the step that nobody answered on that day in this job. They hold
 * each time hands go in, so an answer lasts for the day.
 */
export function linesBefore(
  step: Pick<ApartStep, 'proposal'>,
  of: { readonly apart: Apart; readonly day: string; readonly stopLines: readonly StopLine[] },
): StopLine[] {
  const wanted = step.proposal?.lines ?? alwaysFirst
  const answered = new Set(
    of.apart.steps.flatMap(({ entry, refit }) =>
      [entry, refit].flatMap((one) => (one?.from === of.day ? (one.body.cleared ?? []) : [])),
    ),
  )
  return of.stopLines.filter(({ id }) => wanted.includes(id) && !answered.has(id))
}
