/**
 * What bears on the choice, in words.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { WorthFindingOut } from './bearing.js'
import type { Choice, LookWorth } from './finding-out.js'
import type { WorthOfQuantity } from './perfect-information.js'
import { lowerFirst, moneyIn } from './say.js'
import type { InputTurns, Turn, TurningPoints } from './turning-points.js'
import type { WhenToReplace } from './when-to-replace.js'

/** A look as a person would be told of it. */
export interface SaidLook {
  /** What to do, and at what. */
  readonly look: string
  /** What it takes. */
  readonly takes: string
  readonly worth: string
  /** What to do after it. */
  readonly after: string
}

/** The first line: what to do first, or that nothing is worth finding out. */
export function sayFirst(
  model: LifeModel,
  { first, looks }: Pick<WorthFindingOut, 'first' | 'looks'>,
): string {
  if (first === undefined) {
    return 'Nothing is worth finding out first: choose. No look at the set is worth what it takes, because whatever it shows the choice stays the same, or the saving is less than its cost.'
  }
  const { look, takes, after } = sayLook(model, first)
  const others = looks.filter(({ pays }) => pays).length - 1
  const more =
    others === 0 ? '' : others === 1 ? ' One other look pays too.' : ` ${others} other looks pay too.`
  return `Do this first: ${lowerFirst(look)}. It takes ${takes} and saves about ${moneyIn(model.currency, first.worth - first.cost)} more than that on average. ${after}${more}`
}

export function sayLook(
  model: LifeModel,
  { look, chanceSeen, worth, error, cost, ifSeen, ifNot, unlooked }: LookWorth,
): SaidLook {
  const check = model.checks.find(({ id }) => id === look.check)
  const part = partName(model, look.part)
  const choice = (one: Choice) => sayChoice(model, one, part)
  const money = (amount: number) => moneyIn(model.currency, amount)
  const same = ifSeen.alternative === ifNot.alternative && ifSeen.renews === ifNot.renews
  const hundred = Math.round(100 * chanceSeen)
  return {
    look: `${check?.name ?? look.check}: ${part}`,
    takes: cost < 1 ? 'next to nothing' : `about ${money(cost)}`,
    worth: `${money(worth)} ± ${money(error)}`,
    after: same
      ? `Whatever it shows: ${choice(unlooked)}.`
      : `It shows something ${hundred < 1 ? 'less than once' : hundred === 1 ? 'once' : `${hundred} times`} in 100; then ${choice(ifSeen)}. If it shows nothing: ${choice(ifNot)}.`,
  }
}

function sayChoice(model: LifeModel, { alternative, renews }: Choice, part: string): string {
  const name = lowerFirst(alternativeName(model, alternative))
  return renews ? `${name}, with the ${part} mended before it fails` : name
}

const quantityWords: Readonly<Record<string, { readonly what: string; readonly how: string }>> = {
  'set-factor': {
    what: 'how this set does against others of its kind',
    how: 'the record tells it: enter what failed, and what was found sound',
  },
  'years-kept': { what: 'how many years you will keep the boat', how: 'a decision of your own' },
  overrun: { what: 'what the bill comes to against the quote', how: 'a firm quote with the whole scope' },
  'job-days': { what: 'how long the job in hand takes', how: 'a date from the workshop' },
  'new-price': { what: 'the price of a new set', how: 'a firm offer' },
  'install-price': { what: 'what fitting a new set costs', how: 'a quote for the fitting' },
  'new-lead': { what: 'how long a new set takes to come', how: 'a date of delivery' },
}

/** A quantity in words, and how it could be known better. */
export function sayQuantity(id: WorthOfQuantity['id']): { readonly what: string; readonly how: string } {
  return (
    quantityWords[id] ?? {
      what: `how long the parts of the ${id.replace(/^system /, '').replaceAll('-', ' ')} last in this set`,
      how: 'looks at these parts, and what the record says of them',
    }
  )
}

interface InputWords {
  readonly what: string
  readonly value: (value: number, model: LifeModel) => string
}

const namedTimes = new Map([
  [0, 'nothing'],
  [0.5, 'half'],
  [1, 'what it is taken at'],
  [2, 'twice what it is taken at'],
])
const times = (value: number): string =>
  namedTimes.get(value) ?? `${round(value, 2)} times what it is taken at`
const moneyOf = (value: number, { currency }: LifeModel): string => moneyIn(currency, value)

const inputWords: Readonly<Record<InputTurns['id'], InputWords>> = {
  quote: { what: 'the quote', value: moneyOf },
  'own-hour': { what: 'an hour of your own', value: moneyOf },
  'paid-hour': { what: 'a paid hour', value: moneyOf },
  'workshop-trip': { what: 'a visit of a workshop', value: moneyOf },
  'day-without-power': { what: 'a day without power', value: times },
  'repair-costs': { what: 'what repairs to come cost', value: times },
  'new-set': { what: 'a new set, fitted', value: times },
  'doing-without': { what: 'doing without a set', value: times },
  'fuel-price': { what: 'fuel', value: times },
  resale: { what: 'what a set fetches in the end', value: times },
  'years-kept': { what: 'the years you keep the boat', value: (value) => `${round(value, 1)} years` },
  interest: { what: 'real interest', value: (value) => `${round(100 * Math.expm1(value), 1)} %` },
  'hours-a-year': { what: 'running hours a year', value: (value) => `${Math.round(value)} h` },
  'waits-for-parts': { what: 'the wait for parts', value: times },
  care: { what: 'how often checks and services are made', value: times },
  'faults-by-work': { what: 'faults put in by work', value: times },
}

export function sayInput(id: InputTurns['id']): string {
  return inputWords[id].what
}

/** A value of an input as its owner would say it. */
export function sayInputValue(model: LifeModel, id: InputTurns['id'], value: number): string {
  return inputWords[id].value(value, model)
}

/** What an input is now; none where it stands for many prices and is simply as it was taken. */
export function sayInputNow(
  model: LifeModel,
  { id, now }: Pick<InputTurns, 'id' | 'now'>,
): string | undefined {
  return inputWords[id].value === times ? undefined : sayInputValue(model, id, now)
}

/** Where the answer changes hands along one input, or that nothing here changes it. */
export function sayTurns(model: LifeModel, input: InputTurns): string {
  const { id, low, high, below, above } = input
  const value = (at: number) => sayInputValue(model, id, at)
  const at = (side: 'Under' | 'Over', turn: Turn) =>
    `${side} ${value(turn.at)}: ${lowerFirst(alternativeName(model, turn.to))}.`
  const said = [
    ...(below === undefined ? [] : [at('Under', below)]),
    ...(above === undefined ? [] : [at('Over', above)]),
  ]
  if (said.length > 0) return said.join(' ')
  return `Nowhere from ${value(low)} to ${value(high)}.`.replace(' what it is taken at', ' as much')
}

/** Alternatives that a stop line keeps from being the best. */
export function sayBarred(
  model: LifeModel,
  { barred, best }: Pick<TurningPoints, 'barred' | 'best'>,
): string[] {
  return barred.map(
    ({ id, saving }) =>
      `${alternativeName(model, id)} would cost ${moneyIn(model.currency, saving)} less than ${lowerFirst(alternativeName(model, best))}, if its stop were closed.`,
  )
}

/** When to replace, if not now: a few sentences. */
export function sayWhen(model: LifeModel, when: WhenToReplace): string[] {
  const money = (amount: number) => moneyIn(model.currency, amount)
  const { keeping, limitByYear, above, planned, yearly, old, fresh, paysYears } = when
  const candidate = candidateName(model, when.candidate)
  const said = [
    `Keeping it (${lowerFirst(alternativeName(model, keeping))}) against ${candidate}: the old set costs ${money(old.best.costPerYear)} ± ${money(old.best.error)} a year at its best, the new one ${money(fresh.best.costPerYear)} ± ${money(fresh.best.error)} if it is kept ${fresh.best.years} years.`,
    paysYears === 0
      ? 'As money goes, no further year with the old set pays.'
      : paysYears >= old.lives.length
        ? 'As money goes, the old set pays for as long as was looked ahead.'
        : `As money goes, the old set pays for about ${years(paysYears)} more.`,
  ]
  if (limitByYear !== undefined && above !== undefined) {
    const [low, high] = [Math.min(...limitByYear), Math.max(...limitByYear)].map(money)
    const instead = above === 'give-up' ? 'do without' : `fit ${candidateName(model, above.replaceWith)}`
    said.push(
      low === high
        ? `In any year: a job estimated above ${low} is not mended; ${instead}.`
        : `A job is not mended above ${limitByYear.map((limit, year) => `${money(limit)} in year ${year + 1}`).join(', ')}; ${instead}.`,
    )
  } else
    said.push(
      'No job is dear enough that another set would be the cheaper answer to it: whatever fails is mended.',
    )
  const best = [...planned].sort((a, b) => a.adds.mean - b.adds.mean)[0]
  if (best !== undefined) {
    const { mean, standardError } = best.adds
    said.push(
      mean < -2 * standardError
        ? `Planned beforehand, ${candidate} is best fitted after ${years(best.years)}: that saves ${money(-mean)} ± ${money(standardError)}.`
        : `Fitting ${candidate} in a year fixed beforehand saves nothing: the best such year, after ${years(best.years)}, adds ${money(Math.max(0, mean))} ± ${money(standardError)}.`,
    )
  }
  if (yearly !== undefined) {
    said.push(
      `Looking each year at what was spent, and replacing where it was much, saves ${money(yearly.saves.mean)} ± ${money(yearly.saves.standardError)} more than the limit does.`,
    )
  }
  return said
}

function years(count: number): string {
  return count === 1 ? 'one year' : `${count} years`
}

function candidateName(model: LifeModel, id: string): string {
  return model.candidates.find((one) => one.id === id)?.name ?? id
}

function alternativeName(model: LifeModel, id: string): string {
  return model.alternatives.find((one) => one.id === id)?.name ?? id
}

/** The plain name of a part, without what follows a comma. */
function partName(model: LifeModel, id: string): string {
  return lowerFirst((model.parts.find((part) => part.id === id)?.name ?? id).split(',')[0]!)
}

function round(value: number, digits: number): string {
  return Number(value.toFixed(digits)).toLocaleString('en-GB')
}
