/**
 * The entries that five answers come to.
 *
 * @module
 */

import type { Draft } from '../../logbook/draft.js'
import { numberTyped } from '../entry/typed.js'
import { nameFrom } from '../entry/values.js'
import { newBoat } from '../words/boats.js'

/** What stands in the form, as typed and chosen. */
export interface FiveAnswers {
  readonly name: string
  readonly currency: string
  readonly rating: string
  readonly electricity: 'fifty' | 'sixty' | 'three'
  readonly speed: 'slow' | 'fast'
  readonly built: string
  readonly hours: string
  readonly use: keyof typeof newBoat.five.kinds
  readonly months: readonly number[]
  readonly perYear: string
  readonly letdowns: string
}

export const noAnswers: FiveAnswers = {
  name: '',
  currency: 'EUR',
  rating: '',
  electricity: 'fifty',
  speed: 'slow',
  built: '',
  hours: '',
  use: 'weekends',
  months: [4, 5, 6, 7, 8, 9, 10],
  perYear: '',
  letdowns: '',
}

export type Wanting = Partial<Record<keyof FiveAnswers, string>>

export type NewBoat =
  | { readonly ok: true; readonly boat: string; readonly set: string; readonly drafts: readonly Draft[] }
  | { readonly ok: false; readonly wanting: Wanting }

/** The set that a new boat has. */
const theSet = 'main'

/** What each way of using a boat comes to. Practice. */
const uses = {
  weekends: { needShare: 0.3, hoursPerStart: 1.5 },
  season: { needShare: 0.7, hoursPerStart: 2 },
  year: { needShare: 0.9, hoursPerStart: 2 },
  charter: { needShare: 0.9, hoursPerStart: 3 },
} as const

/** Share of the hours under about 30 % load, where nobody measured. Practice. */
const usualLowLoad = 0.35

export function newBoatFrom(
  answers: FiveAnswers,
  { today, taken }: { readonly today: string; readonly taken: readonly string[] },
): NewBoat {
  const year = Number(today.slice(0, 4))
  const wanting: Record<string, string> = {}
  const want = (key: keyof FiveAnswers, least: number, most: number, says: string): number => {
    const value = numberTyped(answers[key] as string)
    if (value === undefined || value < least || value > most) wanting[key] = says
    return value ?? least
  }
  const { need } = newBoat
  const boat = nameFrom(answers.name)
  if (!/^[a-z][a-z0-9-]*$/.test(boat)) wanting.name = need.name
  else if (taken.includes(boat)) wanting.name = need.taken
  const ratingKw = want('rating', 0.5, 100, need.rating)
  const built = Math.round(want('built', 1950, year, need.built))
  const meterHours = want('hours', 0, 200_000, need.hours)
  const times = want('letdowns', 0, 1000, need.letdowns)
  if (!Number.isInteger(times)) wanting.letdowns = need.letdowns
  if (answers.months.length === 0) wanting.months = need.months
  const usual = usualHours(answers, today)
  const perYear = answers.perYear.trim() === '' ? usual : want('perYear', 1, 8_760, need.perYear)
  if (Object.keys(wanting).length > 0) return { ok: false, wanting }

  const of = { boat, set: theSet, from: today }
  const { currency, months } = answers
  const drafts: Draft[] = [
    {
      ...of,
      set: null,
      kind: 'boat',
      body: { name: answers.name.trim(), currency, monthsInUse: [...months].sort((a, b) => a - b) },
    },
    {
      ...of,
      kind: 'set',
      body: { ratingKw, built: String(built), standing: 'in-use', ...electricityOf(answers) },
    },
    { ...of, kind: 'hours', body: { meterHours } },
    { ...of, kind: 'use', body: { months: monthsOfUse(answers, perYear) } },
    { ...of, kind: 'letdowns', body: { times, years: 3 } },
  ]
  return { ok: true, boat, set: theSet, drafts }
}

/** Hours in a usual year, as the set's hours and years come to. [h] */
export function usualHours({ hours, built }: FiveAnswers, today: string): number {
  const total = numberTyped(hours)
  const since = numberTyped(built)
  if (total === undefined || since === undefined || total <= 0) return leastUsual
  const years = Math.max(1, Number(today.slice(0, 4)) - since)
  return Math.min(mostUsual, Math.max(leastUsual, Math.round(total / years)))
}

/** Where the meter says next to nothing, or more than a year can hold. Practice. [h] */
const leastUsual = 50
const mostUsual = 3_000

function electricityOf({ electricity, speed }: FiveAnswers) {
  const hertz = electricity === 'sixty' ? 60 : 50
  const volts = { fifty: [230], sixty: [240, 120], three: [400] }[electricity]
  const phases = electricity === 'three' ? 3 : 1
  return { volts, hertz, phases, rpm: hertz * (speed === 'slow' ? 30 : 60) } as const
}

function monthsOfUse({ use, months }: FiveAnswers, perYear: number) {
  const { needShare, hoursPerStart } = uses[use]
  const hours = Math.min(744, Math.round((10 * perYear) / months.length) / 10)
  return [...months]
    .sort((a, b) => a - b)
    .map((month) => ({
      month,
      hours,
      starts: Math.max(1, Math.round(hours / hoursPerStart)),
      needShare,
      lowLoadShare: usualLowLoad,
    }))
}
