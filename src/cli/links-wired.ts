/**
 * `gensettle links --wired-for`: which leads are joined for a supply, and what hangs on going over to it.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { CatalogueWinding, Supply } from '../catalogue/links-schema.js'
import type { Problem } from '../catalogue/problem.js'
import { limitsOf } from '../proof/limits.js'
import { linksCaution } from '../proof/links/say-links.js'
import { moveSupply, type SupplyMove } from '../proof/links/supply-move.js'
import { type MadeFor, type WayOfLinking, waysOfLinking } from '../proof/links/wired-for.js'
import { sayOrigin, sourceNames } from '../proof/source-names.js'
import { colours } from './colours.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface WiredOptions {
  readonly wiredFor: string
  /** What the boat is wired for now: then all that hangs on the change is told. */
  readonly now?: string
  readonly winding?: string
  readonly marks?: string
  /** What each coil is made for. */
  readonly emf?: number
  readonly hertz?: number
  readonly amps?: number
  readonly rpm?: number
  readonly kva?: number
}

export function showWiredFor(options: WiredOptions): Result {
  const catalogue = shippedCatalogue()
  const { links } = catalogue
  const limits = limitsOf(catalogue)
  const problems: Problem[] = []
  const named = <T extends { readonly id: string }>(
    list: readonly T[],
    id: string | undefined,
    path: string,
  ): T | undefined => {
    const found = list.find((one) => one.id === id)
    if (found === undefined) {
      const allowed = `one of: ${list.map((one) => one.id).join(', ')}`
      problems.push({
        code: id === undefined ? 'missing' : 'unknown-name',
        path,
        found: id ?? 'nothing',
        allowed,
      })
    }
    return found
  }
  const { emf, hertz, amps, rpm, kva, marks } = options
  const supply = named(links.supplies, options.wiredFor, '--wired-for')
  const winding = named(links.windings, options.winding, '--winding')
  const from = options.now === undefined ? undefined : named(links.supplies, options.now, '--now')
  if (marks !== undefined && winding !== undefined) named(winding.marks, marks, '--marks')
  if ((emf === undefined) !== (hertz === undefined)) {
    const allowed = '--emf and --hertz together: what each coil is made for, by the plate'
    problems.push({ code: 'missing', path: '--emf, --hertz', found: 'one of them', allowed })
  }
  if (problems.length > 0 || supply === undefined || winding === undefined) return refuse(...problems)
  const made = emf === undefined || hertz === undefined ? undefined : { emfV: emf, hertz, amps }
  const linkedFor = (of: Supply) => waysOfLinking(links, { winding, supply: of, made, marks, limits })
  const ways = linkedFor(supply)
  const move =
    from === undefined
      ? null
      : moveSupply({ from, to: supply, rpm, kva, ways, waysNow: linkedFor(from), limits })
  return {
    ok: true,
    json: {
      type: 'gensettle/links-wired-for',
      version: 1,
      supply: supply.id,
      winding: winding.id,
      ways,
      move,
      caution: linksCaution,
    },
    text: [
      ...waysText({ supply, winding, ways, made }),
      ...fromText(catalogue, { ways, supply }),
      ...(move === null ? [] : moveText(move)),
      '',
      linksCaution,
    ].join('\n'),
  }
}

const fits = {
  'as-made': 'as made',
  'more-flux': 'more than it is made for',
  'less-flux': 'less than it is made for',
  'not-known': 'its plate says',
} as const

function waysText({
  supply,
  winding,
  ways,
  made,
}: {
  readonly supply: Supply
  readonly winding: CatalogueWinding
  readonly ways: readonly WayOfLinking[]
  readonly made: MadeFor | undefined
}): string[] {
  const head = colours.bold(`${supply.name}, ${winding.name.toLowerCase()}`)
  if (ways.length === 0) return [head, 'No way of joining these leads gives it.']
  const [best] = ways
  const unit = made?.amps === undefined ? '× I' : 'A'
  return [
    head,
    best!.fits === 'not-known'
      ? 'Which of these it is, the volts that a coil is made for decide.'
      : `Joined: ${best!.joined}. Out: ${best!.lines}.`,
    '',
    tableText(
      [
        { head: 'pattern' },
        { head: 'joined', wrap: 48 },
        { head: 'each coil', align: 'right' },
        { head: 'flux', align: 'right' },
        { head: 'fits' },
        { head: 'each line', align: 'right' },
        { head: 'of the coils', align: 'right' },
      ],
      ways.map((way) => [
        way.pattern,
        way.joined,
        `${way.emfV.toFixed(1)} V`,
        way.flux === null ? '–' : `× ${way.flux.toFixed(2)}`,
        fits[way.fits],
        `${Number(way.lineAmps.toFixed(2))} ${unit}`,
        `${Math.round(way.share * 100)} in 100`,
      ]),
    ),
    ...(made === undefined
      ? [
          'What each coil is made for is not told (--emf, --hertz): whether it may stand at these volts, its plate says.',
        ]
      : []),
  ]
}

/** Where each way of joining them, and the supply, come from. */
function fromText(
  catalogue: Catalogue,
  { ways, supply }: { readonly ways: readonly WayOfLinking[]; readonly supply: Supply },
): string[] {
  const names = sourceNames(catalogue)
  const told = (id: string) => catalogue.links.patterns.find((one) => one.id === id)!.told
  const origin = catalogue.origins.get(`links.supplies.${supply.id}.volts`)
  return [
    '',
    ...ways.map(({ pattern }) => `${pattern} is from: ${sayOrigin(told(pattern), names)}.`),
    ...(origin === undefined ? [] : [`${supply.name} is from: ${sayOrigin(origin, names)}.`]),
  ]
}

function moveText({ steps, aboard, instead }: SupplyMove): string[] {
  return [
    '',
    tableText(
      [{ head: 'what must change' }, { head: 'and what hangs on it', wrap: 88 }],
      steps.map(({ what, says }) => [what, says]),
    ),
    '',
    tableText(
      [{ head: 'aboard', wrap: 40 }, { head: 'then' }, { head: 'because', wrap: 64 }],
      aboard.map(({ load, verdict, says }) => [load, verdict, says]),
    ),
    '',
    instead,
  ]
}
