/**
 * `gensettle lessons`: what the owner's boats teach one another, where the owner wants that.
 *
 * @module
 */

import { sayLessons } from '../alternatives/say-lessons.js'
import { readSet } from '../alternatives/settle.js'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import {
  type BoatLessons,
  lessonsOf,
  type Pooled,
  poolLessons,
  type SetLessons,
} from '../forecast/pooling-lessons.js'
import { posteriorOf } from '../forecast/posterior.js'
import { setsOf } from '../register/register.js'
import { dataFolder } from '../store/data-folder.js'
import { hearLessons, lessonsHeard } from '../store/lessons-setting.js'
import type { SetQuestion } from './of-set.js'
import { allBoats, type DataOption, memoryOf, type NamedBoat, readCurrent, withReading } from './opened.js'
import { shippedCatalogue, today } from './places.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'
import { figure, tableText } from './table.js'

type Asked = Pick<SetQuestion, 'asOf' | 'memory'> & { readonly seed: number }

interface Taught extends BoatLessons {
  readonly setFactor: LifeModel['setFactor']
}

/** Lessons of other boats, or why they cannot be heard. */
export type Lessons =
  | { readonly ok: true; readonly pooled: Pooled | undefined }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Lessons of the owner's other boats for one of them; none for a demonstration boat, or where they are not wanted. */
export function lessonsFor(
  question: Pick<SetQuestion, 'folder' | 'boats' | 'named' | 'asOf' | 'memory'>,
  { seed }: { readonly seed: number },
): Lessons {
  const { folder, boats, named } = question
  const setting = lessonsHeard(folder)
  if (!setting.ok) return setting
  if (!setting.heard || named.demonstration) return { ok: true, pooled: undefined }
  const others = boats.filter(({ name, demonstration }) => !demonstration && name !== named.name)
  const taught = taughtBy(others, { ...question, seed })
  if (!taught.ok) return taught
  return { ok: true, pooled: pooledFrom(taught.boats) }
}

function pooledFrom(boats: readonly Taught[]): Pooled | undefined {
  const first = boats[0]
  return first === undefined ? undefined : poolLessons(boats, first.setFactor)
}

/** What each of the boats shows by her own record alone. */
function taughtBy(
  boats: readonly NamedBoat[],
  asked: Asked,
):
  | { readonly ok: true; readonly boats: readonly Taught[] }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const bar = progressOf('hearing the other boats')
  const problems: Problem[] = []
  const taught = boats.flatMap((boat, i): Taught[] => {
    bar.show(i, boats.length)
    const read = readCurrent(boat)
    if (!read.ok) {
      problems.push(...read.problems)
      return []
    }
    const catalogue = shippedCatalogue()
    const models = setsOf(read.entries, asked.asOf).map(
      (set) => readSet({ ...asked, entries: read.entries, boat: boat.name, set, catalogue }).bare,
    )
    const first = models[0]
    if (first === undefined) return []
    const sets = models.map((model) => lessonsIn(model, asked))
    return [{ boat: boat.name, sets, setFactor: first.setFactor }]
  })
  bar.end()
  return problems.length > 0 ? { ok: false, problems } : { ok: true, boats: taught }
}

function lessonsIn(model: LifeModel, { memory, seed }: Asked): SetLessons {
  const key = { what: 'lessons', model, seed }
  const found = memory.find(key) as { readonly value: SetLessons } | undefined
  if (found !== undefined) return found.value
  const lessons = lessonsOf(model, posteriorOf(model, { seed }))
  memory.keep(key, lessons)
  return lessons
}

/** That lessons are heard, in a line; nothing where none is. */
export function lessonsText(pooled: Pooled | undefined): string[] {
  const said = sayLessons(pooled)
  return said === undefined ? [] : [`${said} ("gensettle lessons off" leaves them out).`]
}

/** The same as a value, for `--json`. */
export function lessonsValue(pooled: Pooled | undefined) {
  return pooled === undefined || pooled.boats === 0
    ? {}
    : {
        lessons: {
          boats: pooled.boats,
          lifeFactor: Math.exp(pooled.boat.mean),
          boatLogSd: Math.sqrt(pooled.boat.variance),
          systems: pooled.systems,
        },
      }
}

export interface LessonsOptions extends DataOption {
  readonly seed: number
}

/** Shows what the boats of a data folder teach; first switches it on or off where that is asked. */
export function showLessons(how: string | undefined, options: LessonsOptions): Promise<Result> {
  if (how !== undefined && how !== 'on' && how !== 'off') {
    const allowed = 'on, off, or nothing to see how it stands'
    return Promise.resolve(refuse({ code: 'not-one-of', path: 'how', found: how, allowed }))
  }
  if (how !== undefined) {
    const problems = hearLessons(dataFolder(options.data), how === 'on')
    if (problems.length > 0) return Promise.resolve(refuse(...problems))
  }
  return withReading(options, (store) => {
    const setting = lessonsHeard(store.folder)
    if (!setting.ok) return setting
    const boats = allBoats(store)
    const own = boats.filter(({ demonstration }) => !demonstration)
    const asOf = today()
    const asked = { asOf, memory: memoryOf(store.folder), seed: options.seed }
    const taught = taughtBy(own, asked)
    if (!taught.ok) return taught
    const list = taught.boats.map(({ boat, sets }) => {
      const others = pooledFrom(taught.boats.filter((other) => other.boat !== boat))
      const shown = sets.map(({ factor, systems }) => ({
        lifeFactor: factor.precision === 0 ? null : Math.exp(factor.mean),
        logError: factor.precision === 0 ? null : 1 / Math.sqrt(factor.precision),
        systems: Object.fromEntries(Object.entries(systems).map(([system, modes]) => [system, modes.length])),
      }))
      return { boat, sets: shown, ...lessonsValue(others) }
    })
    return {
      ok: true,
      json: { type: 'gensettle/lessons', version: 1, heard: setting.heard, asOf, boats: list },
      text: [
        setting.heard
          ? 'Your boats hear one another’s lessons. They stay in this data folder, and go into no boat file.'
          : 'Your boats do not hear one another’s lessons. To let them: gensettle lessons on',
        ...lessonsTable(list),
      ].join('\n'),
    }
  })
}

interface Listed {
  readonly boat: string
  readonly sets: readonly {
    readonly lifeFactor: number | null
    readonly logError: number | null
    readonly systems: Readonly<Record<string, number>>
  }[]
  readonly lessons?: { readonly boats: number; readonly lifeFactor: number; readonly boatLogSd: number }
}

function lessonsTable(list: readonly Listed[]): string[] {
  if (list.length === 0) return ['None of your boats has a set in her log yet.']
  const right = (head: string) => ({ head, align: 'right' }) as const
  const columns = [
    { head: 'boat' },
    { head: 'lives in her log, against the usual' },
    { head: 'systems that tell more' },
    right('boats that teach her'),
    right('her lives, before her log'),
    right('two of three within'),
  ]
  const rows = list.flatMap(({ boat, sets, lessons }) =>
    sets.map(({ lifeFactor, logError, systems }) => [
      boat,
      lifeFactor === null || logError === null
        ? 'too little to tell'
        : `${figure(lifeFactor)} times, likely ${figure(lifeFactor * Math.exp(-logError))} to ${figure(lifeFactor * Math.exp(logError))}`,
      Object.keys(systems).join(', '),
      String(lessons?.boats ?? 0),
      lessons === undefined ? 'as usual' : `${figure(lessons.lifeFactor)} times`,
      lessons === undefined
        ? ''
        : `${figure(lessons.lifeFactor * Math.exp(-lessons.boatLogSd))} to ${figure(lessons.lifeFactor * Math.exp(lessons.boatLogSd))}`,
    ]),
  )
  return [
    '',
    tableText(columns, rows),
    `The demonstration boats teach nothing. How much boats have in common is not known beforehand: each share of the variance from none to all is taken as equally likely, and what the logs show decides. Without lessons two boats of three are taken to lie within ${figure(Math.exp(-0.28))} to ${figure(Math.exp(0.28))} times the usual.`,
  ]
}
