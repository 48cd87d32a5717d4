/**
 * `gensettle decide` and `gensettle rerun`: a decision kept with the whole answer that it rested on, and that answer again.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import {
  compareResults,
  type KeptAnswer,
  keepAnswer,
  keptModel,
  resultOf,
} from '../alternatives/kept-answer.js'
import { reportOf } from '../alternatives/report.js'
import { usedStates } from '../alternatives/settle.js'
import { posteriorOf } from '../forecast/posterior.js'
import { decidedJob } from '../job/decided-job.js'
import { isKind } from '../logbook/kinds.js'
import { answerFrom, prepareFor } from './answer.js'
import { writeAndAsk } from './log.js'
import { type SetOptions, withSet } from './of-set.js'
import { allBoats, type DataOption, readCurrent, withReading, withStore } from './opened.js'
import { reckoner } from './places.js'
import { playAll } from './play-all.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface DecideOptions extends SetOptions {
  readonly seed: number
  readonly histories?: number
  readonly alternative: string
  readonly because?: string
  readonly job?: string
}

/**
 * Works the answer out as of the day and writes the decision with it. Other boats' lessons are left out: a boat file
 * carries the decision, and they stay in their data folder.
 */
export async function decide(words: readonly string[], options: DecideOptions): Promise<Result> {
  const { seed, histories, alternative, because, job } = options
  const choice = words.join(' ')
  let kept: { readonly draft: Parameters<typeof writeAndAsk>[1][number]; readonly said: string } | undefined
  const worked = await withSet(options, async (question): Promise<Result> => {
    const { named, boat, set, asOf } = question
    if (named.demonstration) {
      const allowed = 'a boat of your own: demonstration boats are only read'
      return refuse({ code: 'read-only', path: '--boat', found: boat, allowed })
    }
    const prepared = await prepareFor({ ...question, seed })
    const { alternatives } = prepared.model
    const taken = alternatives.find(({ id }) => id === alternative)
    if (taken === undefined) {
      const allowed = `one of: ${alternatives.map(({ id }) => id).join(', ')}`
      return refuse({ code: 'unknown-alternative', path: '--alternative', found: alternative, allowed })
    }
    const answer = await answerFrom(prepared, {
      boat,
      seed,
      ...(histories === undefined ? {} : { histories }),
    })
    const whole = keepAnswer(answer, { seed, by: reckoner() })
    if (!whole.ok) return whole
    const { walkAway } = answer.report
    kept = {
      draft: {
        boat,
        set,
        kind: 'decision',
        from: asOf,
        body: {
          choice: choice === '' ? (taken.name ?? taken.id) : choice,
          alternative,
          ...(because === undefined ? {} : { because }),
          ...decidedJob(taken, prepared.register),
          ...(job === undefined ? {} : { job }),
          ...(walkAway === null ? {} : { walkAwayPrice: walkAway.price }),
          kept: whole.kept,
        },
      },
      said: [
        answer.saying.verdict,
        ...(walkAway === null ? [] : [answer.saying.walkAway]),
        ...(taken.barred === undefined ? [] : [`Stop: what you took is barred. ${taken.barred}`]),
      ].join('\n'),
    }
    return { ok: true, json: { type: 'gensettle/decide', version: 1 }, text: '' }
  })
  if (!worked.ok || kept === undefined) return worked
  const { draft, said } = kept
  const written = await withStore(options, (store) => writeAndAsk(store, [draft], 'gensettle/decide'))
  if (!written.ok) return written
  const [{ id }] = written.json.entries as readonly [{ readonly id: string }]
  return {
    ...written,
    text: [
      said,
      '',
      written.text,
      `Kept with it: the life model, seed and figures. "gensettle rerun ${id}" works them out again.`,
      shortCaution,
    ].join('\n'),
  }
}

/** Runs the answer kept with a decision again, and holds every figure against the one that was kept. */
export function rerun(id: string, options: DataOption): Promise<Result> {
  return withReading(options, async (store) => {
    const boats = allBoats(store)
    for (const boat of boats) {
      const read = readCurrent(boat)
      if (!read.ok) return read
      const entry = read.all.find((one) => one.id === id)
      if (entry === undefined) continue
      const kept = isKind(entry, 'decision') ? entry.body.kept : undefined
      if (kept === undefined) {
        const found = `${id}, a ${entry.kind} with no answer kept`
        return refuse({ code: 'nothing-kept', path: 'id', found, allowed: allowedIds })
      }
      return rerunKept(kept, { id, boat: boat.name })
    }
    return refuse({ code: 'unknown-entry', path: 'id', found: id, allowed: allowedIds })
  })
}

const allowedIds =
  'the id of a decision that "gensettle decide" wrote; "gensettle log list --kind decision" shows them'

async function rerunKept(
  kept: KeptAnswer,
  { id, boat }: { readonly id: string; readonly boat: string },
): Promise<Result> {
  const read = keptModel(kept)
  if (!read.ok) return read
  const { model } = read
  const { seed, histories, result } = kept
  // from nothing: what this program remembers of it would only be compared with itself
  const posterior = posteriorOf(model, { seed })
  const used = usedStates(model, posterior, seed)
  const bar = progressOf('running it again')
  const span = { seed, from: 0, count: histories }
  const samples = await playAll({ model, posterior, used }, span, {
    onProgress: (done) => bar.show(done, histories),
  }).finally(() => bar.end())
  const now = reckoner()
  const report = reportOf(model, samples, seed)
  const { figures, differences } = compareResults(result, resultOf({ model, samples, report }))
  const keptBy = { program: kept.program, reckoning: kept.reckoning ?? null, engine: kept.engine }
  const sameProgram = kept.program === now.program && kept.reckoning === now.reckoning
  const sameEngine = kept.engine === now.engine
  return {
    ok: true,
    json: {
      type: 'gensettle/rerun',
      version: 1,
      boat,
      entry: id,
      seed,
      histories,
      same: differences.length === 0,
      figures,
      differences,
      keptBy,
      now,
      sameProgram,
      sameEngine,
    },
    text: [
      differences.length === 0
        ? `The same: all ${figures} figures come out as they were kept, to the last digit.`
        : `Not the same: ${differences.length} of ${figures} figures come out otherwise.`,
      ...(differences.length === 0 ? [] : ['', differencesTable(differences)]),
      '',
      programText(keptBy, now, { sameProgram, sameEngine }),
      shortCaution,
    ].join('\n'),
  }
}

function differencesTable(differences: ReturnType<typeof compareResults>['differences']): string {
  const columns = ['figure', 'as kept', 'now'].map((head) => ({ head }))
  return tableText(
    columns,
    differences.map(({ figure, kept, now }) => [figure, said(kept), said(now)]),
  )
}

function said(value: string | number | boolean | null): string {
  return value === null ? '–' : String(value)
}

function programText(
  kept: { readonly program: string; readonly reckoning: string | null; readonly engine: string },
  now: ReturnType<typeof reckoner>,
  { sameProgram, sameEngine }: { readonly sameProgram: boolean; readonly sameEngine: boolean },
): string {
  const short = (digest: string | null | undefined) => (digest ? `, reckoning ${digest.slice(0, 12)}` : '')
  const by = `version ${kept.program}${short(kept.reckoning)}, on ${kept.engine}`
  if (sameProgram && sameEngine) return `It was kept by this very program and engine: ${by}.`
  const others = [sameProgram ? '' : 'another program', sameEngine ? '' : 'another engine']
  return `It was kept by ${others.filter(Boolean).join(' and ')}: ${by}. This is version ${now.program}${short(now.reckoning)}, on ${now.engine}. Another engine may differ from about the ninth figure on; another program may reckon otherwise.`
}
