/**
 * Windings and ways of joining them, as the catalogue has them, under the marks that a machine bears.
 *
 * @module
 */

import type { CatalogueLinks, CatalogueWinding, LinkPattern } from '../../catalogue/links-schema.js'
import type { Problem } from '../../catalogue/problem.js'
import { type LinksFile, readJoined, relabelled } from './links-text.js'
import { type Joined, leadsOf, type Winding } from './winding.js'

/** A winding under the marks asked for; without any, under the first of them. */
export function windingMarked(of: CatalogueWinding, marks?: string): Winding {
  return relabelled({ coils: of.coils }, leadsByMark(of, marks))
}

/** How a pattern joins the leads, under the marks asked for. */
export function patternJoined(links: CatalogueLinks, pattern: LinkPattern, marks?: string): Joined {
  const of = windingById(links, pattern.winding)
  const { joined, problems } = readJoined({ ...pattern, sensing: '' }, { leads: leadsOf(of) })
  if (problems.length > 0) {
    throw new RangeError(`pattern must be sound; found ${pattern.id}: ${JSON.stringify(problems)}`)
  }
  const other = leadsByMark(of, marks)
  const named = (lead: string) => other.get(lead) ?? lead
  return {
    joints: joined.joints.map((leads) => leads.map(named)),
    lines: joined.lines.map(({ name, lead }) => ({ name, lead: named(lead) })),
    sensing: [],
  }
}

/** What each lead is called under other marks. */
export function leadsByMark(of: CatalogueWinding, marks?: string): ReadonlyMap<string, string> {
  const [first] = of.marks
  const asked = of.marks.find(({ id }) => id === marks) ?? first!
  return new Map(first!.leads.map((lead, at) => [lead, asked.leads[at]!]))
}

export function windingById(links: CatalogueLinks, id: string): CatalogueWinding {
  const winding = links.windings.find((one) => one.id === id)
  if (winding === undefined) throw new RangeError(`id must be one of a winding; found ${id}`)
  return winding
}

/** The pattern that joins the leads in the same way and takes the same lines out, whatever these are called; none where none does. */
export function patternOf(
  links: CatalogueLinks,
  {
    winding,
    joined,
    marks,
  }: { readonly winding: string; readonly joined: Joined; readonly marks?: string | undefined },
): LinkPattern | undefined {
  const key = (one: Joined) => {
    const groups = merged(one.joints)
    const jointed = (lead: string) => groups.find((leads) => leads.includes(lead))?.join('-') ?? lead
    return JSON.stringify([
      groups.map((leads) => leads.join('-')).sort(),
      one.lines.map(({ name, lead }) => `${name === 'N' ? 'N' : ''} ${jointed(lead)}`).sort(),
    ])
  }
  const wanted = key(joined)
  return links.patterns.find(
    (pattern) => pattern.winding === winding && key(patternJoined(links, pattern, marks)) === wanted,
  )
}

/** Joints that share a lead are one. */
function merged(joints: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const groups: Set<string>[] = []
  for (const joint of joints) {
    const shared = groups.filter((group) => joint.some((lead) => group.has(lead)))
    const whole = new Set([...joint, ...shared.flatMap((group) => [...group])])
    for (const group of shared) groups.splice(groups.indexOf(group), 1)
    groups.push(whole)
  }
  return groups.map((group) => [...group].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })))
}

/** The winding and the joints that a file tells, or everything that is wrong with it. */
export function linksFromFile(
  links: CatalogueLinks,
  file: LinksFile,
):
  | {
      readonly ok: true
      readonly winding: Winding
      readonly joined: Joined
      readonly known?: CatalogueWinding
    }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const known = links.windings.find(({ id }) => id === file.winding)
  if (file.coils === undefined && known === undefined) {
    const allowed = `one of: ${links.windings.map(({ id }) => id).join(', ')}; or coils of its own, such as "coils: T1-T2 at 0, T3-T4 at 0"`
    const code = file.winding === undefined ? 'missing' : 'unknown-winding'
    return { ok: false, problems: [{ code, path: 'winding', found: file.winding ?? 'nothing', allowed }] }
  }
  const marks = known?.marks.map(({ id }) => id) ?? []
  if (file.marks !== undefined && known !== undefined && !marks.includes(file.marks)) {
    const allowed = `one of: ${marks.join(', ')}`
    return { ok: false, problems: [{ code: 'unknown-marks', path: 'marks', found: file.marks, allowed }] }
  }
  const winding = file.coils === undefined ? windingMarked(known!, file.marks) : { coils: file.coils }
  const { joined, problems } = readJoined(file, { leads: leadsOf(winding) })
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, winding, joined, ...(file.coils === undefined && known !== undefined ? { known } : {}) }
}
