/**
 * What is wrong with what a calendar is asked, and what it has to take for granted.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { isLogDate } from '../logbook/dates.js'
import type { Activity } from './activities.js'
import type { DaysKnown } from './calendar-days.js'
import { usualDays } from './calendar-lasts.js'
import type { Network } from './network.js'

export function readyByProblems(readyBy: string | undefined, asOf: string): Problem[] {
  if (readyBy === undefined) return []
  const problem = (code: string, allowed: string) => [{ code, path: 'ready-by', found: readyBy, allowed }]
  if (!isLogDate(readyBy) || readyBy.length !== 10) return problem('wrong-form', 'a day such as 2027-04-01')
  return readyBy < asOf ? problem('before-today', `a day from ${asOf} on`) : []
}

export function nothingToDo(job: string): Problem {
  return {
    code: 'nothing-to-do',
    path: job,
    found: 'no part that it is for, and nothing that is to be done',
    allowed: 'a quote or a decision that names its parts, or activities of its own',
  }
}

export function neverFree({ name, needs, inOneRun, lasts }: Activity): Problem {
  const length = `${Number(usualDays(lasts).toPrecision(3))} days${inOneRun ? ' that follow one another' : ''}`
  return {
    code: 'never-free',
    path: name,
    found: `no ${length} on which ${needs.join(', ')} are all free`,
    allowed: 'such days within three years',
  }
}

/** Whose days and what weather nobody has told. */
export function daysAssumed(steps: readonly Activity[], days: DaysKnown): string[] {
  const open = steps.filter(({ progress }) => progress.is !== 'done')
  const unsaid = [...new Set(open.flatMap(({ needs }) => needs))].filter(
    (one) => one !== 'weather' && !days.free.has(one),
  )
  const outside = open.some(({ needs }) => needs.includes('weather')) && days.weather === undefined
  return [
    ...(unsaid.length === 0 ? [] : [`every day is taken as free for: ${unsaid.join(', ')}`]),
    ...(outside ? ['the weather of no month is said: outside work is taken to go on every day'] : []),
  ]
}

/** Work of one person that nothing puts one behind the other is taken as if both could go at once. */
export function sideBySide(network: Network<Activity>): string[] {
  const { steps, after } = network
  const behind = after.map((_, i) => reached(after, i))
  return (['owner', 'helper'] as const).flatMap((who) => {
    const theirs = steps.flatMap(({ needs, progress }, i) =>
      needs.includes(who) && progress.is !== 'done' ? [i] : [],
    )
    const pair = theirs.flatMap((i) =>
      theirs.filter((j) => j > i && !behind[j]!.has(i)).map((j) => [i, j] as const),
    )[0]
    if (pair === undefined) return []
    const [one, other] = pair.map((i) => steps[i]!.name)
    return [
      `${one} and ${other} both need the ${who}, and neither follows the other: taken as if both could go at once`,
    ]
  })
}

function reached(after: readonly (readonly number[])[], from: number): Set<number> {
  const found = new Set<number>()
  const waiting = [...after[from]!]
  while (waiting.length > 0) {
    const i = waiting.pop()!
    if (found.has(i)) continue
    found.add(i)
    waiting.push(...after[i]!)
  }
  return found
}
