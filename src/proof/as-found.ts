/**
 * Leads as they were found and as they were left: every difference, and what it does.
 *
 * @module
 */

import type { CatalogueLinks, CatalogueWinding } from '../catalogue/links-schema.js'
import type { Problem } from '../catalogue/problem.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'
import type { Photograph } from '../logbook/photographs.js'
import type { SetFacts } from '../register/register-types.js'
import type { Limits } from './limits.js'
import { type LinksFile, readLinksFile } from './links/links-text.js'
import { type LinksAnswer, lookAtLinks } from './links/look-at-links.js'
import { linksFromFile, patternOf } from './links/patterns.js'
import { sayAmps, sayOhms, saySensed, sayVolts } from './links/say-links.js'
import { type CoilValues, type Joined, leadsOf, type Winding } from './links/winding.js'

/** Joined leads that were written down or typed, with what belongs to them. */
export interface LinksRecord {
  /** Id of the entry, where it is one. */
  readonly entry?: string
  readonly date?: string
  readonly winding: Winding
  readonly known?: CatalogueWinding
  readonly marks?: string
  readonly joined: Joined
  readonly labels: readonly string[]
  readonly photographs: readonly Photograph[]
}

/** One thing that is otherwise. */
export interface LinksDifference {
  readonly what: 'joint' | 'line' | 'sensing' | 'label' | 'winding'
  readonly lead: string
  readonly found: string
  readonly left: string
}

/** A figure as found and as left. */
export interface FigureChange {
  readonly name: string
  readonly found: string
  readonly left: string
}

export interface LinksComparison {
  readonly differences: readonly LinksDifference[]
  /** Each lead as found, as left, and what to do with it. */
  readonly leads: readonly {
    readonly lead: string
    readonly found: string
    readonly left: string
    readonly put: string
  }[]
  /** Volts, ohms, capacity and sensing that are no more as they were. */
  readonly changes: readonly FigureChange[]
  /** What bars starting it. None where no difference changes anything. */
  readonly stops: readonly string[]
  /** What is lacking, and bars nothing by itself. */
  readonly lacks: readonly string[]
  readonly found: LinksAnswer
  readonly left: LinksAnswer
}

/** "as found: T2-T3; L=T1, N=T4" */
export function sayLinksEntry({ state, joined, lines }: Body<'links'>): string {
  const joints = joined.length === 0 ? 'nothing joined' : joined.join(', ')
  return [`leads ${state.replace('-', ' ')}: ${joints}`, lines.join(', ')].filter(Boolean).join('; ')
}

/** The last entries of a set about its leads, each state by itself. */
export function linksEntries(
  entries: readonly Entry[],
  set: string,
): { readonly found?: Extract<Entry, { kind: 'links' }>; readonly left?: Extract<Entry, { kind: 'links' }> } {
  const of = entries
    .filter((entry) => isKind(entry, 'links'))
    .filter((entry) => entry.set === set)
    .sort((a, b) => (a.from === b.from ? a.n - b.n : a.from < b.from ? -1 : 1))
  const left = of.findLast(({ body }) => body.state === 'as-left')
  const found = of.findLast(
    ({ body, from }) => body.state === 'as-found' && (left === undefined || from <= left.from),
  )
  const last = of.findLast(({ body }) => body.state === 'as-found')
  const one = found ?? last
  // What was left before it was found anew says nothing of what was left since.
  const since = left !== undefined && last !== undefined && last.from > left.from
  return since ? { found: last } : { ...(one && { found: one }), ...(left && { left }) }
}

export type ReadLinks =
  | { readonly ok: true; readonly record: LinksRecord }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Joined leads out of an entry. */
export function recordOfEntry(links: CatalogueLinks, entry: Extract<Entry, { kind: 'links' }>): ReadLinks {
  const { body } = entry
  const text = [
    ...(body.coils === undefined ? [`winding: ${body.winding}`] : body.coils.map((coil) => `coils: ${coil}`)),
    ...(body.marks === undefined ? [] : [`marks: ${body.marks}`]),
    `joined: ${body.joined.join(', ')}`,
    `lines: ${body.lines.join(', ')}`,
    `sensing: ${(body.sensing ?? []).join(', ')}`,
  ].join('\n')
  const { file, problems } = readLinksFile(text)
  const at = (problem: Problem) => ({ ...problem, path: `entry ${entry.id} ${problem.path}` })
  if (problems.length > 0) return { ok: false, problems: problems.map(at) }
  const read = recordOfFile(links, file)
  if (!read.ok) return { ok: false, problems: read.problems.map(at) }
  return {
    ok: true,
    record: {
      ...read.record,
      entry: entry.id,
      date: entry.from,
      labels: body.labels ?? [],
      photographs: body.photographs ?? [],
    },
  }
}

/** Joined leads out of a file. */
export function recordOfFile(links: CatalogueLinks, file: LinksFile): ReadLinks {
  const read = linksFromFile(links, file)
  if (!read.ok) return read
  const { winding, joined, known } = read
  return {
    ok: true,
    record: {
      winding,
      joined,
      labels: [],
      photographs: [],
      ...(known && { known }),
      ...(file.marks !== undefined && { marks: file.marks }),
    },
  }
}

/**
 * What each coil is made for, from what the set is said to be: the highest of its voltages is that between the two lines which
 * stand farthest apart as found, and its rating is what all lines alike may draw, at the power factor that such sets are rated at:
 * 0.8 with three phases, 1 with one. Practice.
 */
export function ratedValues(
  { winding, joined }: Pick<LinksRecord, 'winding' | 'joined'>,
  { volts, ratingKw, phases }: Pick<SetFacts, 'volts' | 'ratingKw' | 'phases'>,
): CoilValues {
  const { outlets, capacities } = lookAtLinks(winding, joined)
  const widest = Math.max(0, ...outlets.map((pair) => pair.volts ?? 0))
  const [highest] = volts === undefined ? [] : [...volts].sort((a, b) => b - a)
  if (highest === undefined || !(widest > 0.02)) return {}
  const emfV = highest / widest
  const [most] = capacities
  const kva = ratingKw === undefined ? undefined : ratingKw / (phases === 3 ? 0.8 : 1)
  const amps = kva === undefined || most === undefined ? undefined : (1000 * kva) / (most.voltAmps * emfV)
  return { emfV, ...(amps !== undefined && { amps }) }
}

/**
 * Compares leads as left with leads as found. Where the regulator's leads are not told as left, they are taken to be where they
 * were: it looks at the same leads, which may now be other points.
 *
 * A difference that changes volts, ohms, capacity or sensing is a stop line, as is a move of which no picture was taken.
 */
export function compareLinks(
  { found, left }: { readonly found: LinksRecord; readonly left: LinksRecord },
  { values, limits }: { readonly values: CoilValues; readonly limits: Limits },
): LinksComparison {
  const leftJoined =
    left.joined.sensing.length > 0 ? left.joined : { ...left.joined, sensing: found.joined.sensing }
  const before = lookAtLinks(found.winding, found.joined, values)
  const setToV =
    before.sensed?.multiple == null || values.emfV === undefined
      ? undefined
      : before.sensed.multiple * values.emfV
  const as = lookAtLinks(found.winding, found.joined, values, { setToV })
  const now = lookAtLinks(left.winding, leftJoined, values, { setToV })
  const leads = leadsOf(found.winding).map((lead) => leadRow(lead, found.joined, leftJoined))
  const differences = differencesOf(found, { ...left, joined: leftJoined })
  const changes = changesOf(as, now, limits)
  const moved = differences.some(({ what }) => what !== 'label')
  return {
    differences,
    leads,
    changes,
    stops: [
      ...changes.slice(0, 1).map(sayStop),
      ...halfMissing(as, now, limits),
      ...linkFaults(now),
      ...(moved && left.entry !== undefined && left.photographs.length === 0
        ? ['Leads were moved and there is no picture of them as left: take one, and enter it.']
        : []),
    ],
    lacks: [
      ...(found.entry !== undefined && found.photographs.length === 0
        ? ['There is no picture of them as found.']
        : []),
      ...(found.joined.sensing.length < 2
        ? ['Where the regulator looked was not written down: what it does now cannot be told.']
        : []),
    ],
    found: as,
    left: now,
  }
}

/** What is wrong with leads as they are joined, whatever they were before. */
export function linkFaults(answer: LinksAnswer): string[] {
  const sensed = saySensed(answer)
  return [
    ...answer.findings.filter(({ stops }) => stops).map(({ says }) => says),
    ...(sensed?.stops ? [sensed.says] : []),
  ]
}

/** Right volts with double ohms and half the amps: a half that belongs beside another is left off. */
function halfMissing(found: LinksAnswer, left: LinksAnswer, limits: Limits): string[] {
  const [alikeWithin, moreBy] = [limits('links-alike').value / 100, limits('links-half-off').value / 100]
  const sameVolts = found.outlets.every((pair) => {
    const other = alike(left, pair)
    return (
      other?.volts != null &&
      pair.volts != null &&
      Math.abs(other.volts - pair.volts) <= alikeWithin * Math.max(pair.volts, 1e-6)
    )
  })
  const moreOhms = found.outlets.some((pair) => {
    const other = alike(left, pair)
    return other?.ohms != null && pair.ohms != null && other.ohms > pair.ohms * moreBy
  })
  if (found.outlets.length === 0 || !sameVolts || !moreOhms) return []
  return [
    'Volts are right and ohms are higher: a half that was beside another is left off. No voltmeter finds that.',
  ]
}

function alike({ outlets }: LinksAnswer, { from, to }: { readonly from: string; readonly to: string }) {
  return outlets.find((one) => (one.from === from && one.to === to) || (one.from === to && one.to === from))
}

/** Figures that differ by more than rounding. */
function changesOf(found: LinksAnswer, left: LinksAnswer, limits: Limits): readonly FigureChange[] {
  const { units } = found
  const alikeWithin = limits('links-alike').value / 100
  const changes: FigureChange[] = []
  const differs = (a: number | null | undefined, b: number | null | undefined) =>
    a == null || b == null ? a !== b : Math.abs(a - b) > alikeWithin * Math.max(Math.abs(a), Math.abs(b))
  const pairs = [...found.outlets, ...left.outlets.filter((pair) => alike(found, pair) === undefined)]
  for (const pair of pairs) {
    const [a, b] = [alike(found, pair), alike(left, pair)]
    const name = `${pair.from} to ${pair.to}`
    const said = (one: typeof a, say: typeof sayVolts | typeof sayOhms) =>
      one === undefined ? 'no such lines' : say(one, units)
    if (differs(a?.volts, b?.volts)) changes.push({ name, found: said(a, sayVolts), left: said(b, sayVolts) })
    if (differs(a?.ohms, b?.ohms)) {
      changes.push({ name: `${name}, through the copper`, found: said(a, sayOhms), left: said(b, sayOhms) })
    }
  }
  const [can, may] = [found.capacities[0], left.capacities[0]]
  if (differs(can?.lineAmps, may?.lineAmps)) {
    const said = (one: typeof can) => (one === undefined ? 'nothing' : sayAmps(one.lineAmps, units))
    changes.push({ name: 'each line may carry', found: said(can), left: said(may) })
  }
  if (found.sensed !== null && differs(found.sensed.multiple, left.sensed?.multiple)) {
    const said = ({ sensed }: LinksAnswer) =>
      sensed?.multiple == null ? 'nothing' : `${Number(sensed.multiple.toFixed(3))} × the EMF of a coil`
    changes.push({ name: 'the regulator sees', found: said(found), left: said(left) })
  }
  return changes
}

function sayStop({ name, found, left }: FigureChange): string {
  return `Do not start it. As left, ${name}: ${left}; as found: ${found}.`
}

/** What a lead is joined to and what goes out from its point. */
function leadRow(lead: string, found: Joined, left: Joined): LinksComparison['leads'][number] {
  const [was, is] = [sayLead(lead, found), sayLead(lead, left)]
  return { lead, found: was, left: is, put: was === is ? 'stays' : was }
}

function sayLead(lead: string, { joints, lines, sensing }: Joined): string {
  const point = pointOf(lead, joints)
  const others = point.filter((other) => other !== lead)
  const out = [...lines, ...sensing].filter((outlet) => point.includes(outlet.lead)).map(({ name }) => name)
  const said = [others.length === 0 ? '' : `with ${others.join(', ')}`, ...out].filter(Boolean)
  return said.length === 0 ? 'alone' : said.join('; ')
}

/** All leads that are one point with this one. */
export function pointOf(lead: string, joints: Joined['joints']): readonly string[] {
  const point = new Set([lead])
  for (let size = 0; size < point.size; ) {
    size = point.size
    for (const joint of joints)
      if (joint.some((one) => point.has(one))) for (const one of joint) point.add(one)
  }
  return [...point].sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
}

function differencesOf(found: LinksRecord, left: LinksRecord): readonly LinksDifference[] {
  const leads = leadsOf(found.winding)
  const foreign = leadsOf(left.winding).filter((lead) => !leads.includes(lead))
  const differences: LinksDifference[] = foreign.map((lead) => ({
    what: 'winding',
    lead,
    found: 'no such lead',
    left: 'a lead',
  }))
  for (const lead of leads) {
    const joint = ({ joined }: LinksRecord) => {
      const others = pointOf(lead, joined.joints).filter((one) => one !== lead)
      return others.length === 0 ? 'alone' : `with ${others.join(', ')}`
    }
    const out = (record: LinksRecord, which: 'lines' | 'sensing') =>
      record.joined[which]
        .filter((one) => one.lead === lead)
        .map(({ name }) => name)
        .join(', ') || 'nothing'
    const label = ({ labels }: LinksRecord) =>
      labels
        .filter((one) => one.startsWith(`${lead}=`))
        .map((one) => one.slice(lead.length + 1))
        .join(', ')
    const push = (what: LinksDifference['what'], was: string, is: string) => {
      if (was !== is) differences.push({ what, lead, found: was, left: is })
    }
    push('joint', joint(found), joint(left))
    push('line', out(found, 'lines'), out(left, 'lines'))
    push('sensing', out(found, 'sensing'), out(left, 'sensing'))
    if (left.labels.length > 0) push('label', label(found) || 'none', label(left) || 'none')
  }
  return differences
}

/** Leads whose point, or what goes out from it, another record does not have so. */
export function changedLeads({ winding, joined }: LinksRecord, other: LinksRecord): ReadonlySet<string> {
  const key = (lead: string, { joints, lines }: Joined) => {
    const point = pointOf(lead, joints)
    return [...point, ...lines.filter((one) => point.includes(one.lead)).map(({ name }) => name)].join(' ')
  }
  return new Set(leadsOf(winding).filter((lead) => key(lead, joined) !== key(lead, other.joined)))
}

/** The pattern that a record is, where it is one of the catalogue's. */
export function patternOfRecord(links: CatalogueLinks, { known, joined, marks }: LinksRecord) {
  return known === undefined ? undefined : patternOf(links, { winding: known.id, joined, marks })
}
