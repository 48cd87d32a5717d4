/**
 * Where the figures that a decision hangs on most come from, and how they are held.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { describeFigure } from '../catalogue/overrule.js'
import type { Held } from '../catalogue/provenance.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Amount, LifeModel } from '../forecast/life-model.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { lower } from './brief-words.js'
import type { Compared } from './compared.js'
import { moneyIn } from './say.js'
import { sayInput, sayInputValue } from './say-bearing.js'
import type { InputTurns } from './turning-points.js'

/** A figure with what it comes from. */
export interface BriefSource {
  readonly figure: string
  readonly value: string
  readonly from: string
  readonly held: string
}

export interface SourcesOf {
  readonly register: SetRegister
  readonly model: LifeModel
  readonly catalogue: Catalogue
  /** Inputs that were tried; none where there is no choice. */
  readonly inputs: readonly InputTurns[]
  /** The alternative whose failures are looked at. */
  readonly row: Compared | undefined
  /** An entry as it is referred to. */
  readonly entry: (id: string) => string
}

/** Inputs whose sources are told: those that move the lead of the best most. */
const mostInputs = 5

const mostLives = 2

/** In which entry an input is said, where one can say it. */
const saidIn: Partial<Record<InputTurns['id'], string>> = {
  'own-hour': 'terms.ownPerHour',
  'paid-hour': 'terms.paidPerHour',
  'workshop-trip': 'terms.travelPerTrip',
  'day-without-power': 'terms.withoutPower',
  'doing-without': 'terms.doWithoutPrice',
  'fuel-price': 'terms.fuelPerLitre',
  'years-kept': 'terms.yearsKept',
  interest: 'terms.realInterestPercent',
}

/** Figures of the catalogue that an input is made of. */
const madeOf: Partial<Record<InputTurns['id'], RegExp>> = {
  'repair-costs': /^parts\.[^.]+\.(?:price|hours|shopCharge)\./,
  'paid-hour': /^wholeSet\.labour\.ratePerHour\./,
  'new-set': /^wholeSet\.(?:newSet|installation)\./,
  resale: /^wholeSet\.resale\./,
  'waits-for-parts': /^parts\.[^.]+\.leadDays\./,
  care: /^checks\.[^.]+\.ordinary/,
  'faults-by-work': /intrusion|faultChance|caughtBy/i,
}

const heldWords: Readonly<Record<Held, string>> = {
  seen: 'read in the document',
  quoted: 'read in an excerpt, or in a text that quotes it',
  recalled: 'from memory, to be checked',
  practice: 'practice, a guess',
  derived: 'worked out',
  owner: 'yours',
}

/** The inputs that move the answer most, then the lives of what fails oftenest. */
export function briefSources(of: SourcesOf): BriefSource[] {
  const { catalogue } = setCatalogueOf(of.register, of.catalogue)
  const swing = ({ lead }: InputTurns) => Math.abs(lead.high.value - lead.low.value)
  const moving = [...of.inputs].sort((a, b) => swing(b) - swing(a)).slice(0, mostInputs)
  return [
    ...moving.map((input) => ofInput(input, catalogue, of)),
    ...(of.row?.oftenest.slice(0, mostLives) ?? []).flatMap((mode) => ofLife(mode, catalogue)),
  ]
}

function ofInput({ id, now }: InputTurns, catalogue: SetCatalogue, of: SourcesOf): BriefSource {
  const { register, model, entry } = of
  const figure = sayInput(id)
  const value = amountOf(model, id) ?? (now === 1 ? 'each as it is' : sayInputValue(model, id, now))
  const quoted = id === 'quote' ? register.openQuotes.find(({ withTax }) => withTax === now) : undefined
  const use = id === 'hours-a-year' ? (register.use?.entry ?? lastReading(register)) : undefined
  const given = quoted?.entry ?? use ?? register.given[saidIn[id] ?? '']
  if (given !== undefined) return { figure, value, from: `your log, ${entry(given)}`, held: heldWords.owner }
  const made = madeOf[id]
  const held = made === undefined ? [] : heldBy(catalogue, made)
  if (held.length === 0) return { figure, value, from: 'taken for granted', held: heldWords.practice }
  return { figure, value, from: 'catalogue, for this set', held: sayHeld(held) }
}

/** What is tried as a multiple, in money. */
function amountOf(model: LifeModel, id: InputTurns['id']): string | undefined {
  const money = (amount: number) => moneyIn(model.currency, amount)
  const { powerLoss, giveUp, candidates } = model
  if (id === 'day-without-power') {
    const [before, last] = [powerLoss.curve.at(-2), powerLoss.curve.at(-1)]
    if (last === undefined || before === undefined || last.days === before.days) return undefined
    return `${money((last.cost - before.cost) / (last.days - before.days))}`
  }
  if (id === 'doing-without') {
    return `${money(middleOf(giveUp.costNow))}, and ${money(giveUp.costPerYear)} a year`
  }
  if (id === 'new-set') {
    const [first] = candidates
    return first === undefined ? undefined : `${money(middleOf(first.price))} and fitting`
  }
  return undefined
}

function middleOf(amount: Amount): number {
  if (typeof amount === 'number') return amount
  return 'median' in amount ? amount.median : amount.exponentialMean * Math.LN2
}

function lastReading({ hours }: SetRegister): string | undefined {
  return hours.points.findLast(({ entry }) => entry !== undefined)?.entry
}

function heldBy(catalogue: SetCatalogue, made: RegExp): Held[] {
  return [...catalogue.origins]
    .filter(([path]) => made.test(path))
    .map(([path, { held }]) => (catalogue.overruled.has(path) ? 'owner' : held))
}

/** How several figures are held: the commonest first, with how many where they differ. */
function sayHeld(all: readonly Held[]): string {
  const counts = new Map<Held, number>()
  for (const held of all) counts.set(held, (counts.get(held) ?? 0) + 1)
  const kinds = [...counts].sort((a, b) => b[1] - a[1])
  if (kinds.length === 1) return heldWords[kinds[0]![0]]
  return kinds.map(([held, count]) => `${count}: ${heldWords[held]}`).join('; ')
}

function ofLife({ part, mode }: Compared['oftenest'][number], catalogue: SetCatalogue): BriefSource[] {
  const path = `parts.${part}.modes.${mode}.scale`
  const found = describeFigure(catalogue, path)
  const of = catalogue.parts.find(({ id }) => id === part)
  if (found === undefined || of === undefined) return []
  const { source, place, held } = found
  const title = catalogue.sources.find(({ id }) => id === source)?.title ?? source
  const named = of.modes.find(({ id }) => id === mode)?.name ?? mode
  const units: Readonly<Record<string, string>> = { h: 'h', y: 'years', start: 'starts' }
  return [
    {
      figure: `life of the ${lower(of.name)} (${lower(named).split(':')[0]})`,
      value: `${Number(found.value.toPrecision(3)).toLocaleString('en-GB')} ${units[found.unit] ?? found.unit}`,
      from: held === 'owner' ? `your log: ${place}` : held === 'practice' ? place : `${title}, ${place}`,
      held: heldWords[held],
    },
  ]
}
