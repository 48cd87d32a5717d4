/**
 * `gensettle loads` and `gensettle size`: what draws power aboard, and which set carries it.
 *
 * @module
 */

import { moneyIn } from '../alternatives/say.js'
import type { CatalogueLoad } from '../catalogue/load-schema.js'
import { loadFactsOf } from '../register/load-facts.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import type { DemandBasis } from '../sizing/demand-basis.js'
import type { JudgedSet } from '../sizing/judged-set.js'
import { limitOrigins } from '../sizing/limit-origins.js'
import type { Load } from '../sizing/load-type.js'
import { recordingOf } from '../sizing/measured-summary.js'
import { loadSolver } from '../sizing/plan-milp.js'
import {
  againstOf,
  basisWords,
  checkNames,
  checkRows,
  hoursOn,
  inHundred,
  occasionName,
  occasionRows,
  sayAgainst,
  sayBasis,
  sayBlocked,
  sayConnected,
  sayFound,
  sayFuel,
  sayLeft,
  sayMeasures,
  saySize,
  sayStart,
  sayWhere,
  seasonName,
  spoken,
  verdictWords,
} from '../sizing/say-size.js'
import { type BoatSize, needsOf, type SizeQuestion, sizeBoat } from '../sizing/size-boat.js'
import { type BoatTrades, type KeptChoice, tradeBoat } from '../sizing/trade-boat.js'
import { type SetOptions, type SetQuestion, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse, refusedText } from './result.js'
import { type Column, tableText } from './table.js'

export interface LoadOptions extends SetOptions {
  readonly search?: string
}

/** `loads`: the boat's own list; with --search those of the catalogue. */
export async function showLoads(options: LoadOptions): Promise<Result> {
  return options.search === undefined ? withSet(options, boatList) : found(options.search)
}

const right = (head: string): Column => ({ head, align: 'right' })

/** Loads of the catalogue that have every word of the search in name, id or group. */
function found(search: string): Result {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean)
  const { loads } = shippedCatalogue()
  const named = loads.filter(({ id, name, group }) => {
    const text = `${id} ${name} ${group}`.toLowerCase()
    return words.every((word) => text.includes(word))
  })
  const row = ({ id, name, sixty, fifty, motor }: CatalogueLoad) => [
    id,
    name,
    `${sixty.runW} W ${sixty.volts} V`,
    `${fifty.runW} W`,
    motor === undefined ? '' : `${sixty.lockedRotorA} A / ${fifty.lockedRotorA} A`,
  ]
  const columns = [
    { head: 'load' },
    { head: 'what it is', wrap: 46 },
    right('60 Hz'),
    right('50 Hz, 230 V'),
    right('starting'),
  ]
  return {
    ok: true,
    json: { type: 'gensettle/load-search', version: 1, search, loads: named },
    text:
      named.length === 0
        ? `No load of the catalogue has ${words.join(' and ')} in its name.`
        : `${tableText(columns, named.map(row))}\n\nPlanning values; a nameplate or a clamp meter takes their place.`,
  }
}

function questionOf({
  entries,
  boat,
  set,
  asOf,
}: SetQuestion): SizeQuestion & { readonly register: SetRegister } {
  const catalogue = shippedCatalogue()
  const register = registerOf({ entries, boat, set, asOf, catalogue })
  const { setFacts, use } = register
  const recording = recordingOf(entries, { set, asOf })
  return {
    book: setCatalogueOf(register, catalogue).catalogue,
    facts: loadFactsOf(entries, { boat, set, asOf }),
    setFacts,
    set,
    use: use?.months,
    ...(recording === undefined ? {} : { recording }),
    register,
  }
}

function boatList(question: SetQuestion): Result {
  const { boat, set, asOf } = question
  const asked = questionOf(question)
  const { listed, loads, rules, problems, assumed, habits, basis, measured } = needsOf(asked)
  const corrected = basis === 'corrected' ? loads : undefined
  const columns = [
    { head: 'load' },
    { head: 'what it is', wrap: 34 },
    right('draws'),
    { head: 'on' },
    right('starts with'),
    right('switched on a day'),
    ...(corrected === undefined ? [] : [right('by the recording')]),
    { head: 'from' },
    right('shed'),
  ]
  const said = sayBasis({ basis, measured })
  return {
    ok: true,
    json: {
      type: 'gensettle/loads',
      version: 1,
      boat,
      set,
      asOf,
      loads: listed,
      ...(corrected === undefined ? {} : { reckoned: corrected }),
      rules,
      habits,
      assumed,
      problems,
    },
    text: [
      listed.length === 0
        ? `No load is in the log of ${boat}. "gensettle loads --search oven" finds one of the catalogue, "gensettle log add load" enters it.`
        : tableText(columns, listRows(listed, corrected)),
      ...(said === undefined ? [] : ['', said]),
      ...(rules.length === 0 ? [] : ['', 'Rules of the house:']),
      ...rules.map(({ id, loads: of, atMost }) => `  ${id}: of ${of.join(', ')} at most ${atMost} at once`),
      ...refusedText('Not reckoned with', problems),
    ].join('\n'),
  }
}

/** The list, each load as it says, and beside it its hours as they are reckoned with; last what the list lacks. */
function listRows(listed: readonly Load[], corrected: readonly Load[] | undefined): string[][] {
  const row = (load: Load, told: string) => [
    load.id,
    load.name,
    `${spoken(load.watts)} W`,
    `${load.volts} V${load.leg === 'both' ? ', both legs' : load.leg === 'two' ? ', leg two' : ''}`,
    load.start === undefined ? '' : sayStart(load.start),
    told,
    ...(corrected === undefined ? [] : [reckonedHours(corrected, load)]),
    load.basis,
    load.shed === undefined ? '' : String(load.shed),
  ]
  const lacking = (corrected ?? []).filter(({ id }) => !listed.some((load) => load.id === id))
  return [
    ...listed.map((load) => row(load, `${spoken(hoursOn(load))} h`)),
    ...lacking.map((load) => row(load, '–')),
  ]
}

function reckonedHours(loads: readonly Load[], { id }: Load): string {
  const load = loads.find((one) => one.id === id)
  return load === undefined ? '' : `${spoken(hoursOn(load))} h`
}

export interface SizeOptions extends SetOptions {
  readonly by?: DemandBasis
  readonly sizes?: string
  /** Every check of every set, passed ones too, and each occasion. */
  readonly all?: boolean
}

/** `size`: what is drawn, by occasion, and which sets carry it. */
export function showSize(options: SizeOptions): Promise<Result> {
  const sizes = options.sizes?.split(',').map(Number)
  if (sizes?.some((size) => !(size >= 0.5 && size <= 100))) {
    const allowed = 'ratings from 0.5 to 100 kW, such as 5,6,8'
    return Promise.resolve(refuse({ code: 'wrong-form', path: '--sizes', found: options.sizes!, allowed }))
  }
  return withSet(options, async (asked) => {
    const { boat, set, asOf } = asked
    const { register, ...rest } = questionOf(asked)
    const question = {
      ...rest,
      ...(sizes === undefined ? {} : { sizes }),
      ...(options.by === undefined ? {} : { basis: options.by }),
    }
    const sized = sizeBoat(question)
    const { terms, boatFacts } = register
    const needs = needsOf(question)
    const trades = tradeBoat(await loadSolver(), { question, needs, sized, terms })
    return {
      ok: true,
      json: {
        type: 'gensettle/size',
        version: 1,
        boat,
        set,
        asOf,
        saying: saySize(sized),
        ...sized,
        limits: limitOrigins(shippedCatalogue(), sized.sets),
        trades,
      },
      text: sizeText(sized, { trades, currency: boatFacts.currency ?? '', all: options.all ?? false }),
    }
  })
}

function sizeText(
  sized: BoatSize,
  of: { readonly trades: BoatTrades; readonly currency: string; readonly all: boolean },
): string {
  const { loadRules } = shippedCatalogue()
  const { figures, sets, assumed, problems, kept } = sized
  if ((sized.loads.length === 0 && sized.basis === 'list') || figures.length === 0) {
    return [saySize(sized), ...refusedText('Not reckoned with', problems)].join('\n')
  }
  const drawn = figures.map(({ occasion, season, hours, meanKW, kW, kVA }) => [
    occasionName(loadRules, occasion),
    seasonName(loadRules, season),
    spoken(hours),
    spoken(meanKW),
    ...[kW.p50, kW.p95, kW.p99, kW.most, kVA.p99].map(spoken),
  ])
  const columns = [
    { head: 'occasion' },
    { head: 'weather' },
    right('h a year'),
    right('mean kW'),
    right('half'),
    right('95 %'),
    right('99 %'),
    right('all'),
    right('99 % kVA'),
  ]
  return [
    saySize(sized),
    '',
    'What is drawn with the set running [kW]: exceeded half of the time, one hour in 20, one in 100, and all that can be on at once',
    tableText(columns, drawn),
    ...sayConnected(sized),
    ...measuredText(sized),
    ...(kept < 0.9995
      ? [`The rules of the house leave room for ${inHundred(kept)} of the time that is wanted.`]
      : []),
    ...sets.flatMap((one) => setText(one, of)),
    ...(of.all ? limitsText(sized) : []),
    ...(sized.loads.length === 0 ? [] : tradesText(sized, of)),
    ...[...assumed, ...of.trades.assumed].map(
      (line, i) => `${i === 0 ? '\nTaken for granted:\n' : ''}  ${line}`,
    ),
    ...refusedText('Not reckoned with', problems),
    '',
    'Wiring, exhaust, fuel and lifting can hurt people: what the local rules and a licensed hand say comes first.',
  ].join('\n')
}

/** The recording against the list, and which of them was sized by. */
function measuredText({ measured, basis }: BoatSize): string[] {
  if (measured === undefined) return []
  const { against } = measured
  return [
    '',
    `Sized by ${basisWords[basis]}; --by says otherwise. ${sayBasis({ measured, basis })}`,
    ...(against === undefined ? [] : [sayAgainst(against)]),
  ]
}

/** What speaks against a set, and how it would run. */
function setText(judged: JudgedSet, { all }: { readonly all: boolean }): string[] {
  const { loadRules } = shippedCatalogue()
  const { set, fuel, lowShare, overloadsPerYear, overloadsUnshed, dipsPerYear, verdict, place } = judged
  const against = againstOf(judged)
  const { left, second } = sayLeft(judged)
  const untold = against.filter(({ worst }) => worst.verdict === 'cannot-tell')
  const carries =
    verdict === 'fails'
      ? 'does not carry it'
      : verdict === 'tight'
        ? 'carries it, barely or badly'
        : 'carries it'
  return [
    '',
    `${set.kind === 'size' ? `A set of ${set.name}` : upperFirst(set.name)}: ${carries}${place === 'fails' ? ', and does not suit the place' : ''}.`,
    `  Leaves ${left} there (by a second reckoning ${second}); burns ${sayFuel(fuel)}${set.madeForHertz === undefined ? '' : `; made for ${set.madeForHertz} Hz, reckoned at the boat’s`}.`,
    `  Below 30 % in ${inHundred(lowShare)} of its hours; too much asked at ${spoken(overloadsPerYear)} starts a year${overloadsUnshed === undefined ? '' : `, ${spoken(overloadsUnshed)} with what may be shed off`}, too deep a dip at ${spoken(dipsPerYear)}.`,
    ...(all ? wholeSetText(judged) : []),
    ...(all ? [] : against)
      .filter(({ worst }) => worst.verdict !== 'cannot-tell')
      .map(({ worst, also }) => {
        const others = also.map((one) => occasionName(loadRules, one).toLowerCase())
        const where = [
          sayWhere(worst, loadRules),
          ...(others.length === 0 ? [] : [`also ${others.join(', ')}`]),
        ]
          .filter((text) => text !== '')
          .join('; ')
        return `  ${verdictWords[worst.verdict]}: ${checkNames[worst.check]}: ${sayFound(worst)}${where === '' ? '' : ` (${where})`}`
      }),
    ...(all || untold.length === 0
      ? []
      : [`  cannot tell: ${untold.map(({ worst }) => checkNames[worst.check].toLowerCase()).join(', ')}`]),
  ]
}

/** Every check, and each occasion. */
function wholeSetText(judged: JudgedSet): string[] {
  const { loadRules } = shippedCatalogue()
  const occasions = [
    { head: 'occasion' },
    { head: 'verdict' },
    { head: 'engine, one hour in a hundred', wrap: 24 },
    { head: 'alternator', wrap: 24 },
    { head: 'heavier leg', wrap: 24 },
    right('starts too many a year'),
    right('dips too deep'),
    right('below 30 %'),
  ]
  const checks = [
    { head: 'what', wrap: 44 },
    { head: 'verdict' },
    { head: 'found', wrap: 44 },
    { head: 'where', wrap: 40 },
  ]
  return [
    tableText(occasions, occasionRows(judged, loadRules)),
    '',
    tableText(checks, checkRows(judged, loadRules)),
  ]
}

/** Where each limit comes from, and how it is held. */
function limitsText({ sets }: BoatSize): string[] {
  const rows = limitOrigins(shippedCatalogue(), sets).map(({ check, title, place, held }) => [
    checkNames[check],
    `${title}: ${place}`,
    held,
  ])
  const columns = [{ head: 'limit of', wrap: 44 }, { head: 'comes from', wrap: 60 }, { head: 'held' }]
  return ['', tableText(columns, rows)]
}

function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** The list to choose from. */
function tradesText(
  { sets }: BoatSize,
  { trades, currency }: { readonly trades: BoatTrades; readonly currency: string },
): string[] {
  const { choices, blocked, yearsKept } = trades
  const nameOf = (id: string) => sets.find(({ set }) => set.id === id)!.set.name
  const money = (amount: number | undefined) => (amount === undefined ? '' : moneyIn(currency, amount))
  const rows = choices.flatMap((choice) => [
    [
      String(choice.rules.length + choice.softStarters.length),
      nameOf(choice.id),
      sayMeasures(choice),
      `${spoken(choice.waitingHours)} h`,
      spoken(choice.overloadsLeft),
      money(choice.saves),
    ],
  ])
  const columns = [
    right('asked'),
    { head: 'smallest set' },
    { head: 'what it asks', wrap: 60 },
    right('waiting a year'),
    right('starts too many'),
    right('saves'),
  ]
  return [
    '',
    `What smaller sets would ask: the fewest rules and soft starters, proved, and what they save in ${yearsKept} years, soft starters paid`,
    choices.length === 0
      ? 'No set of those looked at does, with six rules or fewer.'
      : tableText(columns, rows),
    ...choices.flatMap((choice) =>
      eachOf(choice).flatMap(({ name, neededWithout, saves }) =>
        neededWithout === undefined
          ? []
          : [
              `  ${upperFirst(name)}: without it ${nameOf(neededWithout)} is needed${saves === undefined ? '' : `, ${money(saves)} more`}`,
            ],
      ),
    ),
    ...blocked.map((one) => `  ${upperFirst(nameOf(one.id))}: ${sayBlocked(one)}.`),
  ]
}

/** What each thing asked of a choice is worth. */
function eachOf({ each, eachStarter }: KeptChoice) {
  return [
    ...each.map((rule) => ({ ...rule, name: sayMeasures({ rules: [rule], softStarters: [] }) })),
    ...eachStarter.map((one) => ({ ...one, name: sayMeasures({ rules: [], softStarters: [one.load] }) })),
  ]
}
