/**
 * The page on the run plan: the day as it could be, against today, and what a meter saw of it.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { useEffect, useMemo, useState } from 'react'
import { type Season, seasons } from '../../catalogue/load-schema.js'
import { useOf as usualYearOf } from '../../forecast/build-use.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import type { DemandBasis } from '../../sizing/demand-basis.js'
import { heldIn } from '../../sizing/plan-run.js'
import type { BoatPlan, PlannedBoat, PlanQuestion } from '../../sizing/plan-whole.js'
import { spoken } from '../../sizing/say-size.js'
import { type Boat, useBoat, useCatalogue } from '../data/boat.js'
import { today } from '../data/today.js'
import { moneySayer } from '../entry/say-entry.js'
import { DayBars } from '../marks/day-bars.js'
import type { OfSet } from '../of-set.js'
import { Behind, Button, Cautions, Lead, Passage, Preparing, Say } from '../parts/index.js'
import { words } from '../words/plan.js'
import { plural } from '../words/say.js'
import type { DayPlanner } from '../work/plan.worker.js'
import { ofSize } from './of-size.js'
import { BatteryFields, BatteryHours, type BatteryTyped, batteryIn, noBattery } from './plan-battery.js'
import { Picked } from './plan-fields.js'
import { MeasuredIn } from './plan-measured.js'
import { SizingRows } from './sizing-rows.js'
import '../look/marks.css'
import '../look/sizing.css'
import '../look/plan.css'

/** What the page lets be moved. */
interface Moved {
  readonly season: Season | ''
  readonly from: string
  readonly until: string
  readonly battery: BatteryTyped
}

const unmoved: Moved = { season: '', from: '23', until: '7', battery: noBattery }

export function PlanScreen({ boat: id, set }: OfSet) {
  const boat = useBoat(id)
  const catalogue = useCatalogue()
  const { entries, status } = boat
  const [moved, setMoved] = useState<Moved>(unmoved)
  const [basis, setBasis] = useState<DemandBasis>()
  const question = useMemo((): PlanQuestion | undefined => {
    if (!catalogue || status !== 'ready') return undefined
    const of = ofSize(catalogue, { entries, boat: id, set, basis })
    const forSet = setCatalogueOf(of.register, catalogue).catalogue
    return {
      size: of.question,
      powerNeededByMonth: usualYearOf(of.register, forSet).use.powerNeededByMonth ?? [],
      ...movedTo(moved),
      ...batteryIn(moved.battery, {
        priceFactor: of.register.boatFacts.priceFactor ?? 1,
        fuelPerLitre: of.register.terms.fuelPerLitre ?? forSet.wholeSet.fuel.dockPrice.typical,
      }),
    }
  }, [catalogue, status, entries, id, set, moved, basis])
  const planned = usePlan(question)
  if (question === undefined) return <Preparing title={words.title} words={words.preparing} />
  const plan = typeof planned === 'object' && planned.ok ? planned : undefined
  const currency = boatCurrency(boat)
  return (
    <>
      <Passage title={words.title} says={words.says} first>
        <div aria-live="polite">
          {planned === undefined && <p className="waiting second">{words.working}</p>}
          {planned === 'failed' && <p className="lead">{words.failed}</p>}
          {typeof planned === 'object' && !planned.ok && (
            <ul className="prose">
              {planned.problems.map(({ path, found, allowed }) => (
                <li key={path}>
                  {found}; {allowed}
                </li>
              ))}
            </ul>
          )}
          {plan && <Answer plan={plan} />}
        </div>
      </Passage>
      {plan && <Day plan={plan} />}
      {plan && <Against plan={plan} />}
      <Ask moved={moved} onMove={setMoved} plan={plan} boat={boat} set={set} currency={currency} />
      <MeasuredIn boat={boat} set={set} plan={plan} recording={question.size.recording} onBasis={setBasis} />
      {plan && (
        <Passage title={words.rests.title} says={words.rests.says}>
          <ul className="prose">
            {plan.assumed.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </Passage>
      )}
      <Passage title={words.cautionsTitle}>
        <Cautions list={words.cautions} />
      </Passage>
    </>
  )
}

function Answer({ plan }: { readonly plan: BoatPlan }) {
  const { habit, year } = plan
  const saved = year.habit.hours - year.plan.hours
  const starts = plural(Math.round(plan.plan.starts), ...words.start)
  const said =
    saved > 1
      ? words.answer(spoken(plan.plan.hours), starts, spoken(habit.hours))
      : words.same(spoken(habit.hours))
  return (
    <>
      <Say>
        <b>{said.bold}</b>
        {said.after}
      </Say>
      {saved > 1 && (
        <Lead>
          {words.lead({
            hours: Math.round(saved).toLocaleString('en-GB'),
            litres: Math.round(year.habit.fuelLitres - year.plan.fuelLitres).toLocaleString('en-GB'),
            low: String(Math.round(100 * plan.plan.lowLoadShare)),
            lowToday: String(Math.round(100 * habit.lowLoadShare)),
          })}
        </Lead>
      )}
    </>
  )
}

function Day({ plan: { day, plan, habit } }: { readonly plan: BoatPlan }) {
  const { day: said } = words
  const names = new Map([...day.batches, ...day.stores].map(({ id, name }) => [id, name ?? id]))
  const byHour = (kW: readonly number[]) =>
    kW.flatMap((each, hour) => (each > 0.05 ? [`${hour} o’clock ${spoken(each)} kW`] : [])).join(', ')
  const planKW = plan.slots.map(({ setKW }) => setKW)
  const rows = plan.slots.flatMap(({ setKW, wantedKW }, t) => {
    if (setKW < 0.01 && wantedKW < 0.01) return []
    const what = [
      ...(day.baseKW[t]! > 0 ? [said.must] : []),
      ...Object.entries(plan.running).flatMap(([id, kW]) => (kW[t]! > 1e-6 ? [names.get(id) ?? id] : [])),
    ]
    const full = heldIn(day, plan, t)
      .map(({ name, share }) => `${name} ${Math.round(100 * share)}`)
      .join(', ')
    return [[`${t}:00`, `${spoken(setKW)} kW`, what.join(', '), full]]
  })
  return (
    <Passage title={said.title} says={said.says}>
      <DayBars
        planKW={planKW}
        todayKW={habit.kWBySlot}
        words={{
          drawing: said.drawing(byHour(planKW), byHour(habit.kWBySlot)),
          axis: said.axis,
          plan: said.plan,
          today: said.today,
        }}
      />
      <Behind name={said.table}>
        <SizingRows name={said.table} heads={said.heads} rows={rows} />
      </Behind>
    </Passage>
  )
}

function Against({ plan }: { readonly plan: BoatPlan }) {
  const { against: said } = words
  const row = (
    name: string,
    of: {
      readonly hours: number
      readonly starts: number
      readonly lowLoadShare: number
      readonly fuelLitres?: number
    },
  ) => [
    name,
    `${spoken(of.hours)} h`,
    spoken(of.starts),
    `${Math.round(100 * of.lowLoadShare)} in 100`,
    of.fuelLitres === undefined ? '–' : `${spoken(of.fuelLitres)} l`,
  ]
  return (
    <Passage title={said.title} says={said.says}>
      <SizingRows
        name={said.title}
        heads={said.heads}
        rows={[
          row(said.plan, plan.plan),
          row(plan.basis === 'recording' ? said.recorded : said.habit, plan.habit),
          ...(plan.recorded === undefined || plan.basis === 'recording'
            ? []
            : [row(said.recorded, plan.recorded)]),
          ...(plan.battery?.beside === undefined ? [] : [row(said.beside, plan.battery.beside)]),
        ]}
      />
    </Passage>
  )
}

interface AskProps {
  readonly moved: Moved
  readonly onMove: (moved: Moved) => void
  readonly plan: BoatPlan | undefined
  readonly boat: Boat
  readonly set: string
  readonly currency: string
}

function Ask({ moved, onMove, plan, boat, set, currency }: AskProps) {
  const { ask: said } = words
  const [kept, setKept] = useState(false)
  const move = (to: Partial<Moved>) => {
    setKept(false)
    onMove({ ...moved, ...to })
  }
  const put = (field: 'season' | 'from' | 'until') => (value: string) => move({ [field]: value })
  const hours = ['', ...Array.from({ length: 24 }, (_, hour) => String(hour))]
  const money = moneySayer(currency)
  const keep = async () => {
    if (plan === undefined) return
    const body = { months: [...plan.months], changesFromNow: true as const, remark: 'as planned' }
    const written = await boat.append([{ boat: boat.id, set, from: today(), kind: 'use', body }])
    setKept(written.ok)
  }
  const battery = plan?.battery
  const cost = battery?.besideCost ?? battery?.aloneCost
  return (
    <Passage title={said.title}>
      <div className="entry-fields">
        <Picked name={said.season} value={moved.season} onChange={put('season')}>
          {(['', ...seasons] as const).map((one) => [one, said.seasons[one]] as const)}
        </Picked>
        <Picked name={said.quietFrom} value={moved.from} onChange={put('from')}>
          {hours.map((hour) => [hour, hour === '' ? said.none : `${hour}:00`] as const)}
        </Picked>
        <Picked name={said.quietUntil} value={moved.until} onChange={put('until')}>
          {hours.slice(1).map((hour) => [hour, `${hour}:00`] as const)}
        </Picked>
      </div>
      <BatteryFields typed={moved.battery} onType={(typed) => move({ battery: typed })} />
      {battery && cost && (
        <p className="prose gap">
          {said.batterySays(
            spoken(battery.usableKWh),
            money(Math.round(cost.price / 10) * 10),
            money(Math.round(cost.perYear / 10) * 10),
            spoken(cost.bankYears),
          )}{' '}
          {battery.alone.unmetKWh > 0.05
            ? said.alone(spoken(battery.alone.unmetKWh), spoken(battery.wholeDayKWh))
            : said.aloneAll}
        </p>
      )}
      {plan && battery && <BatteryHours plan={plan} battery={battery} />}
      {boat.readOnly ? (
        <p className="small gap">{said.readOnly}</p>
      ) : (
        plan && (
          <div className="acts">
            <Button look="filled" onClick={() => void keep()}>
              {said.keep}
            </Button>
          </div>
        )
      )}
      <p className="written" aria-live="polite">
        {kept ? said.kept : ''}
      </p>
    </Passage>
  )
}

function movedTo({ season, from, until }: Moved): Pick<PlanQuestion, 'season' | 'quiet'> {
  return {
    ...(season === '' ? {} : { season }),
    quiet: from === '' ? 'none' : { from: Number(from), until: Number(until) },
  }
}

function boatCurrency({ entries }: Boat): string {
  const said = entries.findLast((entry) => entry.kind === 'boat' && 'currency' in entry.body)
  return said?.kind === 'boat' ? (said.body.currency ?? 'USD') : 'USD'
}

/** Planned anew whenever what it rests on changes; the last one that was asked for counts. */
function usePlan(question: PlanQuestion | undefined): PlannedBoat | 'failed' | undefined {
  const [planned, setPlanned] = useState<PlannedBoat | 'failed'>()
  useEffect(() => {
    if (question === undefined) return
    let isWanted = true
    setPlanned(undefined)
    const worker = new Worker(new URL('../work/plan.worker.ts', import.meta.url), { type: 'module' })
    worker.onerror = () => isWanted && setPlanned('failed')
    void Comlink.wrap<DayPlanner>(worker)
      .plan(question)
      .then((found) => isWanted && setPlanned(found))
      .catch(() => isWanted && setPlanned('failed'))
    return () => {
      isWanted = false
      worker.terminate()
    }
  }, [question])
  return planned
}
