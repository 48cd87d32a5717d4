/**
 * `gensettle job apart`: how far a job has come apart and back, the next step, and the list to work from.
 *
 * @module
 */

import { existsSync, readFileSync } from 'node:fs'
import { shortCaution } from '../alternatives/cautions.js'
import { programVersion } from '../alternatives/program-version.js'
import { lowerFirst } from '../alternatives/say.js'
import { confirmWords } from '../faults/stop-lines.js'
import { type Apart, type ApartStep, apartOf, linesBefore, proposedSteps } from '../job/apart.js'
import { wayOutOf } from '../job/apart-out.js'
import { apartSheetOf, hasFasteners, linesOfAll, sayWayOut, torqueOf } from '../job/apart-sheet.js'
import { sayApartStep, sayRefitStep } from '../job/apart-words.js'
import { jobNamedOrLast, jobsOf } from '../job/jobs.js'
import { photographsOf } from '../logbook/photographs.js'
import { loadFactsOf } from '../register/load-facts.js'
import { registerOf } from '../register/register.js'
import { photographPath } from '../store/photographs.js'
import { type EmbeddedPicture, picturesHtml } from './job-apart-html.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'
import { shippedFaultModel } from './shipped.js'
import { shopSheetHtml } from './shop-sheet-html.js'
import { tableText } from './table.js'

export interface JobApartOptions extends SetOptions {
  /** A job that the log speaks of; left out: the one in hand. */
  readonly job?: string | undefined
  /** The set leaves the boat. */
  readonly out?: boolean
  readonly html?: string
}

export function showJobApart(options: JobApartOptions): Promise<Result> {
  return withSet(options, async ({ named, entries, all, boat, set, asOf, folder }) => {
    const file = { path: '--html', file: options.html }
    const catalogue = shippedCatalogue()
    const { stopLines } = shippedFaultModel()
    const register = registerOf({ entries, boat, set, asOf, catalogue })
    const jobs = jobsOf(entries, set)
    const job = jobNamedOrLast(jobs, options.job)
    const problems = [...newFileProblems([file])]
    if (job === undefined) {
      const allowed = `a job that the log speaks of: ${jobs.map(({ name }) => name).join(', ') || 'none yet'}`
      problems.push({ code: 'not-one-of', path: 'job', found: options.job ?? 'none', allowed })
    }
    if (problems.length > 0 || job === undefined) return refuse(...problems)
    const leads = register.setFacts.leads
    const access = options.out ? ['set-out'] : []
    const proposed = proposedSteps({ parts: job.parts, access, leads }, catalogue)
    const apart = apartOf(entries, { set, job: job.name, proposed, all })
    const leaves = apart.steps.some((step) => step.access === 'set-out')
    const { space } = loadFactsOf(entries, { boat, set, asOf })
    const wayOut = leaves ? wayOutOf(catalogue, { facts: register.setFacts, space }) : undefined
    const asked = apart.next ?? apart.nextBack
    const lines = asked === undefined ? [] : linesBefore(asked, { apart, day: asOf, stopLines })
    if (options.html !== undefined) {
      const sheet = apartSheetOf({
        register,
        job: job.name,
        apart,
        stopLines: linesOfAll(apart, stopLines),
        ...(wayOut === undefined ? {} : { wayOut }),
        demonstration: named.demonstration,
        program: programVersion,
      })
      const after = picturesHtml(await picturesOf(apart, folder))
      const unwritten = writeNewFile({ ...file, text: shopSheetHtml(sheet, { after }) })
      if (unwritten.length > 0) return refuse(...unwritten)
    }
    return {
      ok: true,
      json: {
        type: 'gensettle/job-apart',
        version: 1,
        boat,
        set,
        asOf,
        job: job.name,
        state: job.state,
        steps: apart.steps.map(stepValue),
        next: apart.next?.key ?? null,
        nextN: apart.nextN,
        back: apart.back.map(({ key }) => key),
        nextBack: apart.nextBack?.key ?? null,
        lines: lines.map((line) => ({ id: line.id, hazard: line.hazard, confirm: confirmWords(line) })),
        loose: apart.loose.map(({ id }) => id),
        sharedPlaces: apart.sharedPlaces,
        wayOut: wayOut ?? null,
        caution: shortCaution,
      },
      text: [
        ...sayApart(apart, job.name),
        ...lines.map(
          (line) => `Stop, ${lowerFirst(line.hazard)}. Before it: ${confirmWords(line).join('; ')}`,
        ),
        ...(wayOut === undefined ? [] : ['', ...sayWayOut(wayOut)]),
        ...(options.html === undefined ? [] : ['', `Written: ${options.html}`]),
        '',
        shortCaution,
      ].join('\n'),
    }
  })
}

function stepValue({ key, what, access, proposal, entry, refit }: ApartStep) {
  return {
    key,
    n: entry?.body.n ?? null,
    what,
    access: access ?? null,
    proposed: proposal?.id ?? null,
    pictures: proposal?.pictures ?? [],
    leads: proposal?.leads ?? null,
    joined: proposal?.joined ?? false,
    bag: proposal?.bag ?? null,
    lines: proposal?.lines ?? [],
    done:
      entry === undefined
        ? null
        : { entry: entry.id, on: entry.from, photographs: photographsOf(entry).length, body: entry.body },
    back: refit === undefined ? null : { entry: refit.id, on: refit.from, body: refit.body },
  }
}

function sayApart(apart: Apart, job: string): string[] {
  const { steps, next, back, nextBack, loose, sharedPlaces } = apart
  const done = steps.filter(({ entry }) => entry !== undefined).length
  const returned = back.filter(({ refit }) => refit !== undefined).length
  if (steps.length === 0)
    return [`${job}: neither parts nor steps are in the log, so nothing can be proposed.`]
  return [
    `${job}: ${done} of ${steps.length} steps are apart, ${returned} of ${back.length} back.`,
    next === undefined ? 'Everything is apart that was proposed.' : `Next apart: ${next.what}.`,
    ...(nextBack === undefined ? [] : [`Next back: ${nextBack.what}.`]),
    '',
    tableText(
      [
        { head: '', align: 'right' },
        { head: 'undo', wrap: 60 },
        { head: 'apart' },
        { head: 'back' },
        { head: 'tightened to', wrap: 34 },
      ],
      steps.map((step, i) => [
        String(step.entry?.body.n ?? i + 1),
        step.entry === undefined ? step.what : sayApartStep(step.entry.body).replace(/^\d+\. /, ''),
        step.entry === undefined ? '' : step.entry.body.notNeeded ? 'not needed' : step.entry.from,
        step.refit === undefined
          ? ''
          : `${step.refit.from} ${sayRefitStep(step.refit.body).replace(/^put back;? ?/, '')}`.trim(),
        hasFasteners(step) ? torqueOf(step) : '',
      ]),
    ),
    ...sharedPlaces.map((n) => `Two steps claim place ${n}; the one that was noted first stands first.`),
    ...loose.map(({ id }) => `${id} puts a step back that is not in the log.`),
  ]
}

/** Pictures of the steps, small and without their places. */
async function picturesOf(apart: Apart, folder: string): Promise<EmbeddedPicture[]> {
  const { thumbnailOf } = await import('../store/pictures.js')
  const pictures: EmbeddedPicture[] = []
  for (const { entry, refit, what } of apart.steps) {
    for (const one of [entry, refit]) {
      for (const { sha256, shows, arrows = [] } of one === undefined ? [] : photographsOf(one)) {
        const path = photographPath(folder, sha256)
        if (!existsSync(path)) continue
        const made = await thumbnailOf({ folder, sha256, bytes: readFileSync(path), width: 480 })
        const place = entry === undefined ? '' : `${entry.body.n}. `
        const says = `${place}${what}${one === refit ? ', back' : ''}${shows === undefined ? '' : `: ${shows}`}`
        if (made.ok) pictures.push({ bytes: made.bytes, type: made.type, says, arrows })
      }
    }
  }
  return pictures
}
