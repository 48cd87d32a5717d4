/**
 * `gensettle log add` and `log correct`: entries written, and put in the place of others.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { currentEntries } from '../logbook/current.js'
import { parseEntry } from '../logbook/entry.js'
import { readKept } from '../logbook/kept.js'
import type { Kind } from '../logbook/kinds.js'
import { oddities } from '../logbook/oddities.js'
import { setsOf } from '../register/register.js'
import { compose, type Draft } from '../store/compose.js'
import type { Store } from '../store/store.js'
import { bodyFrom, draftOf, recordOf, type Typed, withPhotographs, withUsual } from './drafts.js'
import { askedText } from './log-list.js'
import { chosenSet, type DataOption, withStore } from './opened.js'
import { knownThings, today } from './places.js'
import { type Result, refuse } from './result.js'
import { sayDates, sayEntry } from './say-entry.js'
import { shippedDemonstration } from './shipped.js'

/** Kinds that speak of the boat and never of a set. */
const ofBoatOnly: readonly Kind[] = ['boat', 'terms', 'free-days', 'load', 'house-rule', 'photograph-removed']
/** Kinds that may speak of either; without --set they speak of the boat. */
const ofEither: readonly Kind[] = [
  'overrule',
  'letdowns',
  'complete',
  'danger-safe',
  'quote',
  'bill',
  'decision',
  'note',
]

export interface AddOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  readonly from?: string
  readonly until?: string
  readonly body?: string
  readonly photograph?: readonly string[]
}

/** `log add KIND`: writes one entry, then asks about what is odd. */
export function addEntry(typed: Omit<Typed, 'bodyText'>, options: AddOptions): Promise<Result> {
  return withStore(options, async (store) => {
    const { kind } = typed
    const { body, problems: misread } = bodyFrom({
      ...typed,
      ...(options.body === undefined ? {} : { bodyText: options.body }),
    })
    const boat = boatToWrite(store, options.boat)
    const set = setToWrite(store, { kind, boat: boat.ok ? boat.name : undefined, asked: options.set })
    const problems = [
      ...misread,
      ...(boat.ok ? [] : boat.problems),
      ...(set.ok ? [] : set.problems),
      ...(await withPhotographs(store, body, options.photograph ?? [])),
    ]
    const draft = draftOf({
      boat: boat.ok ? boat.name : 'boat',
      set: set.ok ? set.set : kind === 'boat' ? null : 'set',
      kind,
      from: options.from ?? today(),
      until: options.until,
      body: withUsual(kind, body),
    })
    if (problems.length > 0) return refuse(...problems, ...formProblems(store, [draft]))
    return writeAndAsk(store, [draft], 'gensettle/log-add')
  })
}

/** Everything wrong with the form of drafts, without writing them. */
function formProblems(store: Store, drafts: readonly Draft[]): readonly Problem[] {
  return compose(store, drafts, new Date()).flatMap((entry) => {
    const parsed = parseEntry(entry)
    return parsed.ok ? [] : parsed.problems
  })
}

/** Writes drafts together, and gives the questions that they raise. */
export function writeAndAsk(store: Store, drafts: readonly Draft[], type: `gensettle/${string}`): Result {
  const entries = compose(store, drafts, new Date())
  const appended = store.append(entries)
  if (!appended.ok) return appended
  const boat = entries[0]!.boat
  const read = store.read(boat)
  if (!read.ok) return read
  const ids = new Set(entries.map(({ id }) => id))
  const asked = oddities(currentEntries(read.entries).entries, knownThings()).filter((oddity) =>
    oddity.ids.some((id) => ids.has(id)),
  )
  const written = entries.map(
    (entry) => `${sayDates(entry)}  ${entry.kind}  ${sayEntry(entry)}  (${entry.id})`,
  )
  const head = entries.length === 1 ? 'Written' : `Written: ${entries.length} entries`
  const text =
    entries.length === 1 ? `Written to the log of ${boat}: ${written[0]}` : `${head} to the log of ${boat}.`
  return {
    ok: true,
    json: { type, version: 1, boat, entries, asked },
    text: [text, ...askedText(asked)].join('\n'),
  }
}

type Named =
  | { readonly ok: true; readonly name: string }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The boat to write for: the one named, new or not; without a name the only one there is. */
export function boatToWrite(store: Store, asked: string | undefined): Named {
  const boats = store.boats()
  if (asked !== undefined) {
    if (shippedDemonstration().boats().includes(asked)) {
      const allowed = 'a boat of your own: demonstration boats are only read'
      return refuse({ code: 'read-only', path: '--boat', found: asked, allowed })
    }
    return { ok: true, name: asked }
  }
  if (boats.length === 1) return { ok: true, name: boats[0]! }
  const allowed =
    boats.length === 0 ? 'a name for the boat, such as --boat petrel' : `one of: ${boats.join(', ')}`
  return refuse({ code: 'missing', path: '--boat', found: 'nothing', allowed })
}

type SetFound =
  | { readonly ok: true; readonly set: string | null }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The set to write for. Kinds that belong to the boat have none. */
export function setToWrite(
  store: Store,
  of: { readonly kind: Kind; readonly boat: string | undefined; readonly asked: string | undefined },
): SetFound {
  const { kind, boat, asked } = of
  if (ofBoatOnly.includes(kind)) {
    if (asked === undefined) return { ok: true, set: null }
    const allowed = `nothing: a ${kind} entry belongs to the boat`
    return refuse({ code: 'no-set', path: '--set', found: asked, allowed })
  }
  if (asked !== undefined) return { ok: true, set: asked }
  if (ofEither.includes(kind)) return { ok: true, set: null }
  // Which set can only be told once the boat is; until then any name does for the check of the rest.
  if (boat === undefined) return { ok: true, set: 'set' }
  const read = store.read(boat)
  if (!read.ok) return read
  const sets = setsOf(currentEntries(read.entries).entries, today())
  if (sets.length === 0) {
    const allowed = 'a name for the set, such as --set main'
    return refuse({ code: 'missing', path: '--set', found: 'nothing', allowed })
  }
  return chosenSet(sets, undefined)
}

export interface CorrectOptions extends DataOption {
  readonly from?: string
  readonly until?: string
  readonly set?: string
  readonly body?: string
  readonly flags: Typed['flags']
  readonly bare: readonly string[]
  readonly takeBack?: string
}

/** `log correct ID`: a new entry in the place of an old one, which stays in the log, or one that takes it back. */
export function correctEntry(id: string, options: CorrectOptions): Promise<Result> {
  return withStore(options, (store) => {
    const text = store.textOf(id)
    if (text === undefined) {
      return refuse({
        code: 'unknown-entry',
        path: 'ID',
        found: id,
        allowed: 'the id of an entry, as "log list" shows',
      })
    }
    const old = readKept(text)
    const corrects = [id]
    if (options.takeBack !== undefined) {
      const { boat, set } = old
      const body = { text: options.takeBack }
      const draft = {
        boat,
        set,
        kind: 'note',
        from: old.from,
        until: old.until,
        body,
        corrects,
        voids: true,
      } as const
      return writeAndAsk(store, [draft as Draft], 'gensettle/log-correct')
    }
    if (options.body !== undefined && recordOf(options.body) === undefined) {
      return refuse({ code: 'not-json', path: '--body', found: options.body, allowed: 'a body as JSON' })
    }
    const { body, problems } = bodyFrom({ kind: old.kind, bare: options.bare, flags: options.flags })
    if (problems.length > 0) return refuse(...problems)
    const whole = options.body === undefined ? old.body : (recordOf(options.body) ?? {})
    const from = options.from ?? old.from
    const draft = draftOf({
      boat: old.boat,
      set: options.set ?? old.set,
      kind: old.kind,
      from,
      until: options.until ?? (options.from === undefined ? old.until : from),
      body: { ...whole, ...body },
    })
    return writeAndAsk(store, [{ ...draft, corrects } as Draft], 'gensettle/log-correct')
  })
}
