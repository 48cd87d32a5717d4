/**
 * `gensettle links`: what a winding gives as its leads are joined.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { CatalogueLinks, LinkPattern } from '../catalogue/links-schema.js'
import type { Problem } from '../catalogue/problem.js'
import { readLinksFile, readOutlets, writeJoints, writeOutlets } from '../proof/links/links-text.js'
import { loadedWinding, readLoads } from '../proof/links/loaded.js'
import { type LinksAnswer, lookAtLinks } from '../proof/links/look-at-links.js'
import {
  linksFromFile,
  patternJoined,
  patternOf,
  windingById,
  windingMarked,
} from '../proof/links/patterns.js'
import {
  linksCaution,
  sayAmps,
  sayLoad,
  sayLoop,
  sayOhms,
  sayPower,
  saySensed,
  sayVolts,
} from '../proof/links/say-links.js'
import { joinedWinding } from '../proof/links/solve-links.js'
import { type CoilValues, type Joined, leadsOf, type Winding } from '../proof/links/winding.js'
import { sayOrigin, sourceNames } from '../proof/source-names.js'
import { colours } from './colours.js'
import { linksHtml } from './links-html.js'
import { newFileProblems, readTextFile, writeNewFile } from './new-file.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface LinksOptions {
  readonly pattern?: string
  /** A file of joined leads. */
  readonly joined?: string
  /** Joined leads as typed, of a winding. */
  readonly leads?: string
  readonly lines?: string
  readonly winding?: string
  readonly marks?: string
  readonly emf?: number
  readonly resistance?: number
  readonly reactance?: number
  readonly amps?: number
  readonly sensing?: string
  readonly setTo?: number
  readonly load?: string
  readonly open?: readonly string[]
  /** Where to write the drawing, large, as a page. */
  readonly html?: string
}

/** What was asked about: a winding and how its leads are joined. */
interface Asked {
  readonly winding: Winding
  readonly joined: Joined
  readonly values: CoilValues
  readonly pattern: LinkPattern | null
}

export function showLinks(options: LinksOptions): Result {
  const catalogue = shippedCatalogue()
  const { links } = catalogue
  const { pattern, joined, leads, html } = options
  if ([pattern, joined, leads].every((one) => one === undefined)) return listPatterns(catalogue)
  const file = { path: '--html', file: html }
  const asked = askedFor(links, options)
  const problems = [...asked.problems, ...newFileProblems([file])]
  if (asked.of === undefined || problems.length > 0) return refuse(...problems)
  const { of } = asked
  const answer = lookAtLinks(of.winding, of.joined, of.values, { setToV: options.setTo })
  const loaded = loadedAs(of, options)
  if (loaded.problems.length > 0) return refuse(...loaded.problems)
  const title = of.pattern?.name ?? 'Leads as joined'
  const from = of.pattern === null ? undefined : sayOrigin(of.pattern.told, sourceNames(catalogue))
  const unwritten = writeNewFile({ ...file, text: linksHtml({ title, from, ...of, answer }) })
  if (unwritten.length > 0) return refuse(...unwritten)
  return {
    ok: true,
    json: {
      type: 'gensettle/links',
      version: 1,
      pattern: of.pattern?.id ?? null,
      from: from ?? null,
      joined: writeJoints(of.joined.joints),
      lines: writeOutlets(of.joined.lines),
      coils: of.winding.coils,
      ...answer,
      loaded: loaded.found,
      caution: linksCaution,
    },
    text: [
      ...linksText({ ...of, title, answer }),
      ...(from === undefined ? [] : ['', `This way of joining them is from: ${from}.`]),
      ...(loaded.found === null ? [] : loadedText(loaded.found)),
      ...(html === undefined ? [] : ['', `Written: ${html}`]),
      '',
      linksCaution,
    ].join('\n'),
  }
}

function askedFor(
  links: CatalogueLinks,
  options: LinksOptions,
): { readonly of?: Asked; readonly problems: readonly Problem[] } {
  const { pattern: id, joined: path, leads, lines = '', winding, marks, sensing = '' } = options
  const chosen = [id, path, leads].filter((one) => one !== undefined)
  if (chosen.length > 1) {
    const found = chosen.join(', ')
    return {
      problems: [
        { code: 'contradiction', path: '--pattern, --joined, --leads', found, allowed: 'one of these' },
      ],
    }
  }
  const typed = typedValues(options)
  if (id !== undefined) return askedPattern(links, { id, marks, sensing, values: typed })
  const text = path === undefined ? undefined : readTextFile(path, { path: '--joined' })
  if (text !== undefined && 'problem' in text) return { problems: [text.problem] }
  const read =
    text === undefined
      ? {
          file: { ...(winding === undefined ? {} : { winding }), joined: leads!, lines, sensing, values: {} },
          problems: [],
        }
      : readLinksFile(text.text)
  const given = { ...read.file, ...(marks === undefined ? {} : { marks }) }
  const found = linksFromFile(links, given)
  const problems = [...read.problems, ...(found.ok ? [] : found.problems)]
  if (!found.ok || problems.length > 0) return { problems }
  const pattern =
    found.known === undefined
      ? undefined
      : patternOf(links, { winding: found.known.id, joined: found.joined, marks: given.marks })
  const values = { ...read.file.values, ...typed }
  return {
    of: { winding: found.winding, joined: found.joined, values, pattern: pattern ?? null },
    problems: [],
  }
}

function askedPattern(
  links: CatalogueLinks,
  {
    id,
    marks,
    sensing,
    values,
  }: {
    readonly id: string
    readonly marks: string | undefined
    readonly sensing: string
    readonly values: CoilValues
  },
): { readonly of?: Asked; readonly problems: readonly Problem[] } {
  const pattern = links.patterns.find((one) => one.id === id)
  if (pattern === undefined) {
    const allowed = `one of: ${links.patterns.map((one) => one.id).join(', ')}`
    return { problems: [{ code: 'unknown-pattern', path: '--pattern', found: id, allowed }] }
  }
  const known = windingById(links, pattern.winding)
  const all = known.marks.map((one) => one.id)
  if (marks !== undefined && !all.includes(marks)) {
    return {
      problems: [
        { code: 'unknown-marks', path: '--marks', found: marks, allowed: `one of: ${all.join(', ')}` },
      ],
    }
  }
  const winding = windingMarked(known, marks)
  const looks = readOutlets(sensing, { leads: leadsOf(winding), path: '--sensing' })
  const joined = { ...patternJoined(links, pattern, marks), sensing: looks.outlets }
  return { of: { winding, joined, values, pattern }, problems: looks.problems }
}

function typedValues({ emf, resistance, reactance, amps }: LinksOptions): CoilValues {
  return {
    ...(emf === undefined ? {} : { emfV: emf }),
    ...(resistance === undefined ? {} : { resistanceOhm: resistance }),
    ...(reactance === undefined ? {} : { reactanceOhm: reactance }),
    ...(amps === undefined ? {} : { amps }),
  }
}

type Loaded = ReturnType<typeof loadedWinding>

function loadedAs(
  of: Asked,
  { load, open = [] }: LinksOptions,
): { readonly found: Loaded | null; readonly problems: readonly Problem[] } {
  if (load === undefined) return { found: null, problems: [] }
  const names = of.joined.lines.map(({ name }) => name)
  const { loads, problems } = readLoads(load, { names, path: '--load' })
  const broken = open.map((name) => name.toUpperCase())
  const unknown = broken
    .filter((name) => !names.includes(name))
    .map(
      (found): Problem => ({
        code: 'unknown-line',
        path: '--open',
        found,
        allowed: `one of: ${names.join(', ')}`,
      }),
    )
  if (problems.length + unknown.length > 0) return { found: null, problems: [...problems, ...unknown] }
  return {
    found: loadedWinding(joinedWinding(of.winding, of.joined, of.values), { loads, open: broken }),
    problems: [],
  }
}

/** What is to be said of joined leads. */
export function linksText({
  title,
  joined,
  answer,
}: {
  readonly title: string
  readonly joined: Joined
  readonly answer: LinksAnswer
}): string[] {
  const { units, capacities, loops, findings } = answer
  // With no lines named there are only leads and joints to tell of.
  const outlets = joined.lines.length === 0 ? answer.everyPair : answer.outlets
  const sensed = saySensed(answer)
  const stops = [...findings.filter(({ stops }) => stops), ...(sensed?.stops ? [sensed] : [])]
  const rest = [...findings.filter(({ stops }) => !stops), ...(sensed && !sensed.stops ? [sensed] : [])]
  return [
    colours.bold(title),
    `Joined: ${writeJoints(joined.joints) || 'nothing'}. Out: ${writeOutlets(joined.lines) || 'nothing'}.`,
    ...stops.map(({ says }) => `${colours.bold('Stop.')} ${says}`),
    ...(outlets.length === 0
      ? []
      : [
          '',
          tableText(
            [
              { head: 'between' },
              { head: 'volts, nothing on', align: 'right' },
              { head: 'ohms', align: 'right' },
            ],
            outlets.map((pair) => [
              `${pair.from} and ${pair.to}`,
              sayVolts(pair, units),
              sayOhms(pair, units),
            ]),
          ),
        ]),
    ...(loops.length === 0
      ? []
      : [
          '',
          'Current goes round inside, with nothing switched on:',
          ...loops.map((loop) => `  ${sayLoop(loop, units)}`),
        ]),
    ...(capacities.length === 0
      ? []
      : [
          '',
          tableText(
            [
              { head: 'no coil above what it can carry' },
              { head: 'each line', align: 'right' },
              { head: 'power' },
              { head: 'first at its limit' },
            ],
            capacities.map((one) => [
              sayLoad(one),
              sayAmps(one.lineAmps, units),
              sayPower(one, units),
              one.hottest.join(', '),
            ]),
          ),
        ]),
    ...(rest.length === 0 ? [] : ['', ...rest.map(({ says }) => says)]),
    ...(units.volts
      ? []
      : [
          '',
          'E is the EMF of one coil, R its resistance, I what it can carry: --emf, --resistance, --amps.',
        ]),
  ]
}

function loadedText({ loads, lines }: Loaded): string[] {
  return [
    '',
    tableText(
      [
        { head: 'load' },
        { head: 'ohms', align: 'right' },
        { head: 'volts', align: 'right' },
        { head: 'amps', align: 'right' },
      ],
      loads.map(({ from, to, ohms, volts, amps }) => [
        `${from} to ${to}`,
        String(ohms),
        volts.toFixed(1),
        amps.toFixed(1),
      ]),
    ),
    '',
    `In the lines: ${lines.map(({ name, amps }) => `${name} ${amps.toFixed(1)} A`).join(', ')}.`,
  ]
}

function listPatterns(catalogue: Catalogue): Result {
  const { windings, patterns, supplies } = catalogue.links
  const names = sourceNames(catalogue)
  const origins = [
    ...windings.flatMap(({ marks }) => marks.map(({ told }) => told)),
    ...patterns.map(({ told }) => told),
  ]
  const used = [...new Set(origins.map(({ source }) => source))]
  return {
    ok: true,
    json: { type: 'gensettle/link-patterns', version: 1, windings, patterns, supplies },
    text: [
      ...windings.flatMap(({ id, name, coils, marks }) => [
        colours.bold(`${id}: ${name}`),
        `Coils, start first: ${coils.map((coil) => `${coil.name} ${coil.start}-${coil.end} at ${coil.degrees}°`).join(', ')}`,
        tableText(
          [{ head: 'pattern' }, { head: 'joined', wrap: 56 }, { head: 'out' }, { head: 'from', wrap: 44 }],
          patterns
            .filter(({ winding }) => winding === id)
            .map(({ id: pattern, joined, lines, told }) => [
              pattern,
              joined,
              lines,
              `[${used.indexOf(told.source) + 1}] ${told.place}; ${told.held}`,
            ]),
        ),
        ...marks.map(
          ({ id: mark, told }) =>
            `Marks ${mark}: [${used.indexOf(told.source) + 1}] ${told.place}; ${told.held}.`,
        ),
        '',
      ]),
      colours.bold('Supplies for --wired-for'),
      ...supplies.map(({ id, name }) => `  ${id}  ${name}`),
      '',
      ...used.map((source, at) => `[${at + 1}] ${names.get(source) ?? source}`),
    ].join('\n'),
  }
}
