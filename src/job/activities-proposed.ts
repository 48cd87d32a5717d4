/**
 * What a job is proposed to consist of: pieces ordered, waited for and checked, the set opened way by way, parts taken to a
 * workshop and brought back, everything fitted, closed in the reverse order, proved, and run for two days.
 *
 * @module
 */

import type { Access } from '../catalogue/file-schema.js'
import type { Part } from '../catalogue/part-schema.js'
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
export function proposedActivities({ job, register, catalogue, known }: Proposing): readonly Activity[] {
  const parts = job.parts.flatMap(({ part: id, did }) => {
    const part = catalogue.parts.find((one) => one.id === id)
    return part === undefined ? [] : [{ part, did }]
  })
  if (parts.length === 0) return []
  const doers = doersOf(job, { register, catalogue })
  const inDays = (hours: number): Lasts => {
    const days = hours / hoursPerDay
    return { is: 'three-point', low: spreadOfDays.low * days, usual: days, high: spreadOfDays.high * days }
  }
  const made: Activity[] = []
  const add = (one: Pick<Activity, 'name' | 'what' | 'after' | 'lasts' | 'needs'> & Partial<Activity>) => {
    const progress = known.get(one.name)
    made.push({
      inOneRun: false,
      proposed: true,
      opensSet: false,
      ...one,
      progress: progress === undefined ? { is: 'to-do' } : { is: progress.is, day: progress.day },
      entries: progress === undefined ? [] : [progress.entry],
    })
    return one.name
  }
  const points = (three: ThreePoints): Lasts => ({ is: 'three-point', ...three })

  const bought = parts.filter(({ part, did }) => renewing.has(did) && !isSent(part))
  const gets = bought.map(({ part }) =>
    add({
      name: `get-${part.id}`,
      what: `Order the ${short(part.name)}, and wait for it`,
      after: [],
      lasts: known.get(`get-${part.id}`)?.lasts ?? deliveryOf(part, { register, catalogue }),
      needs: ['supplier'],
    }),
  )
  const checked =
    gets.length === 0
      ? []
      : [
          add({
            name: 'check-kit',
            what: 'Hold every piece against the old one',
            after: gets,
            lasts: points(usual.check),
            needs: ['owner'],
          }),
        ]
  const ashore = parts.some(({ part }) => part.alsoNeeded.includes(outOfWater))
  const out = ashore
    ? [
        add({
          name: 'haul-out',
          what: 'Boat out of the water',
          after: checked,
          lasts: points(usual.outOfWater),
          needs: ['yard', 'weather'],
        }),
      ]
    : checked

  const ways = waysOf(
    catalogue.access,
    parts.flatMap(({ part }) => part.access.opens),
  )
  let last: readonly string[] = out
  for (const { way, hours } of ways) {
    const who = doers.removal
    last = [
      add({
        name: `open-${way.id}`,
        what: `Open: ${lower(way.name)}`,
        after: last,
        lasts: inDays(openingShare * hours[who === 'owner' ? 'owner' : 'paid']),
        needs: handsFor(way.id, who),
        opensSet: true,
      }),
    ]
  }
  const opened = last
  const back = parts
    .filter(({ part, did }) => renewing.has(did) && isSent(part))
    .flatMap(({ part }) => sentAway(part, { catalogue, after: opened, add, points }))
  const fitted: string[] = []
  for (const { part, did } of parts) {
    const who = doers.of(part)
    fitted.push(
      add({
        name: `fit-${part.id}`,
        what: renewing.has(did) ? `Fit the ${short(part.name)}` : `${deedWords[did]}: ${short(part.name)}`,
        // one pair of hands: one after the other
        after: [...new Set([...(fitted.length === 0 ? opened : [fitted.at(-1)!]), ...backOf(back, part)])],
        lasts: inDays(handsOnHours(catalogue.access, part)[who === 'owner' ? 'owner' : 'paid']),
        needs: [who],
      }),
    )
  }
  last = [fitted.at(-1)!]
  for (const { way, hours } of ways.toReversed()) {
    const who = doers.refitting
    last = [
      add({
        name: `close-${way.id}`,
        what: `Close again: ${lower(way.name)}`,
        after: last,
        lasts: inDays((1 - openingShare) * hours[who === 'owner' ? 'owner' : 'paid']),
        needs: handsFor(way.id, who),
      }),
    ]
  }
  if (ashore) {
    last = [
      add({
        name: 'launch',
        what: 'Boat back in the water; look for leaks before the lift goes',
        after: last,
        lasts: points(usual.outOfWater),
        needs: ['yard', 'weather'],
      }),
    ]
  }
  last = [
    add({
      name: 'prove',
      what: 'The tests owed before it is turned, energised and loaded',
      after: last,
      lasts: points(usual.prove),
      needs: ['owner'],
    }),
  ]
  add({
    name: 'trial',
    what: 'Two days of running, watched',
    after: last,
    lasts: points(usual.trial),
    needs: ['owner'],
  })
  return made
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

type Add = (one: Pick<Activity, 'name' | 'what' | 'after' | 'lasts' | 'needs'>) => string

/** There, in the workshop, and held against what was asked when it is back. */
function sentAway(
  part: Part,
  of: {
    readonly catalogue: SetCatalogue
    readonly after: readonly string[]
    readonly add: Add
    readonly points: (three: ThreePoints) => Lasts
  },
): string[] {
  const { add, points } = of
  const name = short(part.name)
  const sent = add({
    name: `send-${part.id}`,
    what: `Take the ${name} to the workshop, with pictures of its leads`,
    after: of.after,
    lasts: points(usual.carry),
    needs: ['owner', 'weather'],
  })
  const done = add({
    name: `shop-${part.id}`,
    what: `The ${name} is in the workshop`,
    after: [sent],
    lasts: shopDays(part, of.catalogue),
    needs: ['workshop'],
  })
  return [
    add({
      name: `back-${part.id}`,
      what: `Fetch the ${name}; measure it before it goes in`,
      after: [done],
      lasts: points(usual.checkBack),
      needs: ['owner', 'weather'],
    }),
  ]
}

function backOf(back: readonly string[], part: Part): readonly string[] {
  return back.filter((name) => name === `back-${part.id}`)
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

/** Who opens, closes and fits: a workshop what it has offered, else whoever does such work aboard. */
function doersOf(job: Job, { register, catalogue }: Pick<Proposing, 'register' | 'catalogue'>) {
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

/** Ways that parts ask for, one that another includes before it, each with the hours of what it opens first. */
function waysOf(
  access: readonly Access[],
  ids: readonly string[],
): { readonly way: Access; readonly hours: Access['setUpHours'] }[] {
  const asked = [...new Set(ids)]
  const depth = (id: string) => openedWays(access, [id]).length
  const opened = new Set<string>()
  return asked
    .toSorted((a, b) => depth(a) - depth(b))
    .map((id) => {
      const fresh = openedWays(access, [id]).filter((way) => !opened.has(way.id))
      for (const way of fresh) opened.add(way.id)
      const sum = (of: 'owner' | 'paid') => fresh.reduce((total, way) => total + way.setUpHours[of], 0)
      const way = access.find((one) => one.id === id)!
      return { way, hours: { owner: sum('owner'), paid: sum('paid') } }
    })
}

/** Without what explains it after a comma. */
function short(name: string): string {
  return lower(name.split(',')[0]!)
}

function lower(name: string): string {
  return /^[A-Z]{2}/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1)
}
