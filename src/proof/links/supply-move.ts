/**
 * Going over to another voltage and frequency: one question, all that hangs on it.
 *
 * @module
 */

import type { Supply } from '../../catalogue/links-schema.js'
import type { Limits } from '../limits.js'
import { polesOf, rpmOf } from '../supply.js'
import type { WayOfLinking } from './wired-for.js'

export interface MoveOptions {
  readonly from: Supply
  readonly to: Supply
  /** As it runs now. [rpm] */
  readonly rpm?: number | undefined
  /** What the set gives now. [kVA] */
  readonly kva?: number | undefined
  /** Ways of joining the leads for it, the best first; none for a set whose leads cannot be joined otherwise. */
  readonly ways: readonly WayOfLinking[]
  /** And for what it is wired for now; left out: as much is taken from the coils then as now. */
  readonly waysNow?: readonly WayOfLinking[] | undefined
  readonly limits: Limits
}

/** What becomes of a kind of load. */
export interface LoadAfter {
  readonly load: string
  readonly verdict: 'goes on' | 'its plate decides' | 'does not'
  readonly says: string
}

export interface SupplyMove {
  readonly poles: number | null
  readonly rpm: { readonly now: number; readonly after: number } | null
  /** What coils and engine give then [kVA]; line amps now and then, and the largest breaker of each. [A] */
  readonly breaker: {
    readonly afterKva: number
    readonly nowAmps: number
    readonly afterAmps: number
    readonly nowMost: number
    readonly afterMost: number
  } | null
  /** What must be done to the set, each with what hangs on it. */
  readonly steps: readonly { readonly what: string; readonly says: string }[]
  readonly aboard: readonly LoadAfter[]
  /** What stands in for all of it. */
  readonly instead: string
}

/**
 * Share of a shore supply's amps that may be drawn for hours.
 *
 * Source: practice of the United States for continuous load.
 */
const shoreShare = 0.8

export function moveSupply({ from, to, rpm, kva, ways, waysNow = [], limits }: MoveOptions): SupplyMove {
  const poles = rpm === undefined ? null : polesOf({ hertz: from.hertz, rpm })
  const speed =
    rpm === undefined || poles === null || poles < 2
      ? null
      : { now: rpm, after: rpmOf({ hertz: to.hertz, poles }) }
  const left = leftOf({ from, to, before: oneWay(waysNow), after: oneWay(ways) })
  const breaker =
    kva === undefined ? null : breakerOf({ from, to, kva, left, share: limits('breaker-of-set').value / 100 })
  return {
    poles,
    rpm: speed,
    breaker,
    steps: [
      linkStep(ways, to),
      speedStep({ from, to, speed }),
      regulatorStep(to),
      {
        what: 'Breaker and wires',
        says: `${
          breaker === null
            ? 'Line amps change as volts do.'
            : `${powerThen({ kva: kva!, left })} A line carries ${Math.round(breaker.afterAmps)} A in the place of ${Math.round(breaker.nowAmps)} A; its breaker is ${Math.floor(breaker.afterMost)} A at most.`
        } Both live wires of three are broken together, the neutral never alone; changeover switch, meters, current transformers and the voltage on the plate change too.`,
      },
      {
        what: 'Neutral and earth',
        says: 'The neutral leaves from another place. One bond to earth, at the set, only while the set feeds. This is work for a licensed electrician.',
      },
    ],
    aboard: loadsAfter(from, to),
    instead: insteadOf(from),
  }
}

/** What is left of the power, as shares of what it gives now. */
interface PowerLeft {
  readonly coils: number
  readonly engine: number
}

/**
 * Coils give their share of the pattern times the volts that each stands at, at the same amps; an engine that turns slower gives
 * less in proportion, and one that turns faster no more than its maker says. Neither is reckoned above what it gives now.
 */
function leftOf({
  from,
  to,
  before,
  after,
}: {
  readonly from: Supply
  readonly to: Supply
  readonly before: WayOfLinking | undefined
  readonly after: WayOfLinking | undefined
}): PowerLeft {
  const ratio =
    before === undefined || after === undefined
      ? 1
      : (after.share * after.emfV) / (before.share * before.emfV)
  return { coils: Math.min(1, ratio), engine: Math.min(1, to.hertz / from.hertz) }
}

/** The way that it is joined; none where the volts of a coil have yet to decide. */
function oneWay(ways: readonly WayOfLinking[]): WayOfLinking | undefined {
  return ways.length > 1 && ways[0]!.fits === 'not-known' ? undefined : ways[0]
}

function powerThen({
  kva,
  left: { coils, engine },
}: {
  readonly kva: number
  readonly left: PowerLeft
}): string {
  const less = [
    ...(coils < 0.995 ? [`the coils give ${percent(coils)} of it as they are joined then`] : []),
    ...(engine < 0.995 ? [`the engine gives ${percent(engine)} of it at its speed`] : []),
  ]
  if (less.length === 0) return `It gives ${kva} kVA as now.`
  return `It gives ${Number((kva * Math.min(coils, engine)).toPrecision(3))} kVA in the place of ${kva}: ${less.join(', ')}.`
}

/** `share`: the largest breaker, of the full-load amps. */
function breakerOf({
  from,
  to,
  kva,
  left,
  share,
}: {
  readonly from: Supply
  readonly to: Supply
  readonly kva: number
  readonly left: PowerLeft
  readonly share: number
}) {
  const amps = ({ kind, volts }: Supply, of: number) =>
    (1000 * of) / volts / (kind.startsWith('three-phase') ? Math.sqrt(3) : 1)
  const afterKva = kva * Math.min(left.coils, left.engine)
  const [nowAmps, afterAmps] = [amps(from, kva), amps(to, afterKva)]
  return { afterKva, nowAmps, afterAmps, nowMost: share * nowAmps, afterMost: share * afterAmps }
}

function linkStep(ways: readonly WayOfLinking[], to: Supply): SupplyMove['steps'][number] {
  const [best] = ways
  const what = 'Links'
  if (best === undefined) {
    return {
      what,
      says: `No way of joining these leads gives ${to.name}: the winding would have to be another.`,
    }
  }
  if (best.fits === 'not-known' && ways.length > 1) {
    const each = ways.map(({ name, emfV }) => `${name.toLowerCase()} with ${volts(emfV)} a coil`)
    return {
      what,
      says: `It is given by ${each.join(', or ')}: which of them, the volts decide that a coil is made for. Then move the regulator’s leads too.`,
    }
  }
  const fits =
    best.fits === 'more-flux'
      ? ` Each coil would stand at ${volts(best.emfV)}, ${best.flux!.toFixed(2)} times the flux it is made for: only with the maker’s word, and for less power.`
      : best.fits === 'less-flux'
        ? ` Each coil would stand at ${volts(best.emfV)}, ${best.flux!.toFixed(2)} times the flux it is made for: its iron is worked less, which does no harm; ask whether the regulator goes so low. Where volts are lower than made for, so is the power.`
        : best.fits === 'not-known'
          ? ` Each coil must stand at ${volts(best.emfV)}: whether it may, its plate says.`
          : ''
  return {
    what,
    says: `${best.name}: ${best.joined}; ${best.lines}.${fits} Then move the regulator’s leads too.`,
  }
}

function speedStep({
  from,
  to,
  speed,
}: {
  readonly from: Supply
  readonly to: Supply
  readonly speed: SupplyMove['rpm']
}): SupplyMove['steps'][number] {
  const what = 'Speed'
  if (from.hertz === to.hertz) return { what, says: `Stays as it is: ${to.hertz} Hz either way.` }
  const said =
    speed === null
      ? `${to.hertz} Hz in the place of ${from.hertz}`
      : `${speed.after} rpm in the place of ${speed.now}`
  const ratio = to.hertz / from.hertz
  const hangs =
    ratio > 1
      ? `everything turns ${percent(ratio - 1)} faster: only if the engine is rated at that speed. Governor spring or card, overspeed trip, water pump, mounts and exhaust are judged anew`
      : `the engine gives about ${percent(1 - ratio)} less, and its water pump and fan carry less. Whether it may run there under load the engine’s maker says`
  return { what, says: `${said}; ${hangs}.` }
}

function regulatorStep(to: Supply): SupplyMove['steps'][number] {
  const knee = to.hertz === 60 ? '57 to 58' : '47 to 48'
  return {
    what: 'Regulator',
    says: `Set to the new volts at its own leads; the switch or bridge for ${to.hertz} Hz set, so that volts fall below about ${knee} Hz (practice) and not at speed. A set that is excited by a capacitor has no regulator: its capacitor and its volts belong to one speed, and another needs the maker’s word.`,
  }
}

/**
 * Loads made for the old supply on the new one. Heat goes with volts squared, an induction motor's speed with frequency, what
 * it drives with the speed cubed, the flux of its iron with volts over frequency. Derived.
 */
function loadsAfter(from: Supply, to: Supply): readonly LoadAfter[] {
  const nearest = nearestVolts(from, to)
  const ratio = nearest / loadVolts(from)
  const [heat, speed] = [ratio ** 2, to.hertz / from.hertz]
  const flux = ratio / speed
  const sameVolts = Math.abs(ratio - 1) < 0.1
  const at = `at ${nearest} V`
  return [
    {
      load: 'Chargers, computers and lamps marked 100–240 V, 50/60 Hz',
      verdict: 'goes on',
      says: 'Only plug and breaker change. The mark on each one decides, not its kind.',
    },
    {
      load: 'Heaters, kettles, hobs without electronics, water heaters',
      verdict: sameVolts ? 'goes on' : 'does not',
      says: `${at} ${times(heat)} the heat${heat > 1.05 ? '; see that element, wire and breaker bear it' : heat < 0.5 ? ', which is too little to be of use' : ''}. Frequency does not matter to them.`,
    },
    {
      load: 'Pumps, fans and compressors with induction motors',
      verdict: sameVolts && speed === 1 ? 'goes on' : sameVolts ? 'its plate decides' : 'does not',
      says:
        speed === 1 && sameVolts
          ? 'They run as before.'
          : `They turn at ${times(speed)} the speed and ask for up to ${times(speed ** 3)} the power, with ${times(flux)} the flux${flux > 1.05 ? ': they run hot' : ''}. Only where the plate names both.`,
    },
    {
      load: 'Air conditioning, refrigerators, dive and water-making pumps',
      verdict: sameVolts && speed === 1 ? 'goes on' : 'its plate decides',
      says: 'As other motors; refrigerant pressures change with the speed as well. Without both on the plate it does not go on.',
    },
    {
      load: 'Transformers, also those for isolation from shore',
      verdict: flux > 1.05 ? 'its plate decides' : sameVolts ? 'goes on' : 'its plate decides',
      says: `They see ${times(flux)} the flux${flux > 1.05 ? ': one made for 60 Hz alone saturates at 50 Hz and overheats' : ''}.`,
    },
    {
      load: 'Microwave ovens, clocks, washing machines',
      verdict: sameVolts && speed === 1 ? 'goes on' : 'its plate decides',
      says: 'Iron and timers made for one frequency; seldom marked for both.',
    },
    {
      load: 'Sockets, plugs, residual-current devices, inverter and shore inlet',
      verdict: sameVolts && speed === 1 && from.kind === to.kind ? 'goes on' : 'does not',
      says: 'Of the other system in kind and in the number of poles. An inverter gives what it was bought for.',
    },
  ]
}

/** What a load between line and neutral was made for; of three wires with 240 V, the whole. [V] */
function loadVolts({ kind, volts }: Supply): number {
  return kind === 'three-phase-neutral' ? Math.round(volts / Math.sqrt(3)) : volts
}

/** Of what the new supply offers, the volts nearest to what the loads were made for. [V] */
function nearestVolts(from: Supply, to: Supply): number {
  const offered =
    to.kind === 'three-wire'
      ? [to.volts, to.volts / 2]
      : to.kind === 'three-phase-neutral'
        ? [to.volts, Math.round(to.volts / Math.sqrt(3))]
        : [to.volts]
  const wanted = loadVolts(from)
  return [...offered].sort((a, b) => Math.abs(Math.log(a / wanted)) - Math.abs(Math.log(b / wanted)))[0]!
}

function insteadOf(from: Supply): string {
  const shore = (amps: number, volts: number) => ((amps * volts * shoreShare) / 1000).toFixed(1)
  return [
    `Or leave the set, its links and everything aboard at ${from.name}, and take the other system only from shore, through chargers marked for both (100–240 V, 50/60 Hz) and the inverter that is aboard.`,
    `Drawn for hours at ${percent(shoreShare)} of its amps, an inlet of 30 A at 120 V brings ${shore(30, 120)} kVA and one of 16 A at 230 V ${shore(16, 230)} kVA; the batteries even out the rest.`,
    'Nothing in the machine is undone, and what is aboard keeps its volts: mostly the cheaper way, and the one with the least that can be linked wrongly.',
  ].join(' ')
}

function volts(value: number): string {
  return `${value.toFixed(1).replace(/\.0$/, '')} V`
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`
}

function times(ratio: number): string {
  return `${ratio.toFixed(2).replace(/0$/, '').replace(/\.0$/, '')} times`
}
