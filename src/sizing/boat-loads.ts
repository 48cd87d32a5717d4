/**
 * The boat's own list of loads, from what the log says and what the catalogue knows of its kind.
 *
 * @module
 */

import type { CatalogueLoad, LoadRules, Motors, Season } from '../catalogue/load-schema.js'
import { seasons } from '../catalogue/load-schema.js'
import type { Problem } from '../catalogue/problem.js'
import type { LoadFact, RuleFact } from '../register/load-facts.js'
import { cyclesPerHour } from './cycles.js'
import type { Duty, HouseRule, Leg, Load, LoadStart } from './load-type.js'
import { apparentVa, letterOf, letterValue, lockedRotorAmps, startVaOfLetter } from './motor-start.js'

/** What is known of loads anywhere. */
export interface LoadBook {
  readonly loads: readonly CatalogueLoad[]
  readonly loadRules: LoadRules
  readonly motors: Motors
}

/** The set's voltages, highest first, and its frequency. */
export interface Supply {
  readonly volts: readonly number[]
  readonly hertz: number
}

export interface BoatLoads {
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  /** What could not be read as it stands; the rest is reckoned with all the same. */
  readonly problems: readonly Problem[]
}

/** The most loads that are reckoned with; several alike count as so many. */
export const mostLoads = 80

/** Power factor where nobody says one; practice. */
const usualPowerFactor = { motor: 0.8, other: 1 }

/** Whether a set has two legs: 120 and 240 V, the one half of the other. */
export function hasTwoLegs({ volts }: Supply): boolean {
  const [high, low] = [Math.max(...volts), Math.min(...volts)]
  return volts.length > 1 && Math.abs(high / low - 2) < 0.15
}

/** Every load and rule of the log, brought to the set's voltage and frequency. Large ones are put on the lighter leg first. */
export function boatLoads(
  book: LoadBook,
  facts: { readonly loads: readonly LoadFact[]; readonly rules: readonly RuleFact[] },
  supply: Supply,
): BoatLoads {
  const problems: Problem[] = []
  const read = facts.loads.flatMap((fact) => {
    const load = loadOf(book, fact, supply)
    if ('allowed' in load) {
      problems.push(load)
      return []
    }
    problems.push(...letterProblem(fact, load), ...hoursProblem(fact, load))
    const count = fact.count ?? 1
    return Array.from({ length: count }, (_, i) =>
      count === 1 ? load : { ...load, id: `${load.id}.${i + 1}`, name: `${load.name}, ${i + 1}` },
    )
  })
  if (read.length > mostLoads) {
    const allowed = `at most ${mostLoads} loads`
    problems.push({ code: 'too-many', path: 'loads', found: `${read.length}`, allowed })
  }
  const loads = withClimate(read.slice(0, mostLoads))
  const rules = facts.rules.flatMap((fact) => {
    const rule = ruleOf(fact, loads)
    if (!('allowed' in rule)) return [rule]
    problems.push(rule)
    return []
  })
  const told = new Set(facts.loads.filter(({ leg }) => leg !== undefined).map(({ id }) => id))
  return { loads: hasTwoLegs(supply) ? onLegs(loads, told) : loads, rules, problems }
}

type Draw = CatalogueLoad['sixty']

function problem(code: string, path: string, found: string, allowed: string): Problem {
  return { code, path, found, allowed }
}

function loadOf(book: LoadBook, fact: LoadFact, supply: Supply): Load | Problem {
  const path = `load ${fact.id}`
  const known = book.loads.find(({ id }) => id === fact.is)
  if (fact.is !== undefined && known === undefined) {
    return problem(
      'unknown-load',
      `${path}: is`,
      fact.is,
      'a load of the catalogue; "loads --search" finds one',
    )
  }
  const draw = known === undefined ? undefined : supply.hertz < 55 ? known.fifty : known.sixty
  const watts = fact.runW ?? draw?.runW
  if (watts === undefined) {
    return problem(
      'missing',
      `${path}: runW`,
      'nothing',
      'the power that it draws, or the load of the catalogue that it is',
    )
  }
  const volts = voltsOf(fact.volts ?? draw?.volts ?? Math.min(...supply.volts), supply)
  if (volts === undefined) {
    const found = String(fact.volts ?? draw?.volts)
    return problem(
      'no-such-voltage',
      `${path}: volts`,
      found,
      supply.volts.map((one) => `${one} V`).join(' or '),
    )
  }
  const isMotor =
    known?.motor !== undefined || fact.lockedRotorA !== undefined || fact.horsepower !== undefined
  const powerFactor =
    fact.powerFactor ?? draw?.powerFactor ?? (isMotor ? usualPowerFactor.motor : usualPowerFactor.other)
  const start = startOf(book, fact, { known, draw, volts })
  return {
    id: fact.id,
    name: fact.name ?? known?.name ?? fact.id.replaceAll('-', ' '),
    ...(known === undefined ? {} : { is: known.id }),
    basis: fact.basis ?? (fact.runW === undefined ? 'catalogue' : 'nameplate'),
    volts,
    leg: fact.leg ?? (hasTwoLegs(supply) && volts > 0.75 * Math.max(...supply.volts) ? 'both' : 'one'),
    watts,
    vars: watts * Math.tan(Math.acos(powerFactor)),
    ...(start === undefined ? {} : { start }),
    season: fact.season ?? known?.season ?? 'all',
    ...dutyAndStarts(book.loadRules, fact, known),
    hours: fact.hours === undefined ? (known?.hours ?? {}) : definedOf(fact.hours),
    canWait: known?.canWait ?? 'not',
    ...(fact.shed === undefined ? {} : { shed: fact.shed }),
  }
}

function definedOf<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>
  }
}

/** The voltage of the set that a nominal one means: 115 and 127 are 120. */
function voltsOf(nominal: number, { volts }: Supply): number | undefined {
  return volts.find((one) => Math.abs(one / nominal - 1) < 0.13)
}

function startOf(
  { motors, loadRules }: LoadBook,
  fact: LoadFact,
  of: { readonly known: CatalogueLoad | undefined; readonly draw: Draw | undefined; readonly volts: number },
): LoadStart | undefined {
  const motor = of.known?.motor
  const bareVa = startVaOf(motors, fact, of)
  if (bareVa === undefined) return undefined
  const letter = letterAs(motors, fact, of.volts)
  const fitted = fact.softStarter ?? false
  // Of a motor that the catalogue does not know, only that one is fitted says that one can be.
  const factor = motor?.softStartFactor ?? (fitted ? loadRules.softStart.againstLoadFactor : undefined)
  const softVa = factor === undefined ? undefined : factor * bareVa
  const softStarter = fitted && softVa !== undefined
  return {
    va: softStarter ? softVa : bareVa,
    powerFactor: motor?.startPowerFactor ?? motors.startPowerFactor.singlePhase.typical,
    bareVa,
    ...(softVa === undefined ? {} : { softVa }),
    softStarter,
    ...(letter === undefined ? {} : { letter }),
    ...(motor === undefined ? {} : { seconds: motor.startSeconds }),
  }
}

/** The code letter that a nameplate's current and horsepower make, or that it gives. */
function letterAs(
  motors: Motors,
  { lockedRotorA, horsepower, codeLetter }: LoadFact,
  volts: number,
): string | undefined {
  if (lockedRotorA === undefined || horsepower === undefined) return codeLetter
  return letterOf(motors, letterValue({ lockedRotorA, volts, phases: 1, horsepower }))
}

/** A letter told that is not that of the current told: the current is reckoned with. */
function letterProblem(fact: LoadFact, load: Load): Problem[] {
  const letter = load.start?.letter
  const { codeLetter, lockedRotorA, horsepower } = fact
  if (codeLetter === undefined || letter === undefined || letter === codeLetter) return []
  const allowed = `${letter}, the letter of ${lockedRotorA} A at ${load.volts} V and ${horsepower} hp`
  return [problem('contradicted', `load ${fact.id}: codeLetter`, codeLetter, allowed)]
}

/** A load that nobody says is ever switched on stands on the list, and draws nothing. */
function hoursProblem(fact: LoadFact, { hours }: Load): Problem[] {
  if (fact.hours !== undefined || Object.keys(hours).length > 0) return []
  const allowed = 'hours a day that it is switched on, by occasion; until then it draws nothing'
  return [problem('missing', `load ${fact.id}: hours`, 'none', allowed)]
}

/** From the nameplate first: current, then letter, then power; then the catalogue's motor. [VA] */
function startVaOf(
  motors: Motors,
  { lockedRotorA, codeLetter, horsepower }: LoadFact,
  { draw, volts }: { readonly draw: Draw | undefined; readonly volts: number },
): number | undefined {
  if (lockedRotorA !== undefined) return apparentVa({ amps: lockedRotorA, volts, phases: 1 })
  if (horsepower !== undefined && codeLetter !== undefined) {
    return startVaOfLetter(motors, { horsepower, letter: codeLetter })
  }
  const tableVolts = volts < 160 ? 115 : 230
  const amps =
    horsepower === undefined ? undefined : lockedRotorAmps(motors, { horsepower, volts: tableVolts })
  if (amps !== undefined) return apparentVa({ amps, volts: tableVolts, phases: 1 })
  if (draw?.lockedRotorA === undefined) return undefined
  return apparentVa({ amps: draw.lockedRotorA, volts: draw.volts, phases: 1 })
}

function dutyAndStarts(
  rules: LoadRules,
  fact: LoadFact,
  known: CatalogueLoad | undefined,
): Pick<Load, 'duty' | 'startsPerHour'> {
  const typical = fact.duty ?? known?.duty.typical ?? 1
  const season = fact.season ?? known?.season ?? 'all'
  const bySeason = <T>(make: (id: Season) => T) =>
    Object.fromEntries(seasons.map((id) => [id, make(id)])) as Record<Season, T>
  const duty = bySeason((id) => dutyIn(rules, { id, season, typical, fact, known }))
  const hours = fact.hours ?? known?.hours ?? {}
  return { duty, startsPerHour: bySeason((id) => startsAt(duty[id], known, hours)) }
}

/**
 * Duty in a season. Cooling and heating follow the season's own, in proportion to what is typical of the load in warm and
 * in cold weather, more on hard days and less on easy ones by the same; refrigerators follow the temperature outside.
 */
function dutyIn(
  { seasons: list, weather }: LoadRules,
  of: {
    readonly id: Season
    readonly season: CatalogueLoad['season']
    readonly typical: number
    readonly fact: LoadFact
    readonly known: CatalogueLoad | undefined
  },
): Duty {
  const here = list.find(({ id }) => id === of.id)!
  const { season, typical, known } = of
  if (season === 'cooling' || season === 'heating') {
    const share = season === 'cooling' ? here.coolingDuty : here.heatingDuty
    const reference =
      season === 'cooling'
        ? list.find(({ id }) => id === 'warm')!.coolingDuty
        : list.find(({ id }) => id === 'cold')!.heatingDuty
    const mean = Math.min(1, (share * typical) / reference)
    const swing = Math.min(weather.dutySwing, mean, 1 - mean)
    return { easy: mean - swing, hard: mean + swing }
  }
  const slope = of.fact.duty === undefined ? (known?.perDegree ?? 0) : 0
  const warmed = typical + slope * (here.outsideC - weather.dutyReferenceC)
  const { low, high } = slope === 0 || known === undefined ? { low: typical, high: typical } : known.duty
  const duty = Math.min(high, Math.max(low, warmed))
  return { easy: duty, hard: duty }
}

function startsAt(
  { easy, hard }: Duty,
  known: CatalogueLoad | undefined,
  hours: Readonly<Record<string, number | undefined>>,
): number {
  const { cyclesPerHourAtHalf, onMinutes } = known ?? {}
  if (hard <= 0) return 0
  if (cyclesPerHourAtHalf !== undefined) {
    const at = (duty: number) => cyclesPerHour({ duty, cyclesPerHourAtHalf })
    return (at(easy) + at(hard)) / 2
  }
  if (onMinutes !== undefined) return (((easy + hard) / 2) * 60) / onMinutes
  // Switched on once on each occasion.
  const told = Object.values(hours).filter((value) => value !== undefined && value > 0) as number[]
  const total = told.reduce((sum, value) => sum + value, 0)
  return total > 0 ? told.length / total : 0
}

/** What runs with the air conditioners is on in a season only if one of them is. */
function withClimate(loads: readonly Load[]): Load[] {
  const climate = loads.filter(({ season }) => season === 'cooling' || season === 'heating')
  return loads.map((load) => {
    if (load.season !== 'with-climate' || climate.length === 0) return load
    const wanted = (id: Season) => climate.some(({ duty }) => duty[id].hard > 0)
    const none = { easy: 0, hard: 0 }
    const duty = Object.fromEntries(seasons.map((id) => [id, wanted(id) ? load.duty[id] : none]))
    return { ...load, duty: duty as Load['duty'] }
  })
}

function ruleOf(
  { id, loads: named = [], atMost = 1 }: RuleFact,
  loads: readonly Load[],
): HouseRule | Problem {
  const members = named.flatMap((name) =>
    loads.filter((load) => load.id === name || load.id.startsWith(`${name}.`)).map((load) => load.id),
  )
  const missing = named.filter(
    (name) => !loads.some(({ id: one }) => one === name || one.startsWith(`${name}.`)),
  )
  if (missing.length > 0) {
    return problem('unknown-load', `house-rule ${id}: loads`, missing.join(', '), 'ids of loads of the list')
  }
  return { id, loads: members, atMost }
}

/** Those of one leg that nobody put on one: the largest first, each on the leg with less. */
function onLegs(loads: readonly Load[], told: ReadonlySet<string>): Load[] {
  const mean = (load: Load) => load.watts * Math.max(...seasons.map((id) => load.duty[id].hard))
  const weight = { one: 0, two: 0 }
  const legs = new Map<string, Leg>()
  const ofId = (id: string) => id.split('.')[0]!
  const movable = loads.filter(({ id, leg }) => leg !== 'both' && !told.has(ofId(id)))
  for (const load of loads) {
    if (told.has(ofId(load.id)) && load.leg !== 'both') weight[load.leg] += mean(load)
  }
  for (const load of [...movable].sort((a, b) => mean(b) - mean(a) || (a.id < b.id ? -1 : 1))) {
    const leg = weight.two < weight.one ? 'two' : 'one'
    weight[leg] += mean(load)
    legs.set(load.id, leg)
  }
  return loads.map((load) => ({ ...load, leg: legs.get(load.id) ?? load.leg }))
}
