/**
 * What a job is proposed to consist of: pieces ordered, waited for and checked, the set opened way by way, parts taken to a
 * workshop and brought back, everything fitted, closed in the reverse order, proved, and run for two days.
 *
 * @module
 */

import type { Access } from '../catalogue/file-schema.js'
import type { Part, WorkHours } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { handsOnHours, openedWays } from '../catalogue/work-hours.js'
import { hoursPerDay } from '../forecast/build-money.js'
import { ownerDoes, repairOf } from '../forecast/build-repair.js'
import type { SetRegister } from '../register/register-types.js'
import { type Activity, spreadOfDays } from './activities.js'
import type { KnownProgress } from './activities-known.js'
import type { Needed } from './calendar-days.js'
import type { Delivery, Lasts } from './calendar-lasts.js'
import type { Job } from './jobs.js'
import type { ThreePoints } from './network-pert.js'

/** Days of what no catalogue knows: practice, all of it. */
const usual = {
  check: { low: 0.2, usual: 0.5, high: 1.5 },
  carry: { low: 0.5, usual: 1, high: 3 },
  checkBack: { low: 0.2, usual: 0.5, high: 1 },
  outOfWater: { low: 0.5, usual: 1, high: 2 },
  prove: { low: 0.5, usual: 1, high: 3 },
  trial: { low: 2, usual: 2, high: 5 },
} as const satisfies Readonly<Record<string, ThreePoints>>

/** What a part lists among its needs where the boat must come out for it. */
const outOfWater = 'time out of the water'
/** Ways in that take two people. Practice. */
const heavyWays: readonly string[] = ['set-out', 'alternator-apart', 'sump-off']
/** Ways in that are carried over the deck: weather has its say. Practice. */
const outsideWays: readonly string[] = ['set-out']
/** Share of the hours of a way in that opening takes; closing takes the rest. Practice. */
const openingShare = 0.4
/** Log standard deviation of a workshop's time where only one figure of it is known. Practice. */
const workshopLogSd = 0.4

export interface Proposing {
  readonly job: Job
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
  /** On which day the log says that something of it was begun or done: what orders and work tell. */
  readonly known: KnownProgress
}

type Deed = Job['parts'][number]['did']
const renewing: ReadonlySet<Deed> = new Set(['renewed', 'reconditioned'])

/** The activities that a job is proposed to have; none where nobody said what it is to do. */
export function proposedActivities(proposing: Proposing): readonly Activity[] {
  const laying = layingOf(proposing)
  if (laying.parts.length === 0) return []
  const inHand = piecesInHand(laying)
  const ashore = outOfWaterAfter(laying, inHand)
  const opened = openedAfter(laying, ashore)
  const fitted = fittedAfter(laying, opened)
  const closed = closedAfter(laying, fitted)
  const afloat = backInWaterAfter(laying, closed)
  provedAfter(laying, afloat)
  return laying.made
}

/** Names of what the next thing follows. */
type Names = readonly string[]

type Wanted = Pick<Activity, 'name' | 'what' | 'after' | 'lasts' | 'needs'> & Partial<Activity>

interface Laying extends Proposing {
  readonly parts: readonly { readonly part: Part; readonly did: Deed }[]
  readonly ways: readonly Way[]
  readonly doers: Doers
  readonly made: readonly Activity[]
  /** Puts one behind those that are made; `also`: other names under which the log may know it. */
  readonly add: (wanted: Wanted, also?: Names) => string
}

function layingOf(proposing: Proposing): Laying {
  const { job, catalogue, known } = proposing
  const parts = job.parts.flatMap(({ part: id, did }) => {
    const part = catalogue.parts.find((one) => one.id === id)
    return part === undefined ? [] : [{ part, did }]
  })
  const made: Activity[] = []
  const add: Laying['add'] = (wanted, also = []) => {
    const told = [wanted.name, ...also].map((name) => known.get(name)).find((one) => one !== undefined)
    made.push({
      ...{ inOneRun: false, proposed: true, opensSet: false },
      ...wanted,
      progress: told === undefined ? { is: 'to-do' } : { is: told.is, day: told.day },
      entries: told === undefined ? [] : [told.entry],
    })
    return wanted.name
  }
  const ways = waysOf(
    catalogue.access,
    parts.flatMap(({ part }) => part.access.opens),
  )
  return { ...proposing, parts, ways, doers: doersOf(job, proposing), made, add }
}

function points(three: ThreePoints): Lasts {
  return { is: 'three-point', ...three }
}

/** Hours of work as days of it. */
function inDays(hours: number): Lasts {
  const days = hours / hoursPerDay
  return points({ low: spreadOfDays.low * days, usual: days, high: spreadOfDays.high * days })
}

function hoursOf({ owner, paid }: WorkHours, who: Doer): number {
  return who === 'owner' ? owner : paid
}

/** Each piece ordered and waited for, and all of them held against the old ones. */
function piecesInHand(laying: Laying): Names {
  const { parts, known, add } = laying
  const gets = parts
    .filter(({ part, did }) => renewing.has(did) && !isSent(part))
    .map(({ part }) =>
      add({
        name: `get-${part.id}`,
        what: `Order the ${short(part.name)}, and wait for it`,
        after: [],
        lasts: known.get(`get-${part.id}`)?.lasts ?? deliveryOf(part, laying),
        needs: ['supplier'],
      }),
    )
  if (gets.length === 0) return []
  const check = add({
    name: 'check-kit',
    what: 'Hold every piece against the old one',
    after: gets,
    lasts: points(usual.check),
    needs: ['owner'],
  })
  return [check]
}

function isAshore({ parts }: Laying): boolean {
  return parts.some(({ part }) => part.alsoNeeded.includes(outOfWater))
}

function outOfWaterAfter(laying: Laying, after: Names): Names {
  if (!isAshore(laying)) return after
  const what = 'Boat out of the water'
  const lasts = points(usual.outOfWater)
  return [laying.add({ name: 'haul-out', what, after, lasts, needs: ['yard', 'weather'] })]
}

function backInWaterAfter(laying: Laying, after: Names): Names {
  if (!isAshore(laying)) return after
  const what = 'Boat back in the water; look for leaks before the lift goes'
  const lasts = points(usual.outOfWater)
  return [laying.add({ name: 'launch', what, after, lasts, needs: ['yard', 'weather'] })]
}

function openedAfter({ ways, doers, add }: Laying, after: Names): Names {
  const who = doers.removal
  return ways.reduce<Names>(
    (last, { way, hours, opens }) => [
      add(
        {
          name: `open-${way.id}`,
          what: `Open: ${lower(way.name)}`,
          after: last,
          lasts: inDays(openingShare * hoursOf(hours, who)),
          needs: handsFor(way.id, who),
          opensSet: true,
        },
        opens.map((id) => `open-${id}`),
      ),
    ],
    after,
  )
}

function closedAfter({ ways, doers, add }: Laying, after: Names): Names {
  const who = doers.refitting
  return ways.reduceRight<Names>(
    (last, { way, hours, opens }) => [
      add(
        {
          name: `close-${way.id}`,
          what: `Close again: ${lower(way.name)}`,
          after: last,
          lasts: inDays((1 - openingShare) * hoursOf(hours, who)),
          needs: handsFor(way.id, who),
        },
        opens.map((id) => `close-${id}`),
      ),
    ],
    after,
  )
}

/** What goes to a workshop is there meanwhile; the rest is fitted one after the other, by one pair of hands. */
function fittedAfter(laying: Laying, opened: Names): Names {
  const { parts, catalogue, doers, add } = laying
  const back = new Map(
    parts
      .filter(({ part, did }) => renewing.has(did) && isSent(part))
      .map(({ part }) => [part.id, sentAway(laying, part, opened)]),
  )
  return parts.reduce<Names>((last, { part, did }) => {
    const who = doers.of(part)
    const returned = back.get(part.id)
    const fitted = add({
      name: `fit-${part.id}`,
      what: renewing.has(did) ? `Fit the ${short(part.name)}` : `${deedWords[did]}: ${short(part.name)}`,
      after: returned === undefined ? last : last.concat(returned),
      lasts: inDays(hoursOf(handsOnHours(catalogue.access, part), who)),
      needs: [who],
    })
    return [fitted]
  }, opened)
}

function provedAfter({ add }: Laying, after: Names): void {
  const proved = add({
    name: 'prove',
    what: 'The tests owed before it is turned, energised and loaded',
    after,
    lasts: points(usual.prove),
    needs: ['owner'],
  })
  add({
    name: 'trial',
    what: 'Two days of running, watched',
    after: [proved],
    lasts: points(usual.trial),
    needs: ['owner'],
  })
}

const deedWords: Readonly<Record<Deed, string>> = {
  renewed: 'Renew',
  reconditioned: 'Recondition',
  cleaned: 'Clean',
  freed: 'Free',
  adjusted: 'Adjust',
  'topped-up': 'Top up',
  patched: 'Patch',
  relinked: 'Join the leads anew',
  opened: 'Look into',
  tested: 'Test',
  removed: 'Take out',
}

/** There, in the workshop, and measured when it is back. */
function sentAway({ catalogue, add }: Laying, part: Part, after: Names): string {
  const name = short(part.name)
  const sent = add({
    name: `send-${part.id}`,
    what: `Take the ${name} to the workshop, with pictures of its leads`,
    after,
    lasts: points(usual.carry),
    needs: ['owner', 'weather'],
  })
  const made = add({
    name: `shop-${part.id}`,
    what: `The ${name} is in the workshop`,
    after: [sent],
    lasts: shopDays(part, catalogue),
    needs: ['workshop'],
  })
  return add({
    name: `back-${part.id}`,
    what: `Fetch the ${name}; measure it before it goes in`,
    after: [made],
    lasts: points(usual.checkBack),
    needs: ['owner', 'weather'],
  })
}

/** Rewound or rebuilt by a workshop, rather than bought. */
function isSent(part: Part): boolean {
  return (
    (part.madeMeans === 'rewound' || part.madeMeans === 'rebuilt') &&
    part.modes.some(({ remedy }) => remedy.supply === 'made')
  )
}

function shopDays(part: Part, { wholeSet }: SetCatalogue): Lasts {
  if (part.madeMeans === 'rewound') {
    const { low, typical, high } = wholeSet.windings.days.rewind
    return { is: 'three-point', low, usual: typical, high }
  }
  const ways = [{ chance: 1, median: part.leadDays.made, logSd: workshopLogSd }]
  return { is: 'delivery', ways, wrongChance: 0 }
}

/** As the life model has it: from the shelf, ordered, or made where it can no longer be had; and once more where it is wrong. */
function deliveryOf(part: Part, of: Pick<Proposing, 'register' | 'catalogue'>): Lasts {
  const { register, catalogue } = of
  const remedies = part.modes.map(({ remedy }) => remedy)
  const remedy = remedies.find(({ supply, outcome }) => supply === 'bought' && outcome !== 'cleared')
  const ageYears =
    register.builtDay === undefined ? 0 : Math.max(0, register.asOfDay - register.builtDay) / 365.25
  const repair =
    remedy === undefined ? undefined : repairOf(part, remedy, { catalogue, terms: register.terms, ageYears })
  const ways = (repair?.supply ?? []).flatMap(({ chance = 1, days }): Delivery[] => {
    if (days === undefined || chance <= 0) return []
    if (typeof days === 'number') return [{ chance, median: days, logSd: 0 }]
    return 'median' in days ? [{ chance, median: days.median, logSd: days.logSd }] : []
  })
  if (ways.length > 0) return { is: 'delivery', ways, wrongChance: part.wrongPartChance }
  const ordered = { chance: 1, median: part.leadDays.ordered, logSd: workshopLogSd }
  return { is: 'delivery', ways: [ordered], wrongChance: part.wrongPartChance }
}

type Doer = Extract<Needed, 'owner' | 'workshop'>

interface Doers {
  readonly of: (part: Part) => Doer
  readonly removal: Doer
  readonly refitting: Doer
}

/** Who opens, closes and fits: a workshop what it has offered, else whoever does such work aboard. */
function doersOf(job: Job, { register, catalogue }: Pick<Proposing, 'register' | 'catalogue'>): Doers {
  const quote = job.entries.findLast((entry) => entry.kind === 'quote')
  const covers = quote?.kind === 'quote' ? quote.body : undefined
  const offered = new Set(covers?.covers.parts.map(({ part }) => part))
  const of = (part: Part): Doer =>
    covers !== undefined && offered.has(part.id) && !covers.excludes.includes('refitting') && !isSent(part)
      ? 'workshop'
      : ownerDoes(part, register.terms)
        ? 'owner'
        : 'workshop'
  const all = catalogue.parts.filter(({ id }) => job.parts.some(({ part }) => part === id))
  const usually: Doer = all.every((part) => of(part) === 'owner') ? 'owner' : 'workshop'
  const leftOut = (what: 'removal' | 'refitting'): Doer =>
    covers === undefined ? usually : covers.excludes.includes(what) ? 'owner' : 'workshop'
  return { of, removal: leftOut('removal'), refitting: leftOut('refitting') }
}

function handsFor(way: string, who: Doer): Needed[] {
  return [
    who,
    ...(heavyWays.includes(way) && who === 'owner' ? (['helper'] as const) : []),
    ...(outsideWays.includes(way) ? (['weather'] as const) : []),
  ]
}

/** A way that parts ask for, with all that it opens first and the hours of that. */
interface Way {
  readonly way: Access
  readonly opens: readonly string[]
  readonly hours: WorkHours
}

/** Ways that parts ask for, one that another includes before it. */
function waysOf(access: readonly Access[], ids: readonly string[]): Way[] {
  const depth = (id: string) => openedWays(access, [id]).length
  const opened = new Set<string>()
  return [...new Set(ids)]
    .toSorted((a, b) => depth(a) - depth(b))
    .map((id) => {
      const fresh = openedWays(access, [id]).filter((way) => !opened.has(way.id))
      for (const way of fresh) opened.add(way.id)
      const sum = (of: keyof WorkHours) => fresh.reduce((total, way) => total + way.setUpHours[of], 0)
      const way = access.find((one) => one.id === id)!
      return { way, opens: fresh.map((one) => one.id), hours: { owner: sum('owner'), paid: sum('paid') } }
    })
}

/** Without what explains it after a comma. */
function short(name: string): string {
  return lower(name.split(',')[0]!)
}

function lower(name: string): string {
  return /^[A-Z]{2}/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1)
}
