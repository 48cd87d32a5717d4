/**
 * `gensettle links --boat` and `--found --left`: leads as found against leads as left.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import {
  compareLinks,
  type LinksComparison,
  type LinksRecord,
  linksEntries,
  patternOfRecord,
  type ReadLinks,
  ratedValues,
  recordOfEntry,
  recordOfFile,
} from '../proof/as-found.js'
import { limitsOf } from '../proof/limits.js'
import { readLinksFile, writeJoints, writeOutlets } from '../proof/links/links-text.js'
import { lookAtLinks } from '../proof/links/look-at-links.js'
import { linksCaution } from '../proof/links/say-links.js'
import type { CoilValues } from '../proof/links/winding.js'
import { registerOf } from '../register/register.js'
import { colours } from './colours.js'
import { linksText } from './links.js'
import { comparedHtml } from './links-html.js'
import { newFileProblems, readTextFile, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface ComparedOptions extends SetOptions {
  readonly found?: string
  readonly left?: string
  readonly html?: string
  readonly resistance?: number
}

/** Of two files, or of a boat's log. */
export function showCompared(options: ComparedOptions): Promise<Result> | Result {
  const file = { path: '--html', file: options.html }
  const problems = newFileProblems([file])
  if (problems.length > 0) return refuse(...problems)
  if (options.found !== undefined || options.left !== undefined) return comparedFiles(options)
  const { links } = shippedCatalogue()
  return withSet(options, ({ entries, boat, set, asOf }) => {
    const of = linksEntries(entries, set)
    const facts = registerOf({ entries, boat, set, asOf, catalogue: shippedCatalogue() }).setFacts
    if (of.found === undefined) {
      const allowed =
        'an entry of the leads as found: "gensettle log add links --state as-found …", before anything is undone'
      return refuse({ code: 'missing', path: '--boat', found: `none of ${set}`, allowed })
    }
    const found = recordOfEntry(links, of.found)
    const left = of.left === undefined ? undefined : recordOfEntry(links, of.left)
    const wrong = [found, left].flatMap((one) => (one === undefined || one.ok ? [] : one.problems))
    if (!found.ok || wrong.length > 0) return refuse(...wrong)
    const values = { ...ratedValues(found.record, facts), ...resistanceOf(options) }
    if (left === undefined || !left.ok) return foundOnly({ boat, set, asOf, found: found.record, values })
    return answerOf({ boat, set, asOf, found: found.record, left: left.record, values }, options)
  })
}

function resistanceOf({ resistance }: ComparedOptions): CoilValues {
  return resistance === undefined ? {} : { resistanceOhm: resistance }
}

function comparedFiles(options: ComparedOptions): Result {
  const { links } = shippedCatalogue()
  let values: CoilValues = {}
  const read = (path: '--found' | '--left', file: string | undefined): ReadLinks => {
    if (file === undefined) {
      const allowed = '--found and --left together: files of joined leads'
      return { ok: false, problems: [{ code: 'missing', path, found: 'nothing', allowed }] }
    }
    const text = readTextFile(file, { path })
    if ('problem' in text) return { ok: false, problems: [text.problem] }
    const given = readLinksFile(text.text)
    const at = (problem: Problem) => ({ ...problem, path: `${path} ${problem.path}` })
    if (given.problems.length > 0) return { ok: false, problems: given.problems.map(at) }
    values = { ...given.file.values, ...values }
    const record = recordOfFile(links, given.file)
    return record.ok ? record : { ok: false, problems: record.problems.map(at) }
  }
  const [found, left] = [read('--found', options.found), read('--left', options.left)]
  if (!found.ok || !left.ok) return refuse(...[found, left].flatMap((one) => (one.ok ? [] : one.problems)))
  return answerOf(
    { found: found.record, left: left.record, values: { ...values, ...resistanceOf(options) } },
    options,
  )
}

interface OfSet {
  readonly boat?: string
  readonly set?: string
  readonly asOf?: string
}

function foundOnly({
  found,
  values,
  ...of
}: OfSet & { readonly found: LinksRecord; readonly values: CoilValues }): Result {
  const answer = lookAtLinks(found.winding, found.joined, values)
  return {
    ok: true,
    json: {
      type: 'gensettle/links-compared',
      version: 1,
      ...of,
      found: recordJson(found),
      left: null,
      comparison: null,
      caution: linksCaution,
    },
    text: [
      ...linksText({ title: titleOf('As found', found), joined: found.joined, answer }),
      '',
      'As left: nothing is entered yet.',
      '',
      linksCaution,
    ].join('\n'),
  }
}

function answerOf(
  {
    found,
    left,
    values,
    ...of
  }: OfSet & { readonly found: LinksRecord; readonly left: LinksRecord; readonly values: CoilValues },
  { html }: ComparedOptions,
): Result {
  const comparison = compareLinks({ found, left }, { values, limits: limitsOf(shippedCatalogue()) })
  const unwritten = writeNewFile({
    path: '--html',
    file: html,
    text: comparedHtml({
      found,
      left,
      values,
      comparison,
      titles: [titleOf('As found', found), titleOf('As left', left)],
    }),
  })
  if (unwritten.length > 0) return refuse(...unwritten)
  return {
    ok: true,
    json: {
      type: 'gensettle/links-compared',
      version: 1,
      ...of,
      found: recordJson(found),
      left: recordJson(left),
      comparison,
      caution: linksCaution,
    },
    text: [
      ...comparedText({ found, left, comparison }),
      ...(html === undefined ? [] : ['', `Written: ${html}`]),
      '',
      linksCaution,
    ].join('\n'),
  }
}

function titleOf(word: string, record: LinksRecord): string {
  const pattern = patternOfRecord(shippedCatalogue().links, record)
  return [[word, record.date].filter(Boolean).join(', '), pattern?.name].filter(Boolean).join(': ')
}

function recordJson(record: LinksRecord) {
  const { entry, date, joined, labels, photographs } = record
  return {
    ...(entry === undefined ? {} : { entry }),
    ...(date === undefined ? {} : { date }),
    pattern: patternOfRecord(shippedCatalogue().links, record)?.id ?? null,
    joined: writeJoints(joined.joints),
    lines: writeOutlets(joined.lines),
    sensing: writeOutlets(joined.sensing),
    labels,
    photographs: photographs.map(({ sha256 }) => sha256),
  }
}

function comparedText({
  found,
  left,
  comparison: { differences, leads, changes, stops, lacks },
}: {
  readonly found: LinksRecord
  readonly left: LinksRecord
  readonly comparison: LinksComparison
}): string[] {
  const line = (word: string, record: LinksRecord) =>
    `${colours.bold(titleOf(word, record))}. Joined: ${writeJoints(record.joined.joints) || 'nothing'}. Out: ${writeOutlets(record.joined.lines) || 'nothing'}.`
  return [
    ...stops.map((says) => `${colours.bold('Stop.')} ${says}`),
    ...(differences.length === 0 ? ['As left is as found.'] : []),
    ...(differences.length > 0 && stops.length === 0
      ? ['There are differences; none changes volts, ohms, capacity or what the regulator sees.']
      : []),
    line('As found', found),
    line('As left', left),
    ...(differences.length === 0
      ? []
      : [
          '',
          tableText(
            [{ head: 'lead' }, { head: 'as found' }, { head: 'as left' }, { head: 'put it' }],
            leads.map((row) => [row.lead, row.found, row.left, row.put]),
          ),
        ]),
    ...labelLines(differences),
    ...(changes.length === 0
      ? []
      : [
          '',
          tableText(
            [
              { head: 'what differs' },
              { head: 'as found', align: 'right' },
              { head: 'as left', align: 'right' },
            ],
            changes.map((one) => [one.name, one.found, one.left]),
          ),
        ]),
    ...(lacks.length === 0 ? [] : ['', ...lacks]),
  ]
}

function labelLines(differences: LinksComparison['differences']): string[] {
  return differences
    .filter(({ what }) => what === 'label')
    .map(({ lead, found, left }) => `Label of ${lead}: ${left}, was ${found}.`)
}
