/**
 * What no single field shows of an activity of a job, and of the days on which somebody is free.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

type Fields = Readonly<Record<string, unknown>>

/** Everything in such a body that does not hang together; nothing for any other kind. */
export function activityProblems(kind: unknown, body: Fields): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, field: string, allowed: string) =>
    problems.push({ code, path: `body.${field}`, found: shown(body[field]), allowed })
  const eachOnce = (field: string) => {
    const list = body[field]
    if (Array.isArray(list) && new Set(list).size < list.length) say('named-twice', field, 'each once')
  }
  if (kind === 'activity') {
    const { after, name, days } = body
    eachOnce('after')
    eachOnce('needs')
    if (Array.isArray(after) && after.includes(name)) say('follows-itself', 'after', 'other activities')
    if (!isRising(days))
      say('not-rising', 'days', 'the fewest, the usual number and the most, none below the one before')
  }
  if (kind === 'free-days') {
    for (const field of ['weekdays', 'days', 'notDays']) eachOnce(field)
    const told = ['weekdays', 'days', 'notDays', 'months'].filter((field) => body[field] !== undefined)
    if (told.length === 0) problems.push(nothingSaid(body))
    if (body.months !== undefined && body.who !== 'weather') {
      say('not-allowed', 'months', 'shares of months for the weather alone; days for people')
    }
    if (body.who === 'weather' && body.weekdays !== undefined) {
      say('not-allowed', 'weekdays', 'shares of months: the weather knows no weekdays')
    }
    if (body.who === 'weather' && monthTwice(body.months)) say('named-twice', 'months', 'each month once')
  }
  return problems
}

function nothingSaid(body: Fields): Problem {
  return {
    code: 'says-nothing',
    path: 'body',
    found: shown(body),
    allowed: 'weekdays, days, days that are not free, or months',
  }
}

/** Of what is given, none below the one before. */
function isRising(days: unknown): boolean {
  if (typeof days !== 'object' || days === null) return true
  const { low, usual, high } = days as Fields
  const given = [low, usual, high].filter((each): each is number => typeof each === 'number')
  return given.every((each, at) => at === 0 || each >= given[at - 1]!)
}

function monthTwice(months: unknown): boolean {
  if (!Array.isArray(months)) return false
  const named = months.map((each: unknown) =>
    typeof each === 'object' && each !== null ? (each as Fields).month : undefined,
  )
  return new Set(named).size < named.length
}
