/**
 * An activity of a job, and days on which somebody is free, in a line of words.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'

/** "fit the elbow: usually 1 day, after get-elbow, needs owner"; "open-exhaust-side done". */
export function sayActivity(body: Body<'activity'>): string {
  const { name, what, after, days, needs, inOneRun, state } = body
  const facts = [
    ...(days?.usual === undefined ? [] : [`usually ${sayDays(days.usual)}`]),
    ...(days?.low === undefined ? [] : [`at least ${sayDays(days.low)}`]),
    ...(days?.high === undefined ? [] : [`at most ${sayDays(days.high)}`]),
    ...(inOneRun ? ['in one run'] : []),
    ...(after === undefined ? [] : [after.length === 0 ? 'after nothing' : `after ${after.join(', ')}`]),
    ...(needs === undefined ? [] : [`needs ${needs.length === 0 ? 'nobody' : needs.join(', ')}`]),
  ]
  const head = `${what ?? spaced(name)}${state === undefined ? '' : `, ${spaced(state)}`}`
  return facts.length === 0 ? head : `${head}: ${facts.join(', ')}`
}

/** "owner free on saturday, sunday; not on 2026-12"; "weather lets outside work go: 30 in 100 days of month 1". */
export function sayFreeDays(body: Body<'free-days'>): string {
  const { who, weekdays, days, notDays, months } = body
  return [
    ...(weekdays === undefined
      ? []
      : [weekdays.length === 0 ? 'free on no weekday' : `free on ${weekdays.join(', ')}`]),
    ...(days === undefined ? [] : [`free on ${days.join(', ')}`]),
    ...(notDays === undefined ? [] : [`not on ${notDays.join(', ')}`]),
    ...(months ?? []).map(
      ({ month, share }) => `outside work goes on ${Math.round(100 * share)} in 100 days of month ${month}`,
    ),
  ]
    .map((said, at) => (at === 0 ? `${who} ${said}` : said))
    .join('; ')
}

/** "61 in 100"; of what was played no chance is none, or all. */
export function inHundred(chance: number): string {
  if (chance > 0.995) return 'over 99 in 100'
  return chance < 0.005 ? 'under 1 in 100' : `${Math.round(100 * chance)} in 100`
}

function sayDays(days: number): string {
  return `${days} ${days === 1 ? 'day' : 'days'}`
}

function spaced(name: string): string {
  return name.replaceAll('-', ' ')
}
