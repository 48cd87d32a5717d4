/**
 * What no single field of a quote shows: an end told twice, work both in and out of the price, stages that ask for more than it.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

type Fields = Readonly<Record<string, unknown>>

/** Rounding of thirds and of taxed amounts. */
const slack = 1.005

/** Everything in the body of a quote that does not hang together. */
export function quoteProblems(body: Fields): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, field: string, found: unknown, allowed: string) =>
    problems.push({ code, path: `body.${field}`, found: shown(found), allowed })
  const { excludes, includes, days, daysOut, readyBy, stagePayments } = body
  if (Array.isArray(excludes) && Array.isArray(includes)) {
    const both = includes.filter((work) => excludes.includes(work))
    if (both.length > 0) say('in-and-out', 'includes', both, 'what does not stand under excludes')
  }
  for (const [field, list] of Object.entries({ excludes, includes })) {
    if (Array.isArray(list) && new Set(list).size < list.length)
      say('named-twice', field, list, 'each only once')
  }
  if (days !== undefined && readyBy !== undefined)
    say('told-twice', 'readyBy', readyBy, 'either days or a day')
  if (typeof days === 'number' && typeof daysOut === 'number' && daysOut > days)
    say('longer-than-the-whole', 'daysOut', daysOut, `at most the ${days} days of the whole job`)
  if (Array.isArray(stagePayments)) stageProblems(stagePayments.filter(isRecord), body, say)
  return problems
}

function stageProblems(
  stages: readonly Fields[],
  body: Fields,
  say: (code: string, field: string, found: unknown, allowed: string) => void,
): void {
  stages.forEach((stage, i) => {
    for (const [one, other] of [
      ['when', 'at'],
      ['share', 'amount'],
    ] as const) {
      const said = [one, other].filter((field) => stage[field] !== undefined).length
      if (said !== 1) say('one-of-two', `stagePayments.${i}`, stage, `either ${one} or ${other}`)
    }
  })
  const sum = (field: string) => stages.reduce((total, stage) => total + numberOr(stage[field]), 0)
  const price = withTax(body)
  const whole = sum('share') + (price > 0 ? sum('amount') / price : 0)
  if (whole > slack) {
    const found = `${Number((100 * whole).toFixed(1))} % of the price`
    say('more-than-the-price', 'stagePayments', found, 'at most the price, 100 %')
  }
}

function withTax({ amount, tax }: Fields): number {
  const { included, percent } = isRecord(tax) ? tax : { included: true, percent: 0 }
  return numberOr(amount) * (included === false ? 1 + numberOr(percent) / 100 : 1)
}

function numberOr(value: unknown): number {
  return typeof value === 'number' ? value : 0
}

function isRecord(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
