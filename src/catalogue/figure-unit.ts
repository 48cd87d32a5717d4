/**
 * The unit of a figure, from its path.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'
import { valueAt } from './path.js'

/** Money is put in for `$`, the unit of a clock for `@`. The first that fits holds. */
const rules: readonly (readonly [RegExp, string])[] = [
  [/\.ratePerHour\./, '$/h'],
  [/\.scrapPerKg$/, '$/kg'],
  [/\.(?:dock|remote)Price\./, '$/l'],
  [/\.price\.|\.shopCharge\.|\.fee\.|\.callOut\.|\.salvage\.parts\./, '$'],
  [/\.installation\.(?:materials|lifting|haulOut|cutAccess)\./, '$'],
  [/\.(?:priceAt1KW|floor|notRunningFloor|boatGainsByRunningOldSet)$/, '$'],
  [/\.modes\.[^.]+\.scale$|\.warning\.median$/, '@'],
  [/\.scaleHours$|\.withinHours$|\.everyHours$|\.medianHours$|\.ordinaryIntervalHours$/, 'h'],
  [/\.hoursPerYear\.|\.usualHoursPerYear$/, 'h/y'],
  [/\.hoursPerStart$/, 'h/start'],
  [/\.lossPerYear$/, '1/y'],
  [/\.lossPerExtraHour$/, '1/h'],
  [/\.(?:hours|setUpHours)\.|\.\w*Hours\.\w+$/, 'h'],
  [/\.everyYears$|\.supportYears\./, 'y'],
  [/\.leadDays\.|\.days\./, 'd'],
  [/\.minutes$/, 'min'],
  [/\.(?:ratingKW|referenceKW|upToKW)$/, 'kW'],
  [/\.(?:insideMm|lengthMm|widthMm|heightMm)$/, 'mm'],
  [/\.(?:kgPerKW|copperKgPerKW)$/, 'kg/kW'],
  [/\.fixedKg$/, 'kg'],
  [/\.litresPerMinutePerKW\.|\.exchangerLeast\./, 'l/min/kW'],
  [/\.litresPerHourPer(?:Rated|Load)KW$/, 'l/h/kW'],
  [/\.volts$/, 'V'],
  [/\.(?:lockedRotorA|amps)$/, 'A'],
  [/\.runW$/, 'W'],
  [/\.horsepower$/, 'hp'],
  [/KVAPerHp$/, 'kVA/hp'],
  [/\.startSeconds$/, 's'],
  [/\.onMinutes$/, 'min'],
  [/\.cyclesPerHourAtHalf$/, '1/h'],
  [/\.perDegree$/, '1/K'],
  [/\.loads\.[^.]+\.hours\.|\.occasions\.[^.]+\.hours$|\.setHours\./, 'h/d'],
  [/\.dayShares\./, '1'],
  [/\.(?:outsideC|dutyReferenceC|temperatureC|chargeCoolantC|aboveC|engineSpaceMostC)$/, '°C'],
  [/\.(?:pressureKPa|naturalKPa|turboKPa)$/, 'kPa'],
  [/Bar(?:\.\w+)?$/, 'bar'],
  [/\.(?:stepK|riseK|exchangerRiseK)$|\.classRiseK\./, 'K'],
  [/\.(?:aboveM|stepM)$/, 'm'],
  [/Seconds$/, 's'],
  [/KJPerKgK$/, 'kJ/kg/K'],
  [/KgPerM3$/, 'kg/m³'],
  [/KWhPerLitre$/, 'kWh/l'],
  [/MPerS$/, 'm/s'],
  [/\.sizing\./, '1'],
  [/\.phases$/, 'phases'],
  [/[dD]uty(?:Swing)?(?:\.\w+)?$|[pP]owerFactor(?:\.\w+)*$|LogSd$|\.hardShare$|FullLoad\.\w+$/, '1'],
  [/KPa\./, 'kPa'],
  [/C\.(?:low|typical|high)$|LimitC$/, '°C'],
  [/(?:^|\.)(?:year|priceYear)$/, 'year'],
  [/(?:Chance|Share|Factor|Exponent|exponent|Sd|Diligence|Alarm|Spread|Saves|Kind)$/, '1'],
  [/\.(?:chance|detects|stops|derates|shape|takesAway|below|notRunningShare|shareOfNew)$/, '1'],
  [/\.(?:shareOfPartHours|falseAlarm|caughtByChecklistAndLoadTest)$/, '1'],
  [/\.factor(?:\.(?:low|typical|high))?$|Factor\.(?:low|high)$/, '1'],
  [/\.hatchTooSmallChance\./, '1'],
  [/\.usualMonths$/, 'month'],
  [/\.visits\.|\.share$/, '1'],
  [/\.repairQuality\./, '1'],
  [/\.links\.windings\..*\.degrees$/, '°'],
  [/\.links\.supplies\.[^.]+\.volts$/, 'V'],
  [/\.links\.supplies\.[^.]+\.hertz$/, 'Hz'],
]

/**
 * Unit of the figure at a path: `h`, `y`, `start`, `relinking`, a currency, `1` for a bare number and so on.
 *
 * @throws RangeError if no rule knows the path.
 */
export function unitOf(catalogue: Catalogue, path: string): string {
  const limit = catalogue.limits.find(({ id }) => path === `limits.${id}.value`)
  if (limit !== undefined) return limit.unit
  const unit = rules.find(([pattern]) => pattern.test(`.${path}`))?.[1]
  if (unit === undefined) throw new RangeError(`path must be one of a figure; found ${path}`)
  if (unit === '@') return clockUnit(catalogue, path)
  return unit.replace('$', catalogue.wholeSet.money.currency)
}

function clockUnit(catalogue: Catalogue, path: string): string {
  const clock = valueAt(catalogue, path.replace(/\.[^.]+$/, '.clock'))
  const units: Readonly<Record<string, string>> = {
    hours: 'h',
    years: 'y',
    starts: 'start',
    relinkings: 'relinking',
  }
  return units[String(clock)] ?? '1'
}
