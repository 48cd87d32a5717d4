/**
 * All that a job needs in hand before it is begun: its parts, the small pieces with them, where each stands, and what is still
 * to be settled.
 *
 * @module
 */

import type { KitPiece, KitQuestion, KitReady, Kits, PartKit } from '../catalogue/kit-schema.js'
import type { Part } from '../catalogue/part-schema.js'
import type { Entry } from '../logbook/kinds.js'
import type { Deed, Terms } from '../register/register-types.js'
import type { JobPart } from './jobs.js'
import { type Compared, compareNumbers } from './kit-compare.js'
import { type KnownAnswer, type KnownOfPieces, knownOfPieces, type SharedPiece } from './kit-known.js'
import { chanceOfAny, priceOfWait } from './kit-wait.js'
import {
  isLate,
  nothingOrdered,
  type PieceName,
  type PieceState,
  pieceKey,
  stateOf,
  type Tally,
  talliesOf,
} from './order.js'

export interface KitQuestioned {
  readonly job?: { readonly name: string; readonly parts: readonly JobPart[] }
  /** Parts to be renewed where there is no job. */
  readonly parts?: readonly string[]
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly set: string
  /** Exact to the day. */
  readonly asOf: string
  readonly kits: Kits
  /** Of the set: prices and lead times in its money. */
  readonly catalogue: { readonly parts: readonly Part[] }
  readonly terms: Pick<Terms, 'withoutPower'>
}

/** A question, and its answer where the log gives one. */
export interface Asked {
  readonly question: KitQuestion
  readonly known?: KnownAnswer
}

/** A part or a small piece that must be, or had better be, in hand. */
export interface Need extends PieceName {
  readonly key: string
  readonly name: string
  readonly supplier: string
  readonly count: number
  /** By the keeper; else it is that of a usual set. Practice. */
  readonly counted: boolean
  readonly spares: number
  /** It is renewed whatever it looks like; or where the old one will not do. */
  readonly always: boolean
  /** Without it the set cannot go back together. */
  readonly stops: boolean
  readonly asks: readonly Asked[]
  /** Other parts of the job that need the same piece: it serves them too. */
  readonly alsoFor: readonly string[]
  /** It goes to a shop once it is out, and comes back: nothing of it can be in hand before. */
  readonly sentAway: boolean
  readonly state: PieceState
  /** What still stands against it; left out: it is in hand, and like the old one. */
  readonly lacks?: Lack
  readonly tally: Tally
  /** Expected by now, and not here. */
  readonly late: boolean
  /** It is bought by a number or a size that can be held against the old one's. */
  readonly numbered: boolean
  /** The number of the old one, and what comes of holding the new one's against it. */
  readonly oldNumber?: string
  readonly byNumber?: Compared
}

/** Why a piece is not ready, the worst first. */
export const lacks = ['does-not-match', 'settle', 'to-order', 'late', 'on-the-way', 'unchecked'] as const
export type Lack = (typeof lacks)[number]

/** A tool, stuff that is used up, or something to be arranged; for which parts. */
export interface Ready {
  readonly name: string
  readonly is: KitReady['is']
  readonly supplier: string
  readonly for: readonly string[]
}

/** The chance that one of the parts still to be checked is wrong, and what the second wait costs. */
export interface WrongPart {
  readonly part: string
  readonly chance: number
  /** Until another is here. [d] */
  readonly days: number
  /** Of the piece itself, lost where it is not taken back: typical, of the maker's own. */
  readonly piece: number
  /** Of those days without power; left out: no price of a day was said. */
  readonly price?: number
}

export interface Kit {
  readonly job?: string
  readonly needs: readonly Need[]
  readonly ready: readonly Ready[]
  readonly heeds: readonly { readonly part: string; readonly heed: string }[]
  /** What stands against beginning; and what would only be a nuisance. */
  readonly stops: readonly Need[]
  readonly inconvenient: readonly Need[]
  /** Parts of the job that work has done already. */
  readonly done: readonly string[]
  /** Parts of the job for which nothing is bought. */
  readonly nothingFor: readonly string[]
  readonly wrong: { readonly parts: readonly WrongPart[]; readonly anyChance: number }
  /** Pieces that entries order for the job and that no list here knows. */
  readonly besides: readonly { readonly key: string; readonly tally: Tally }[]
}

/** What a deed asks for: the part and its pieces, only what is renewed on the way, or nothing. */
const wants: Readonly<Record<Deed, 'all' | 'on the way' | 'nothing'>> = {
  renewed: 'all',
  reconditioned: 'on the way',
  cleaned: 'on the way',
  freed: 'on the way',
  opened: 'on the way',
  patched: 'nothing',
  adjusted: 'nothing',
  'topped-up': 'nothing',
  relinked: 'nothing',
  tested: 'nothing',
  removed: 'nothing',
}

/** What it mends comes out first and goes there. */
const windingShop = 'winding'

/** An answer by which a piece that goes in only where it is needed is not. */
const notNeeded = /^(?:no\b|none\b|not (?:needed|fitted)\b|without\b)/i

/** The kit of a job, or of parts that are to be renewed. */
export function kitOf(of: KitQuestioned): Kit {
  const { job, kits, entries, set } = of
  const parts =
    job?.parts ?? (of.parts ?? []).map((part): JobPart => ({ part, did: 'renewed', isDone: false }))
  const known = knownOfPieces(entries, set)
  const open = parts.flatMap(({ part, did, isDone }) => {
    const kit = kits.kits.find((one) => one.part === part)
    return isDone || kit === undefined || wants[did] === 'nothing' ? [] : [{ kit, all: wants[did] === 'all' }]
  })
  const drafts = onceEach(open.flatMap(({ kit, all }) => draftsOf(kit, { all, of, known })))
  const tallies = talliesOf(entries, set, {
    job: job?.name,
    usual: (piece) => drafts.find(({ key }) => key === pieceKey(piece))?.count ?? 1,
  })
  const needs = drafts.map((draft) => needOf(draft, tallies.get(draft.key) ?? nothingOrdered, of))
  const unready = needs
    .filter((need) => need.lacks !== undefined)
    .sort((a, b) => lacks.indexOf(a.lacks!) - lacks.indexOf(b.lacks!))
  const keys = new Set(needs.map(({ key }) => key))
  const named = new Set(parts.map(({ part }) => part))
  const wrong = wrongParts(unready, of)
  return {
    ...(job === undefined ? {} : { job: job.name }),
    needs,
    ready: readyOf(
      open.map(({ kit }) => kit),
      keys,
    ),
    heeds: open.flatMap(({ kit: { part, heed } }) => (heed === undefined ? [] : [{ part, heed }])),
    stops: unready.filter(({ stops }) => stops),
    inconvenient: unready.filter(({ stops }) => !stops),
    done: parts.filter(({ isDone }) => isDone).map(({ part }) => part),
    nothingFor: parts
      .filter(({ part, isDone }) => !isDone && !open.some(({ kit }) => kit.part === part))
      .map(({ part }) => part),
    wrong: { parts: wrong, anyChance: chanceOfAny(wrong.map(({ chance }) => chance)) },
    besides: [...tallies]
      .filter(([key]) => !keys.has(key) && (job !== undefined || named.has(key.split('/')[0]!)))
      .map(([key, tally]) => ({ key, tally })),
  }
}

type Draft = Omit<Need, 'state' | 'lacks' | 'tally' | 'late' | 'byNumber'> & {
  readonly standard: KitPiece['standard']
  readonly shared: string | undefined
}

/** The part itself, where it is bought, and its pieces but those told as not needed. */
function draftsOf(
  kit: PartKit,
  { all, of, known }: { readonly all: boolean; readonly of: KitQuestioned; readonly known: KnownOfPieces },
): Draft[] {
  const { part, supplier } = kit
  const asked = (ids: readonly string[], piece: SharedPiece) => askedOf(ids, piece, { kits: of.kits, known })
  const number = (piece: SharedPiece) => {
    const answer = known.numberOf(piece)?.answer
    return answer === undefined ? {} : { oldNumber: answer }
  }
  const itself: Draft = {
    part,
    key: part,
    name: of.catalogue.parts.find(({ id }) => id === part)?.name ?? part,
    supplier,
    count: 1,
    counted: false,
    spares: 0,
    always: true,
    stops: true,
    asks: asked([...kit.asks, ...kit.settled.flatMap(({ by }) => by)], { part }),
    alsoFor: [],
    sentAway: supplier === windingShop,
    numbered: true,
    standard: undefined,
    shared: part,
    ...number({ part }),
  }
  const pieces = kit.pieces.flatMap((piece): Draft[] => {
    const place = { part, piece: piece.id, shared: piece.shared }
    const asks = asked(piece.asks, place)
    const isLeftOut =
      piece.renewed === 'where-needed' && asks.some((one) => notNeeded.test(one.known?.answer ?? ''))
    if (isLeftOut || !(all || piece.renewed === 'always')) return []
    return [
      {
        part,
        piece: piece.id,
        key: pieceKey({ part, piece: piece.id }),
        name: piece.name,
        supplier: piece.supplier ?? supplier,
        count: known.countOf(place) ?? piece.count,
        counted: known.countOf(place) !== undefined,
        spares: piece.spares ?? 0,
        always: piece.renewed === 'always',
        stops: piece.lack === 'stops',
        asks,
        alsoFor: [],
        sentAway: false,
        numbered: piece.standard !== undefined,
        standard: piece.standard,
        shared: piece.shared,
        ...number(place),
      },
    ]
  })
  return [...(all ? [itself] : []), ...pieces]
}

function askedOf(
  ids: readonly string[],
  piece: SharedPiece,
  { kits, known }: { readonly kits: Kits; readonly known: KnownOfPieces },
): Asked[] {
  return [...new Set(ids)].flatMap((id) => {
    const question = kits.questions.find((one) => one.id === id)
    if (question === undefined) return []
    const answer = known.answerOf(question, piece)
    return [{ question, ...(answer === undefined ? {} : { known: answer }) }]
  })
}

/** A piece that several parts need is bought once: as the part itself where the job renews that, else with the first of them. */
function onceEach(drafts: readonly Draft[]): Draft[] {
  const kept = new Map<string, Draft>()
  // parts first, so that a piece gives way to the part that it is
  for (const draft of [...drafts].sort(
    (a, b) => Number(a.piece !== undefined) - Number(b.piece !== undefined),
  )) {
    const key = draft.shared ?? draft.key
    const first = kept.get(key)
    kept.set(
      key,
      first === undefined
        ? draft
        : {
            ...first,
            count: Math.max(first.count, first.piece === undefined ? 1 : draft.count),
            stops: first.stops || draft.stops,
            always: first.always || draft.always,
            alsoFor: [...first.alsoFor, draft.part],
          },
    )
  }
  const keys = new Set([...kept.values()].map(({ key }) => key))
  return drafts.flatMap(({ key }) =>
    keys.has(key) ? [[...kept.values()].find((one) => one.key === key)!] : [],
  )
}

function needOf({ standard, shared: _, ...draft }: Draft, tally: Tally, { kits, asOf }: KitQuestioned): Need {
  const { oldNumber } = draft
  const compared =
    oldNumber === undefined || tally.number === undefined
      ? undefined
      : compareNumbers(
          { old: oldNumber, replacement: tally.number, ...(standard && { as: standard }) },
          kits.sizes,
        )
  const byNumber = compared === undefined || compared.verdict === 'cannot-tell' ? undefined : compared
  const state = stateOf(tally, draft.count)
  const late = isLate(tally, asOf)
  const lack = lackOf(draft, { state, late, byNumber })
  return {
    ...draft,
    tally,
    state,
    late,
    ...(lack === undefined ? {} : { lacks: lack }),
    ...(byNumber === undefined ? {} : { byNumber }),
  }
}

/** What its number says counts even of one that was said to fit: then one of the two is wrong. */
function lackOf(
  { sentAway, always, asks }: Pick<Draft, 'sentAway' | 'always' | 'asks'>,
  {
    state,
    late,
    byNumber,
  }: { readonly state: PieceState; readonly late: boolean; readonly byNumber: Compared | undefined },
): Lack | undefined {
  if (sentAway) return undefined
  if (state === 'does-not-fit' || (state !== 'missing' && byNumber?.verdict === 'does-not-fit'))
    return 'does-not-match'
  if (state === 'fits') return undefined
  if (state === 'received') return 'unchecked'
  if (state === 'ordered') return late ? 'late' : 'on-the-way'
  return !always && asks.some(({ known }) => known === undefined) ? 'settle' : 'to-order'
}

/** What is a part of the job itself is among the needs already. */
function readyOf(kits: readonly PartKit[], needs: ReadonlySet<string>): Ready[] {
  const ready = new Map<string, Ready>()
  for (const kit of kits) {
    for (const { id, name, is, supplier, shared } of kit.ready) {
      if (shared !== undefined && needs.has(shared)) continue
      const before = ready.get(shared ?? id)
      ready.set(shared ?? id, {
        name: before?.name ?? name,
        is,
        supplier: before?.supplier ?? supplier ?? kit.supplier,
        for: [...(before?.for ?? []), kit.part],
      })
    }
  }
  return [...ready.values()]
}

/** Of the parts themselves that nobody has held against the old ones yet. */
function wrongParts(unready: readonly Need[], { catalogue, terms, asOf }: KitQuestioned): WrongPart[] {
  return unready.flatMap(({ part, piece }) => {
    const known = catalogue.parts.find(({ id }) => id === part)
    if (piece !== undefined || known === undefined) return []
    const days = known.leadDays.ordered
    const price = priceOfWait(terms, { days, month: Number(asOf.slice(5, 7)) })
    const { wrongPartChance: chance, price: asNew } = known
    const lost = { part, chance, days, piece: asNew.original.typical }
    return [{ ...lost, ...(price === undefined ? {} : { price }) }]
  })
}
