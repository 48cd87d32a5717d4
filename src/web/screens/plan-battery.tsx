/**
 * The battery of the page on the run plan: what is asked of it, what was typed as a question, and its hours.
 *
 * @module
 */

import { batteryKinds, shoreKVA } from '../../sizing/battery.js'
import type { BatteryOffer } from '../../sizing/battery-cost.js'
import { type BatteryHour, hoursAlone, hoursBeside } from '../../sizing/battery-hours.js'
import type { BoatPlan, PlanQuestion } from '../../sizing/plan-whole.js'
import { spoken } from '../../sizing/say-size.js'
import { Behind } from '../parts/index.js'
import { words } from '../words/plan.js'
import { Picked, Typed } from './plan-fields.js'
import { SizingRows } from './sizing-rows.js'

const { battery: said } = words

/** As typed; a field left empty is taken as usual. */
export interface BatteryTyped {
  readonly kWh: string
  readonly kind: BatteryOffer['kind']
  readonly inverterKW: string
  readonly chargerKW: string
  readonly sunWatts: string
  readonly sunHours: string
  readonly shore: string
}

/** Practice. */
const usual = { inverterKW: '3', chargerKW: '2', sunHours: '4' }

export const noBattery: BatteryTyped = { kWh: '', kind: 'lithium', sunWatts: '', shore: '', ...usual }

/** Inlets as they are fitted, and what may be drawn of one all day. Source: of the sockets recalled, of the share United States practice. */
const inlets = [
  { amps: 16, volts: 230 },
  { amps: 32, volts: 230 },
  { amps: 30, volts: 120 },
  { amps: 50, volts: 240 },
] as const
const allDayShare = 0.8

const kinds = Object.keys(batteryKinds) as BatteryOffer['kind'][]

export function BatteryFields({
  typed,
  onType,
}: {
  readonly typed: BatteryTyped
  readonly onType: (typed: BatteryTyped) => void
}) {
  const put = (field: keyof BatteryTyped) => (value: string) => onType({ ...typed, [field]: value })
  return (
    <div className="entry-fields gap">
      <Typed name={said.kWh} value={typed.kWh} onChange={put('kWh')} />
      <Picked name={said.kind} value={typed.kind} onChange={put('kind')}>
        {kinds.map((kind) => [kind, said.kinds[kind]] as const)}
      </Picked>
      <Typed name={said.inverter} value={typed.inverterKW} onChange={put('inverterKW')} />
      <Typed name={said.charger} value={typed.chargerKW} onChange={put('chargerKW')} />
      <Typed name={said.sun} value={typed.sunWatts} onChange={put('sunWatts')} />
      <Typed name={said.sunHours} value={typed.sunHours} onChange={put('sunHours')} />
      <Picked name={said.shore} value={typed.shore} onChange={put('shore')}>
        {[
          ['', said.none] as const,
          ...inlets.map(({ amps, volts }) => [`${amps} ${volts}`, `${amps} A, ${volts} V`] as const),
        ]}
      </Picked>
    </div>
  )
}

/** Where the power comes from and goes to, hour by hour. */
export function BatteryHours({
  plan: { day, plan },
  battery: { beside, alone },
}: {
  readonly plan: BoatPlan
  readonly battery: NonNullable<BoatPlan['battery']>
}) {
  const { slotHours } = day
  const wantedKW = plan.slots.map((slot) => slot.wantedKW)
  return (
    <>
      {beside && <HourRows name={said.besideHours} hours={hoursBeside(beside, slotHours)} />}
      <HourRows name={said.aloneHours} hours={hoursAlone(alone.slots, { wantedKW, slotHours })} />
    </>
  )
}

function HourRows({ name, hours }: { readonly name: string; readonly hours: readonly BatteryHour[] }) {
  const rows = hours.flatMap((one) => {
    const flows = [one.wantedKW, one.setKW, one.sunKW, one.shoreKW, one.outKW, one.intoKW, one.unmetKW]
    if (flows.every((kW) => kW < leastShownKW)) return []
    const cells = flows.map((kW) => (kW < leastShownKW ? '–' : spoken(kW)))
    return [[`${one.hour}:00`, ...cells, spoken(one.levelKWh)]]
  })
  return (
    <Behind name={name}>
      <SizingRows name={name} heads={said.hourHeads} rows={rows} />
    </Behind>
  )
}

const leastShownKW = 0.005

/** Nothing where no battery is typed, or no number. */
export function batteryIn(
  typed: BatteryTyped,
  of: { readonly priceFactor: number; readonly fuelPerLitre: number },
): Pick<PlanQuestion, 'battery'> {
  const ratedKWh = numberOf(typed.kWh, 500)
  if (ratedKWh === 0) return {}
  const offer = {
    kind: typed.kind,
    ratedKWh,
    inverterKW: numberOf(typed.inverterKW, 100),
    chargeKW: numberOf(typed.chargerKW, 100),
    sunWatts: numberOf(typed.sunWatts, 50_000),
  }
  const [amps, volts] = typed.shore.split(' ').map(Number)
  const shoreKW = amps === undefined || volts === undefined ? 0 : allDayShare * shoreKVA({ amps, volts })
  return { battery: { offer, sunHours: numberOf(typed.sunHours, 12), shoreKW, ...of } }
}

function numberOf(text: string, most: number): number {
  return Math.min(most, Math.max(0, Number(text.replace(',', '.')) || 0))
}
