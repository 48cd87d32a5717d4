/**
 * Sizing in words.
 *
 * @module
 */

import type { LoadRules, Occasion } from '../catalogue/load-schema.js'
import type { DemandBasis } from './demand-basis.js'
import type { FuelOfYear, JudgedSet } from './judged-set.js'
import type { Load, LoadStart, Weathers } from './load-type.js'
import type { AgainstList } from './measured-against.js'
import type { BoatSize, MeasuredDemand } from './size-boat.js'
import { type CheckId, checkIds, type SizeCheck, type Verdict, worstOf } from './size-check.js'
import { type Blocked, mostRules, type TradeOff } from './trade-offs.js'

/** What is looked at, in the trade's words. */
export const checkNames: Readonly<Record<CheckId, string>> = {
  'engine-load': 'Load that is exceeded one hour in a hundred, against the engine',
  'alternator-load': 'Apparent power that is exceeded one hour in a hundred, against the alternator',
  'leg-load': 'Current of a leg, one hour in a hundred',
  'start-overload': 'Starts in a year that ask for more than the engine gives',
  'voltage-dip': 'Voltage dip at the largest start',
  'starts-together': 'Voltage dip where two starts fall together',
  'start-current': 'Largest start on a capacitor-excited end',
  'first-step': 'Largest single step, against what the engine takes at once',
  'frequency-dip': 'Frequency dip at that step',
  'low-load': 'Share of the hours below 30 % of the rating',
  'mean-load': 'Mean over a day’s running',
  'raw-water': 'Raw-water hose',
  'exhaust-hose': 'Exhaust hose',
  'exhaust-lift': 'Exhaust lift',
  'exhaust-heat': 'Exhaust hose at full load, if no water turned to steam',
  'sea-cooling': 'Heat to the sea one hour in a hundred, against a usual exchanger that is fouled',
  ventilation: 'Openings for air',
  'engine-space': 'Temperature of the engine space',
  noise: 'Noise where it must be quiet',
  'way-out': 'Largest piece through the openings',
  lift: 'Weight to be lifted',
}

export const verdictWords: Readonly<Record<Verdict, string>> = {
  passes: 'passes',
  tight: 'tight',
  fails: 'fails',
  'cannot-tell': 'cannot tell',
}

/** What is sized by. */
export const basisWords: Readonly<Record<DemandBasis, string>> = {
  list: 'the list of loads as it stands',
  recording: 'the recording',
  corrected: 'the list of loads, corrected by the recording',
}

/** The recording and the list beside each other. */
export function sayAgainst({ measuredKW, listKW }: AgainstList): string {
  return `The recording against the list: ${spoken(measuredKW.mean)} kW mean while running against ${spoken(listKW.mean)}; one hour in twenty ${spoken(measuredKW.p95)} or more against ${spoken(listKW.p95)}.`
}

/** Hours a day that a load is switched on, over the occasions; never more than a day has. */
export function hoursOn({ hours }: Pick<Load, 'hours'>): number {
  return Math.min(
    24,
    Object.values(hours).reduce((sum, one) => sum + (one ?? 0), 0),
  )
}

/** "13.8 kVA, letter L", "7.2 kVA, soft". */
export function sayStart({ va, softStarter, letter }: LoadStart): string {
  return [
    `${spoken(va / 1000)} kVA`,
    ...(softStarter ? ['soft'] : []),
    ...(letter === undefined ? [] : [`letter ${letter}`]),
  ].join(', ')
}

/** What the figures follow where a meter recorded what the set gives, and what stands in the list beside them. */
export function sayBasis({
  basis,
  measured,
}: {
  readonly basis: DemandBasis
  readonly measured: MeasuredDemand | undefined
}): string | undefined {
  if (measured === undefined) return undefined
  const { hoursFactor, missingKW } = measured
  if (basis === 'list') {
    return 'All figures here follow the list as it stands; the recording is shown beside it and changes none of them.'
  }
  if (basis === 'recording') {
    return 'All figures here follow the recording; of the list only power factor, legs and starts are taken.'
  }
  const lacks = missingKW > 0 ? `, and ${spoken(missingKW)} kW more all the time that the list lacks` : ''
  return `All figures here follow the list corrected by the recording: every load on ${spoken(hoursFactor)} times as long as the list says${lacks}. The list itself stands as it was entered.`
}

/** What is connected, and how much of it is drawn at once. */
export function sayConnected({ connectedKW, demandFactor, basis }: BoatSize): string[] {
  if (connectedKW === 0 || basis === 'recording') return []
  return [
    `All loads of the list together: ${spoken(connectedKW)} kW; one hour in a hundred ${inHundred(demandFactor)} of it at once, or more.`,
  ]
}

/** A number as it is read aloud: three figures, whole from 100 on. */
export function spoken(value: number): string {
  if (Math.abs(value) >= 99.95) return Math.round(value).toLocaleString('en-GB')
  if (Math.abs(value) < 0.005) return '0'
  return String(Number(value.toPrecision(Math.abs(value) < 1 ? 2 : 3)))
}

/** "61 in 100", "1 in 120", "none". */
export function inHundred(share: number): string {
  if (share <= 0) return 'none'
  if (share >= 0.9995) return 'all'
  return share >= 0.0095
    ? `${Math.round(share * 100)} in 100`
    : `1 in ${Math.round(1 / share).toLocaleString('en-GB')}`
}

/** What was found and what is allowed: "9.8 kW, at most 8.6 kW; 14 % too much", "6 kW, at most 8.6 kW; 30 % to spare". */
export function sayFound(of: SizeCheck): string {
  return [sayMargin(of), ...sayMore(of)].join('; ')
}

/** What would bear a start that is too large, and how often two fall together. */
function sayMore({ check, bears, perYear, verdict }: SizeCheck): string[] {
  return [
    ...(bears === undefined || verdict === 'passes'
      ? []
      : [
          `a start of ${spoken(bears.startKVA)} kVA is borne, and this one by an alternator of ${spoken(bears.setKVA)} kVA`,
        ]),
    ...(check === 'starts-together' && perYear !== undefined
      ? [`too deep ${spoken(perYear)} times a year`]
      : []),
  ]
}

function sayMargin({ check, found, limit, unit, by, verdict }: SizeCheck): string {
  const amount = (value: number) => (unit === 'share' ? inHundred(value) : `${spoken(value)} ${unit}`)
  if (check === 'way-out') {
    if (found === undefined) return 'no opening is told'
    return found > 0 ? `${found} mm too large` : `${-found} mm to spare`
  }
  if (found === undefined) return limit === undefined ? 'not told' : `not told; ${amount(limit)} wanted`
  const least = ['raw-water', 'exhaust-hose', 'ventilation'].includes(check)
  const beyond = by === undefined || limit === 0 ? '' : sayBeyond({ by, verdict, least })
  return `${amount(found)}, ${least ? 'at least' : 'at most'} ${amount(limit ?? 0)}${beyond}`
}

/** How far from its limit, on either side. */
function sayBeyond(of: { readonly by: number; readonly verdict: Verdict; readonly least: boolean }): string {
  const { by, verdict, least } = of
  const percent = (share: number) => `${Math.max(1, Math.round(100 * share))} %`
  if (verdict === 'passes') return by < -0.005 ? `; ${percent(-by)} to spare` : ''
  if (verdict !== 'fails') return ''
  if (least) return `; ${percent(by)} more wanted`
  return by >= 1 ? `; ${spoken(by + 1)} times as much` : `; ${percent(by)} too much`
}

/** Where and about what, in brackets: "cooking, hot; oven". */
export function sayWhere({ occasion, season, about, check }: SizeCheck, rules: LoadRules): string {
  const where = [
    occasion === undefined ? undefined : occasionName(rules, occasion).toLowerCase(),
    season === undefined
      ? undefined
      : season === 'recorded'
        ? 'as recorded'
        : `${seasonName(rules, season).toLowerCase()} weather`,
  ].filter((one) => one !== undefined)
  const what = check === 'raw-water' && about !== undefined ? `the exchanger wants ${about}` : about
  return [where.join(', '), what].filter((one) => one !== undefined && one !== '').join('; ')
}

export function occasionName({ occasions }: LoadRules, occasion: Occasion | 'year'): string {
  return occasion === 'year' ? 'The whole year' : occasions.find(({ id }) => id === occasion)!.name
}

export function seasonName({ seasons }: LoadRules, season: Weathers): string {
  if (season === 'recorded') return 'As recorded'
  return seasons.find(({ id }) => id === season)!.name
}

/** The answer in a sentence, and what the present set does meanwhile. */
export function saySize({ sets, smallest, loads, basis }: BoatSize): string {
  if (loads.length === 0 && basis === 'list')
    return 'No load is in the log yet: enter what draws power, and the size can be told.'
  const present = sets.find(({ set }) => set.kind === 'present')
  const least = sets.find(({ set }) => set.id === smallest)
  const largest = sets.at(-1)
  const answer =
    least === undefined
      ? `None of the sets looked at carries all of it as it is run now, not even ${nameOf(largest!)}.`
      : `The smallest set looked at that carries all of it, as it is run now, is ${nameOf(least)}.`
  if (present === undefined || present === least) return answer
  return `${answer} ${sayPresent(present)}`
}

function nameOf({ set }: JudgedSet): string {
  return set.kind === 'size' ? `one of ${set.name}` : set.kind === 'present' ? 'the present one' : set.name
}

function sayPresent({ set, lowShare, overloadsPerYear, verdict }: JudgedSet): string {
  const light =
    lowShare <= 0
      ? 'in none of its hours'
      : lowShare >= 0.9995
        ? 'in all of its hours'
        : `${inHundred(lowShare)} of its hours`
  const over =
    overloadsPerYear >= 1
      ? `, and is asked for more than it has at ${spoken(overloadsPerYear)} starts a year`
      : verdict === 'fails'
        ? ''
        : ', and is hardly ever asked for more than it has'
  return `The present one of ${spoken(set.ratingKW)} kW runs below 30 % of its rating ${light}${over}.`
}

/** What is left of a set where it stands, and by a second reckoning of each: "6.2 kW and 6.8 kVA". */
export function sayLeft({
  set,
  engineKW,
  alternatorKVA,
  engineFactorByTest,
  alternatorFactorByRise,
}: JudgedSet): { readonly left: string; readonly second: string } {
  const second = [
    ...(engineFactorByTest === undefined ? [] : [`${spoken(engineFactorByTest * set.ratingKW)} kW`]),
    `${spoken(alternatorFactorByRise * set.kVA)} kVA`,
  ]
  return { left: `${spoken(engineKW)} kW and ${spoken(alternatorKVA)} kVA`, second: second.join(' and ') }
}

/** "1,240 l a year, 0.46 l/kWh, 3,320 kg of carbon dioxide". */
export function sayFuel({ litres, litresPerKWh, co2Kg }: FuelOfYear): string {
  return [
    `${spoken(litres)} l a year`,
    ...(litresPerKWh === undefined ? [] : [`${spoken(litresPerKWh)} l/kWh`]),
    `${spoken(co2Kg)} kg of carbon dioxide`,
  ].join(', ')
}

/**
 * A set on each occasion: its verdict, what is asked of engine, alternator and the heavier leg, starts that are too much, and
 * light running. On a set of one voltage there is no leg.
 */
export function occasionRows({ occasions }: JudgedSet, rules: LoadRules): string[][] {
  return occasions.map(({ occasion, checks, overloadsPerYear, dipsPerYear, lowShare }) => {
    const found = (check: CheckId) => {
      const worst = checks
        .filter((each) => each.check === check)
        .reduce<SizeCheck | undefined>(
          (most, one) => (most === undefined || (one.by ?? 0) > (most.by ?? 0) ? one : most),
          undefined,
        )
      return worst === undefined ? '–' : sayFound(worst)
    }
    return [
      occasionName(rules, occasion),
      verdictWords[worstOf(checks.map(({ verdict }) => verdict))],
      found('engine-load'),
      found('alternator-load'),
      found('leg-load'),
      spoken(overloadsPerYear),
      spoken(dipsPerYear),
      inHundred(lowShare),
    ]
  })
}

/** Every check of a set that is of no single occasion, passed ones too: what, verdict, found, where. */
export function checkRows({ checks }: JudgedSet, rules: LoadRules): string[][] {
  return [...checks]
    .sort((a, b) => checkIds.indexOf(a.check) - checkIds.indexOf(b.check))
    .map((one) => [checkNames[one.check], verdictWords[one.verdict], sayFound(one), sayWhere(one, rules)])
}

/** One thing that speaks against a set, at its worst, and the other occasions on which it does. */
export interface Against {
  readonly worst: SizeCheck
  readonly also: readonly Occasion[]
}

/** What does not pass, each check once, in the order of the checks. */
export function againstOf({ checks, occasions }: JudgedSet): Against[] {
  const all = [...checks, ...occasions.flatMap((one) => one.checks)].filter(
    ({ verdict }) => verdict !== 'passes',
  )
  const named = [...new Set(all.map(({ check }) => check))].sort(
    (a, b) => checkIds.indexOf(a) - checkIds.indexOf(b),
  )
  return named.map((check) => {
    const of = all.filter((one) => one.check === check)
    const worst = of.reduce((most, one) => ((one.by ?? 0) > (most.by ?? 0) ? one : most))
    const also = [...new Set(of.flatMap(({ occasion }) => occasion ?? []))].filter(
      (one) => one !== worst.occasion,
    )
    return { worst, also }
  })
}

/** "never oven with water heater; a soft starter on watermaker", loads by their ids as words. */
export function sayMeasures({ rules, softStarters }: Pick<TradeOff, 'rules' | 'softStarters'>): string {
  const said = [
    ...rules.map(({ loads: [a, b] }) => `never ${spaced(a)} with ${spaced(b)}`),
    ...softStarters.map((id) => `a soft starter on ${spaced(id)}`),
  ]
  return said.length === 0 ? 'no rule' : said.join('; ')
}

/** "saloon cooling 1" for `saloon-cooling.1`. */
export function spaced(id: string): string {
  return id.replaceAll(/[-.]/g, ' ')
}

/** Why no rules make a set do. */
export function sayBlocked({ blockedBy, resource }: Blocked): string {
  if (resource === 'number-of-rules') return `more than ${mostRules} rules would be needed`
  const names = blockedBy.map(spaced)
  if (resource === 'voltage-dip')
    return names.length === 1
      ? `${names[0]} cannot start on it`
      : `${names.slice(0, -1).join(', ')} and ${names.at(-1)} cannot start beside one another`
  if (names.length === 1) return `${names[0]} alone is too much`
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)} cannot wait for one another`
}
