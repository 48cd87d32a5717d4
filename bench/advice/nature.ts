/**
 * What is true of one boat: a life model with her true prices and use, how her lives are spread, and her scales.
 *
 * @module
 */

import type { Amount, LifeModel } from '../../src/forecast/life-model.js'
import { detectionAt, gammaOf } from '../../test/slow/random.js'
import { exponential, type Name, normal } from './chance.js'

export interface Nature {
  readonly seed: number
  /** Prices, waits, use and care as they are; scales as listed, before what is this boat's own. */
  readonly model: LifeModel
  readonly law: 'weibull' | 'lognormal'
  /** Factor on every onset against the list. */
  readonly level: number
  /** ln of the boat's part of all scales. */
  readonly boatLog: number
  /** Age of the set now, every part of it fitted on its first day. [years] */
  readonly ageYears: number
  /** Running hours a year until now; from now on those of the model. */
  readonly pastHoursPerYear: number
  /** The log goes so far back. [years] */
  readonly logYears: number
}

/** A failure mode as the world plays it. */
export interface PlainMode {
  readonly id: string
  readonly part: number
  readonly byHours: boolean
  readonly shape: number
  readonly onsetScale: number
  readonly logSd: number
  /** From onset to failure on the mode's own clock; none: at once. */
  readonly delay: { readonly median: number; readonly logSd: number } | null
  readonly stops: boolean
  readonly checks: readonly {
    readonly id: string
    readonly every: number
    readonly detection: number
    readonly diligence: number
  }[]
  readonly links: readonly {
    readonly part: number
    readonly mode: number
    readonly chance: number
    readonly startsDefect: boolean
  }[]
}

/** The modes of a model, all parts' in order. */
export function plainModes(model: LifeModel): PlainMode[] {
  refuseOthers(model)
  const yearly = hoursPerYear(model)
  const partAt = new Map(model.parts.map(({ id }, p) => [id, p]))
  const keys = model.parts.flatMap((part) => part.modes.map((mode) => `${part.id} ${mode.id}`))
  const careOf = new Map(model.checks.map((check) => [check.id, check]))
  return model.parts.flatMap((part, p) =>
    part.modes.map((mode): PlainMode => {
      const { delay, shape, scale } = mode
      const lognormalDelay = delay !== undefined && 'median' in delay ? delay : null
      const meanLife = scale * gammaOf(1 + 1 / shape)
      const meanDelay =
        lognormalDelay === null ? 0 : lognormalDelay.median * Math.exp(lognormalDelay.logSd ** 2 / 2)
      return {
        id: mode.id,
        part: p,
        byHours: mode.clock === 'hours',
        shape,
        onsetScale: (scale * Math.max(meanLife - meanDelay, meanLife / 2)) / meanLife,
        logSd: mode.logSd,
        delay: lognormalDelay,
        stops: mode.stops === 1,
        checks: mode.checks.map(({ check, detection }) => {
          const care = careOf.get(check)!
          return { id: check, every: Math.min(care.everyHours, yearly), detection, diligence: care.diligence }
        }),
        links: mode.links.map((link) => ({
          part: partAt.get(link.part)!,
          mode: keys.indexOf(`${link.part} ${link.mode}`),
          chance: link.chance,
          startsDefect: link.effect === 'starts-defect',
        })),
      }
    }),
  )
}

export function hoursPerYear(model: LifeModel): number {
  return model.use.hoursByMonth.reduce((sum, hours) => sum + hours, 0)
}

/** The world leaves out what would make it long; a model that asks for it is refused. */
function refuseOthers(model: LifeModel): void {
  const { hoursByMonth, startsByMonth, powerNeededByMonth } = model.use
  const even = (months: readonly number[]) => months.every((one) => one === months[0])
  const plain =
    even(hoursByMonth) &&
    hoursByMonth[0]! > 0 &&
    even(powerNeededByMonth) &&
    even(model.powerLoss.byMonth) &&
    startsByMonth.every((starts) => starts === 0) &&
    model.fuelPerHour === 0 &&
    model.upkeepPerYear === 0 &&
    model.access.every(({ includes }) => includes.length === 0) &&
    model.candidates.every(
      ({ used, hourLifeFactor, partPriceFactor, labourFactor, fuelPerHour }) =>
        used === undefined &&
        fuelPerHour === undefined &&
        hourLifeFactor * partPriceFactor * labourFactor === 1,
    ) &&
    model.parts.every(({ service, modes }) => service === undefined && modes.every(isPlain))
  if (!plain) throw new Error('model must be plain: even use, no services, no hidden modes; found another')
}

function isPlain(mode: LifeModel['parts'][number]['modes'][number]): boolean {
  const { clock, delay, remedy, links, wear, hidden, soot, stops } = mode
  return (
    clock !== 'starts' &&
    (delay === undefined || ('median' in delay && delay.clock === clock)) &&
    remedy.outcome === 'renewed' &&
    remedy.repair === undefined &&
    links.every((link) => link.guard === undefined && link.mode !== undefined) &&
    wear.length === 0 &&
    !hidden &&
    soot === 1 &&
    (stops === 0 || stops === 1)
  )
}

/** ln of the factor on each mode's onset: of the set aboard now by the boat, of later ones by their life. */
export function scaleLogs(
  nature: Nature,
  modes: readonly PlainMode[],
  of: { readonly set: number; readonly life: number },
): Float64Array {
  const name: Name = of.set === 0 ? [nature.seed, 1, 0] : [nature.seed, 1, of.set, of.life]
  const shared =
    nature.boatLog + Math.log(nature.level) + nature.model.setFactor.setLogSd * normal([...name, 0])
  return Float64Array.from(modes, ({ logSd }, m) => shared + logSd * normal([...name, 1, m]))
}

/** How a life is spread: Weibull, or the lognormal of the same mean and variation. In units of the onset's scale. */
export function lifeOf(law: Nature['law'], shape: number, name: Name): number {
  if (law === 'weibull') return exponential(name) ** (1 / shape)
  const mean = gammaOf(1 + 1 / shape)
  const square = gammaOf(1 + 2 / shape)
  const logSd = Math.sqrt(Math.log(square / mean ** 2))
  return mean * Math.exp(logSd * normal(name) - logSd ** 2 / 2)
}

const detectionPlaces = 512
const detections = new Map<number, Float64Array>()

/** How good a check is at one defect: a quantile of Beta(2d, 2(1 − d)), by the middle of one of 512 slices. */
export function detectionOf(mean: number, quantile: number): number {
  let table = detections.get(mean)
  if (table === undefined) {
    table = Float64Array.from({ length: detectionPlaces }, (_, i) =>
      detectionAt(mean, (i + 0.5) / detectionPlaces),
    )
    detections.set(mean, table)
  }
  return table[Math.floor(quantile * detectionPlaces)]!
}

export function drawn(amount: Amount, name: Name): number {
  if (typeof amount === 'number') return amount
  if ('exponentialMean' in amount) return amount.exponentialMean * exponential(name)
  return amount.median * Math.exp(amount.logSd * normal(name))
}
