/**
 * Which leads are joined for the supply that a boat is wired for.
 *
 * @module
 */

import type { CatalogueLinks, CatalogueWinding, LinkPattern, Supply } from '../../catalogue/links-schema.js'
import type { Limits } from '../limits.js'
import { writeJoints, writeOutlets } from './links-text.js'
import { type LinksAnswer, lookAtLinks } from './look-at-links.js'
import { patternJoined, windingMarked } from './patterns.js'

/** What each coil is made for, by the plate. */
export interface MadeFor {
  readonly emfV: number
  readonly hertz: number
  /** [A] */
  readonly amps?: number | undefined
}

/** One way of joining the leads that gives the supply. */
export interface WayOfLinking {
  readonly pattern: string
  readonly name: string
  readonly joined: string
  readonly lines: string
  /** EMF at which each coil must stand. [V] */
  readonly emfV: number
  /** Of its iron, in multiples of what it is made for; none where that is not known. */
  readonly flux: number | null
  /** `as-made`: within the 5 % that a regulator can be set by. `more-flux`: only with the maker's word. */
  readonly fits: 'as-made' | 'more-flux' | 'less-flux' | 'not-known'
  /** In each line, all loaded alike, in amps or in multiples of a coil's. */
  readonly lineAmps: number
  readonly share: number
}

/**
 * Every pattern of the winding that gives the supply, the one nearest to what the coils are made for first.
 *
 * A coil must stand at the supply's volts over what the pattern gives in multiples of a coil; the flux of its iron goes with
 * volts over frequency: `flux = (E / f) / (E(made) / f(made))`.
 */
export function waysOfLinking(
  links: CatalogueLinks,
  {
    winding,
    supply,
    made,
    marks,
    limits,
  }: {
    readonly winding: CatalogueWinding
    readonly supply: Supply
    readonly made?: MadeFor | undefined
    readonly marks?: string | undefined
    readonly limits: Limits
  },
): readonly WayOfLinking[] {
  const coils = windingMarked(winding, marks)
  return links.patterns
    .filter((pattern) => pattern.winding === winding.id)
    .flatMap((pattern) => {
      const joined = patternJoined(links, pattern, marks)
      const answer = lookAtLinks(coils, joined, made?.amps === undefined ? {} : { amps: made.amps })
      const multiple = multipleFor(supply, answer)
      const [most] = answer.capacities
      if (multiple === undefined || most === undefined) return []
      const emfV = supply.volts / multiple
      const flux = made === undefined ? null : emfV / supply.hertz / (made.emfV / made.hertz)
      return [
        {
          ...told(pattern, joined),
          emfV,
          flux,
          fits: fitOf(flux, limits('volts-setting').value / 100),
          lineAmps: most.lineAmps,
          share: most.share,
        },
      ]
    })
    .sort((a, b) => missOf(a) - missOf(b) || b.share - a.share)
}

function told({ id, name }: LinkPattern, joined: ReturnType<typeof patternJoined>) {
  return { pattern: id, name, joined: writeJoints(joined.joints), lines: writeOutlets(joined.lines) }
}

/** `range`: by how much a set's voltage can be set either way, as a share of its rated one. */
function fitOf(flux: number | null, range: number): WayOfLinking['fits'] {
  if (flux === null) return 'not-known'
  if (flux > (1 + range) * (1 + 1e-9)) return 'more-flux'
  return flux < (1 - range) * (1 - 1e-9) ? 'less-flux' : 'as-made'
}

function missOf({ flux }: WayOfLinking): number {
  return flux === null ? 0 : Math.round(Math.abs(Math.log(flux)) * 1e6)
}

/** What of a pattern answers to the supply's volts, in multiples of a coil's EMF; undefined where it gives another kind of supply. */
function multipleFor({ kind }: Supply, { outlets }: LinksAnswer): number | undefined {
  const between = (one: string, other: string) =>
    outlets.find(({ from, to }) => (from === one && to === other) || (from === other && to === one))?.volts ??
    undefined
  const near = (a: number | undefined, b: number | undefined) =>
    a !== undefined && b !== undefined && b > 0.02 && Math.abs(a / b - 1) < 0.005
  const names = new Set(outlets.flatMap(({ from, to }) => [from, to]))
  const lines = ['L1', 'L2', 'L3'].filter((name) => names.has(name))
  if (kind === 'two-wire') {
    if (names.size !== 2) return undefined
    const volts = outlets[0]?.volts ?? 0
    return volts > 0.02 ? volts : undefined
  }
  if (kind === 'three-wire') {
    const whole = between('L1', 'L2')
    const halves = [between('L1', 'N'), between('L2', 'N')]
    if (lines.length !== 2 || whole === undefined) return undefined
    return halves.every((half) => near(half, whole / 2)) ? whole : undefined
  }
  const whole = between('L1', 'L2')
  if (lines.length !== 3 || whole === undefined) return undefined
  if (!near(between('L2', 'L3'), whole) || !near(between('L1', 'L3'), whole)) return undefined
  if (kind === 'three-phase') return whole
  const toNeutral = ['L1', 'L2', 'L3'].map((line) => between(line, 'N'))
  return toNeutral.every((volts) => near(volts, whole / Math.sqrt(3))) ? whole : undefined
}
