/**
 * `gensettle plan`: what may wait in the fewest, well-loaded hours of a day, against the habit of today.
 *
 * @module
 */

import type { Season } from '../catalogue/load-schema.js'
import { useOf } from '../forecast/build-use.js'
import { loadFactsOf } from '../register/load-facts.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import type { batteryKinds } from '../sizing/battery.js'
import { type BatteryHour, hoursAlone, hoursBeside } from '../sizing/battery-hours.js'
import type { DemandBasis } from '../sizing/demand-basis.js'
import { recordingOf } from '../sizing/measured-summary.js'
import { planDay } from '../sizing/plan.js'
import type { RunDay } from '../sizing/plan-day.js'
import { dayFile, readDayFile } from '../sizing/plan-file.js'
import { loadSolver } from '../sizing/plan-milp.js'
import { type DayTotals, heldIn, type RunOfDay } from '../sizing/plan-run.js'
import { type BoatPlan, type PlanQuestion, planBoat } from '../sizing/plan-whole.js'
import { sayAgainst } from '../sizing/say-size.js'
import { writeAndAsk } from './log.js'
import { newFileProblems, readJsonFile, writeJsonFiles } from './new-file.js'
import { type SetOptions, type SetQuestion, withSet } from './of-set.js'
import { withStore } from './opened.js'
import { shippedCatalogue } from './places.js'
import { worthOfPlan, worthText } from './plan-worth.js'
import { type Result, refuse } from './result.js'
import { tableText } from './table.js'

export interface PlanOptions extends SetOptions {
  readonly season?: Season
  readonly sizeKw?: number
  /** "22-8", or none. */
  readonly quiet?: string
  readonly by?: DemandBasis
  readonly batteryKwh?: number
  readonly batteryKind: keyof typeof batteryKinds
  readonly inverterKw: number
  readonly chargerKw: number
  readonly sunWatts: number
  readonly sunHours: number
  readonly shoreKw: number
  /** A day as a file, in the place of the boat's. */
  readonly with?: string
  readonly write?: string
  /** Keep the plan as the use from now on. */
  readonly keep?: boolean
  readonly worth?: boolean
  readonly seed: number
}

const caution =
  'The set is only as safe as it is: its alarms, its exhaust and a carbon monoxide alarm come before any plan. Batteries: by who may, after the local rules.'

export async function showPlan(options: PlanOptions): Promise<Result> {
  const quiet = quietOf(options.quiet)
  if (quiet === 'wrong') {
    const allowed = 'hours such as 22-8, or none'
    return refuse({ code: 'wrong-form', path: '--quiet', found: options.quiet!, allowed })
  }
  if (options.with !== undefined) return planOfFile(options.with)
  if (options.write !== undefined) {
    const problems = newFileProblems([{ path: '--write', file: options.write }])
    if (problems.length > 0) return refuse(...problems)
  }
  let keeping:
    | { readonly boat: string; readonly set: string; readonly from: string; readonly plan: BoatPlan }
    | undefined
  const shown = await withSet(options, async (question): Promise<Result> => {
    const { named, boat, set, asOf } = question
    if (options.keep && named.demonstration) {
      return refuse({
        code: 'read-only',
        path: '--boat',
        found: boat,
        allowed: 'a boat of your own: demonstration boats are only read',
      })
    }
    const asked = questionOf(question, options, quiet)
    const planned = planBoat(await loadSolver(), asked)
    if (!planned.ok) return planned
    const { ok: _, ...plan } = planned
    keeping = { boat, set, from: asOf, plan }
    if (options.write !== undefined) {
      const unwritten = writeJsonFiles([{ path: '--write', file: options.write, value: dayFile(plan.day) }])
      if (unwritten.length > 0) return refuse(...unwritten)
    }
    const worth = options.worth ? await worthOfPlan(question, plan, { seed: options.seed }) : undefined
    const { day, choices: __, ...said } = plan
    return {
      ok: true,
      json: {
        type: 'gensettle/plan',
        version: 1,
        boat,
        set,
        asOf,
        ...said,
        day: dayFile(day),
        ...(worth === undefined ? {} : { worth }),
        caution,
      },
      text: [
        planText(plan, question),
        ...(worth === undefined ? [] : ['', ...worthText(worth)]),
        ...(options.write === undefined ? [] : ['', `Written: ${options.write}`]),
        '',
        caution,
      ].join('\n'),
    }
  })
  if (!shown.ok || !options.keep || keeping === undefined) return shown
  const { boat, set, from, plan } = keeping
  const draft = {
    boat,
    set,
    from,
    kind: 'use',
    body: { months: [...plan.months], changesFromNow: true, remark: 'as planned' },
  } as const
  const written = await withStore(options, (store) => writeAndAsk(store, [draft], 'gensettle/plan'))
  if (!written.ok) return written
  const { entries, asked } = written.json
  return {
    ok: true,
    json: { ...shown.json, entries, asked },
    text: `${shown.text}\n\n${written.text}\nForecast and alternatives reckon with it from now on.`,
  }
}

function questionOf(
  { entries, boat, set, asOf }: SetQuestion,
  options: PlanOptions,
  quiet: PlanQuestion['quiet'],
): PlanQuestion {
  const register = registerOf({ entries, boat, set, asOf, catalogue: shippedCatalogue() })
  const { catalogue } = setCatalogueOf(register, shippedCatalogue())
  const recording = recordingOf(entries, { set, asOf })
  const { season, sizeKw, by, batteryKwh } = options
  return {
    size: {
      book: catalogue,
      facts: loadFactsOf(entries, { boat, set, asOf }),
      setFacts: register.setFacts,
      set,
      use: register.use?.months,
      ...(recording === undefined ? {} : { recording }),
      ...(by === undefined ? {} : { basis: by }),
    },
    powerNeededByMonth: useOf(register, catalogue).use.powerNeededByMonth ?? [],
    ...(season === undefined ? {} : { season }),
    ...(sizeKw === undefined ? {} : { ratingKW: sizeKw }),
    ...(quiet === undefined ? {} : { quiet }),
    ...(batteryKwh === undefined
      ? {}
      : {
          battery: {
            offer: {
              kind: options.batteryKind,
              ratedKWh: batteryKwh,
              inverterKW: options.inverterKw,
              chargeKW: options.chargerKw,
              sunWatts: options.sunWatts,
            },
            sunHours: options.sunHours,
            shoreKW: options.shoreKw,
            priceFactor: register.boatFacts.priceFactor ?? 1,
            fuelPerLitre: register.terms.fuelPerLitre ?? catalogue.wholeSet.fuel.dockPrice.typical,
          },
        }),
  }
}

/** A day that was written by hand, whatever boat it is of. */
async function planOfFile(file: string): Promise<Result> {
  const read = readJsonFile(file, { path: '--with', holds: 'a day' })
  if ('problem' in read) return refuse(read.problem)
  const asked = readDayFile(read.value)
  if (!asked.ok) return asked
  const planned = planDay(await loadSolver(), asked.day)
  if (!planned.ok) return planned
  return {
    ok: true,
    json: { type: 'gensettle/plan-of-day', version: 1, plan: planned.run, choices: planned.choices, caution },
    text: [sayTotals('The plan', planned.run), '', dayText(asked.day, planned.run), '', caution].join('\n'),
  }
}

function quietOf(text: string | undefined): PlanQuestion['quiet'] | 'wrong' {
  if (text === undefined) return undefined
  if (text === 'none') return 'none'
  const hours = /^(\d{1,2})-(\d{1,2})$/.exec(text)
  const [from, until] = [Number(hours?.[1]), Number(hours?.[2])]
  return hours !== null && from < 24 && until <= 24 ? { from, until } : 'wrong'
}

function planText(plan: BoatPlan, { boat }: SetQuestion): string {
  const { habit, recorded, measured, year, battery, basis } = plan
  const against = measured?.against
  const saved = {
    hours: year.habit.hours - year.plan.hours,
    litres: year.habit.fuelLitres - year.plan.fuelLitres,
  }
  const row = (
    name: string,
    of: Pick<DayTotals, 'hours' | 'starts' | 'lowLoadShare'> & { readonly fuelLitres?: number },
  ) => [
    name,
    of.hours.toFixed(1),
    of.starts.toFixed(1),
    `${Math.round(100 * of.lowLoadShare)} in 100`,
    of.fuelLitres === undefined ? '' : of.fuelLitres.toFixed(1),
  ]
  const columns = [
    { head: `a ${plan.season} day on ${plan.ratingKW} kW` },
    ...['hours', 'starts', 'at low load', 'litres'].map((head) => ({ head, align: 'right' }) as const),
  ]
  return [
    `${boat}: ${sayTotals('the plan', plan.plan)}; today ${sayTotals('', habit)}. Over the year ${whole(Math.abs(saved.hours))} hours and ${whole(Math.abs(saved.litres))} litres ${saved.hours >= 0 ? 'less' : 'more'}.`,
    '',
    tableText(columns, [
      row('the plan', plan.plan),
      row(basis === 'recording' ? 'today, as recorded' : 'today, as the list tells', habit),
      ...(recorded === undefined || basis === 'recording' ? [] : [row('today, as recorded', recorded)]),
      ...(battery?.beside === undefined ? [] : [row('the plan, with the battery', battery.beside)]),
    ]),
    '',
    dayText(plan.day, plan.plan),
    ...(against === undefined ? [] : ['', sayAgainst(against)]),
    ...(battery === undefined ? [] : ['', ...batteryText(battery, plan)]),
    '',
    'Taken for granted:',
    ...plan.assumed.map((one) => `  ${one}`),
  ].join('\n')
}

function batteryText(battery: NonNullable<BoatPlan['battery']>, { day, plan }: BoatPlan): string[] {
  const { beside, besideCost, alone, aloneCost, usableKWh, wholeDayKWh, problems } = battery
  const cost = besideCost ?? aloneCost
  return [
    `A battery of ${usableKWh.toFixed(1)} kWh to use: about ${whole(cost.price)} fitted, ${whole(cost.perYear)} a year; the bank lasts ${cost.bankYears.toFixed(1)} years, ended by its ${cost.endedBy}.`,
    ...(beside === undefined
      ? problems.map(({ found, allowed }) => `  Beside the set: ${found}; allowed is ${allowed}.`)
      : [`  Beside the set: ${sayTotals('', beside)}.`]),
    alone.unmetKWh > 0.05
      ? `  In place of the set, with what sun and shore give: ${alone.unmetKWh.toFixed(1)} kWh a day are not carried, in ${alone.unmetHours.toFixed(1)} hours; to hold the whole day it would be one of ${wholeDayKWh.toFixed(1)} kWh.`
      : `  In place of the set: sun, shore and battery carry the day.`,
    '',
    ...(beside === undefined
      ? []
      : ['Beside the set, hour by hour [kW]', hoursText(hoursBeside(beside, day.slotHours)), '']),
    'In place of the set, hour by hour [kW]',
    hoursText(
      hoursAlone(alone.slots, {
        wantedKW: plan.slots.map(({ wantedKW }) => wantedKW),
        slotHours: day.slotHours,
      }),
    ),
  ]
}

/** The hours in which anything flows. */
function hoursText(hours: readonly BatteryHour[]): string {
  const right = ['wanted', 'set', 'sun', 'shore', 'out of it', 'into it', 'not carried', 'in it, kWh']
  const rows = hours.flatMap((one) => {
    const flows = [one.wantedKW, one.setKW, one.sunKW, one.shoreKW, one.outKW, one.intoKW, one.unmetKW]
    if (flows.every((kW) => kW < 0.005)) return []
    return [
      [clock(one.hour), ...flows.map((kW) => (kW < 0.005 ? '' : kW.toFixed(2))), one.levelKWh.toFixed(1)],
    ]
  })
  return tableText([{ head: 'hour' }, ...right.map((head) => ({ head, align: 'right' }) as const)], rows)
}

function sayTotals(name: string, { hours, starts, lowLoadShare, fuelLitres }: DayTotals): string {
  const low = lowLoadShare === 0 ? 'none of them' : `${Math.round(100 * lowLoadShare)} in 100 of them`
  return `${name} ${hours.toFixed(1)} h a day in ${starts.toFixed(0)} starts, ${low} at low load, ${fuelLitres.toFixed(1)} l`.trim()
}

/** The hours in which something runs, and what. */
function dayText(day: RunDay, run: RunOfDay): string {
  const names = new Map([...day.batches, ...day.stores].map(({ id, name }) => [id, name ?? id]))
  const rows = run.slots.flatMap(({ wantedKW, setKW, isOn, isLow }, t) => {
    if (!isOn && wantedKW < 0.01) return []
    const from = t * day.slotHours
    const full = heldIn(day, run, t)
      .map(({ name, share }) => `${name} ${Math.round(100 * share)}`)
      .join(', ')
    const what = [
      ...(day.baseKW[t]! > 0 ? ['what cannot wait'] : []),
      ...Object.entries(run.running).flatMap(([id, kW]) => (kW[t]! > 1e-6 ? [names.get(id) ?? id] : [])),
    ]
    return [[clock(from), isOn ? setKW.toFixed(1) : 'off', isLow ? 'low' : '', what.join(', '), full]]
  })
  return tableText(
    [
      { head: 'hour' },
      { head: 'kW', align: 'right' },
      { head: '' },
      { head: 'what runs', wrap: 60 },
      { head: 'full as it ends, of 100', wrap: 40 },
    ],
    rows,
  )
}

function clock(hour: number): string {
  return `${String(Math.floor(hour)).padStart(2, '0')}:${String(Math.round((hour % 1) * 60)).padStart(2, '0')}`
}

function whole(value: number): string {
  return Math.round(value).toLocaleString('en-GB')
}
