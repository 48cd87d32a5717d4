/**
 * `gensettle shop-sheet`: the sheet that goes to a workshop with the part.
 *
 * @module
 */

import { existsSync, readFileSync } from 'node:fs'
import { programVersion } from '../alternatives/program-version.js'
import { linksEntries, ratedValues, recordOfEntry } from '../proof/as-found.js'
import { limitsOf } from '../proof/limits.js'
import { patternJoined } from '../proof/links/patterns.js'
import { jobsOfQuotes, type ShopSheet, shopSheetOf } from '../proof/shop-sheet.js'
import type { SheetBlock } from '../proof/shop-sheet-blocks.js'
import { type ShopJob, shopJobs } from '../proof/shop-sheet-wants.js'
import { registerOf } from '../register/register.js'
import { photographPath } from '../store/photographs.js'
import { colours } from './colours.js'
import type { EmbeddedPicture } from './job-apart-html.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { shopSheetHtml } from './shop-sheet-html.js'
import { tableText } from './table.js'

export interface ShopSheetOptions extends SetOptions {
  /** Jobs; left out: what open quotes cover. */
  readonly ask?: readonly string[]
  readonly words?: string
  /** A pattern that the leads are to come back in; left out: as found. */
  readonly linked?: string
  readonly askAbove?: number
  /** Ohms of one half. */
  readonly resistance?: number
  readonly html?: string
}

export function showShopSheet(options: ShopSheetOptions): Promise<Result> {
  return withSet(options, async ({ named, entries, boat, set, asOf, folder }) => {
    const file = { path: '--html', file: options.html }
    const catalogue = shippedCatalogue()
    const { links } = catalogue
    const problems = [...newFileProblems([file])]
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const typed = options.ask?.flatMap((text) => text.split(',').map((word) => word.trim()))
    const jobs = (typed ?? jobsOfQuotes(register, entries)) as readonly ShopJob[]
    for (const job of jobs) {
      if (!shopJobs.includes(job)) {
        problems.push({
          code: 'unknown-job',
          path: '--ask',
          found: job,
          allowed: `one of: ${shopJobs.join(', ')}`,
        })
      }
    }
    if (jobs.length === 0) {
      const allowed = `one or more of: ${shopJobs.join(', ')}; no open quote says it`
      problems.push({ code: 'missing', path: '--ask', found: 'nothing', allowed })
    }
    const pattern = links.patterns.find(({ id }) => id === options.linked)
    if (options.linked !== undefined && pattern === undefined) {
      const allowed = `one of: ${links.patterns.map(({ id }) => id).join(', ')}`
      problems.push({ code: 'unknown-pattern', path: '--linked', found: options.linked, allowed })
    }
    const entry = linksEntries(entries, set).found
    const read = entry === undefined ? undefined : recordOfEntry(links, entry)
    if (read !== undefined && !read.ok) problems.push(...read.problems)
    const record = read?.ok ? read.record : undefined
    if (pattern !== undefined && record?.known?.id !== pattern.winding) {
      const allowed =
        'a pattern of the winding whose leads were found; enter those first: "gensettle log add links"'
      problems.push({ code: 'contradiction', path: '--linked', found: pattern.id, allowed })
    }
    if (problems.length > 0) return refuse(...problems)
    const resistance = options.resistance === undefined ? {} : { resistanceOhm: options.resistance }
    const sheet = shopSheetOf({
      register,
      entries,
      limits: limitsOf(catalogue),
      jobs,
      asks: options.words,
      found: record && { record, values: { ...ratedValues(record, register.setFacts), ...resistance } },
      wanted: pattern && { pattern, joined: patternJoined(links, pattern, record?.marks) },
      askAbove: options.askAbove,
      demonstration: named.demonstration,
      program: programVersion,
    })
    const pictures = options.html === undefined ? new Map() : await picturesOf(sheet, folder)
    const unwritten = writeNewFile({ ...file, text: shopSheetHtml(sheet, { pictures }) })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: { type: 'gensettle/shop-sheet', version: 1, boat, set, asOf, jobs, sheet },
      text: [
        ...sheetText(sheet),
        ...(options.html === undefined ? [] : ['', `Written: ${options.html}`]),
      ].join('\n'),
    }
  })
}

/** Photographs of the sheet that are in the data folder, upright and without their places. */
async function picturesOf(
  { passages }: ShopSheet,
  folder: string,
): Promise<ReadonlyMap<string, Pick<EmbeddedPicture, 'bytes' | 'type'>>> {
  const { thumbnailOf } = await import('../store/pictures.js')
  const named = passages.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.is === 'pictures' ? block.pictures : [])),
  )
  const pictures = new Map<string, Pick<EmbeddedPicture, 'bytes' | 'type'>>()
  for (const { sha256 } of named) {
    const path = photographPath(folder, sha256)
    if (!existsSync(path)) continue
    const made = await thumbnailOf({ folder, sha256, bytes: readFileSync(path), width: 1280 })
    if (made.ok) pictures.set(sha256, made)
  }
  return pictures
}

export function sheetText({ title, boatName, invented, day, passages, colophon }: ShopSheet): string[] {
  return [
    colours.bold(`${title}, ${boatName}, ${day}`),
    ...(invented === undefined ? [] : [invented]),
    ...passages.flatMap(({ title: head, says, blocks }) => [
      '',
      colours.bold(head) + (says === undefined ? '' : `  ${says}`),
      ...blocks.flatMap(blockText),
    ]),
    '',
    colophon,
  ]
}

function blockText(block: SheetBlock): string[] {
  switch (block.is) {
    case 'text':
      return [block.bold === undefined ? block.text : `${colours.bold(block.bold)} ${block.text}`]
    case 'stop':
      return [`${colours.bold('Stop.')} ${block.text}`]
    case 'list':
      return block.items.map((item) => `- ${item}`)
    case 'blanks':
      return block.names.map((name) => `${name}: ____________________`)
    case 'table':
      return [
        tableText(
          block.heads.map((head) => ({ head, wrap: 64 })),
          block.rows,
        ),
      ]
    case 'pictures':
      return block.pictures.map(({ shows, sha256 }) => `- ${shows} (${sha256.slice(0, 8)})`)
    case 'drawings':
      return block.drawings.slice(0, 1).map(({ says }) => `(Drawing, with --html: ${says}.)`)
    case 'signatures':
      return [block.lines.map((line) => `${line}: ____________`).join('  ')]
  }
}
