/**
 * Single numbers and small tables of the model that belong to the boat as a whole, its candidates and its dangers.
 *
 * @module
 */

import { Amounts } from './amounts'
import { countOf, double, doubles } from './sections'

export let horizonYears: f64 = 0
export let interest: f64 = 0
export let lowLoadShare: f64 = 0
export let fuelPerHour: f64 = 0
export let upkeepPerYear: f64 = 0
export let boatLogSd: f64 = 0
export let setLogSd: f64 = 0

/** Hands. */
export let hoursPerDay: f64 = 0
export let ownPerHour: f64 = 0
export let paidPerHour: f64 = 0
export let perTrip: f64 = 0
export let overrunMedian: f64 = 0
export let overrunLogSd: f64 = 0
export let ownerAccessFactor: f64 = 0
export let accessHours = changetype<StaticArray<f64>>(0)

/** Faults that work puts in. */
export let testsCatch: f64 = 0
export let intrusionShape: f64 = 0
export let intrusionScaleHours: f64 = 0

export let fittingOutShare: f64 = 0
export let restChance: f64 = 0
export let looksPerLog = changetype<StaticArray<f64>>(0)

/** What a day without power costs. */
export let curveDays = changetype<StaticArray<f64>>(0)
export let curveCost = changetype<StaticArray<f64>>(0)
export let curvePoints: i32 = 0
/** Price of one more day at the long end of the curve. */
export let lastSlope: f64 = 0
export let powerByMonth = changetype<StaticArray<f64>>(0)

export let dangerChance = changetype<StaticArray<f64>>(0)
export let dangerCount: i32 = 0

/** The present set, and what it leaves behind. */
export let setAgeYears: f64 = 0
export let salvageAtReplacement: f64 = 0
export let giveUpCost = changetype<Amounts>(0)
export let giveUpPerYear: f64 = 0
export let giveUpDaysPerYear: f64 = 0

/** Of the present set at 0, of candidate c at c + 1. A share below nought: nothing is got for it. */
export let resaleNewPrice = changetype<StaticArray<f64>>(0)
export let resaleShare = changetype<StaticArray<f64>>(0)
export let resaleFallPerYear = changetype<StaticArray<f64>>(0)
export let resaleLeast = changetype<StaticArray<f64>>(0)
export let resaleDeadShare = changetype<StaticArray<f64>>(0)

/** Of each candidate. */
export let price = changetype<Amounts>(0)
export let install = changetype<Amounts>(0)
export let leadDays = changetype<Amounts>(0)
export let installDays = changetype<Amounts>(0)
export let candidateFuelPerHour = changetype<StaticArray<f64>>(0)
export let partPriceFactor = changetype<StaticArray<f64>>(0)
export let labourFactor = changetype<StaticArray<f64>>(0)
export let candidateLowLoadShare = changetype<StaticArray<f64>>(0)
export let guaranteeYears = changetype<StaticArray<f64>>(0)
export let usedYears = changetype<StaticArray<f64>>(0)
export let infantFaults = changetype<StaticArray<f64>>(0)
export let hourLifeFactor = changetype<StaticArray<f64>>(0)

export function readModel(): void {
  horizonYears = double('horizonYears')
  interest = double('interest')
  lowLoadShare = double('lowLoadShare')
  fuelPerHour = double('fuelPerHour')
  upkeepPerYear = double('upkeepPerYear')
  boatLogSd = double('boatLogSd')
  setLogSd = double('setLogSd')
  readWork()
  readPower()
  dangerChance = doubles('dangerChance')
  dangerCount = countOf('dangerChance')
  setAgeYears = double('setAgeYears')
  salvageAtReplacement = double('salvageAtReplacement')
  giveUpCost = new Amounts('giveUp.cost')
  giveUpPerYear = double('giveUp.perYear')
  giveUpDaysPerYear = double('giveUp.daysPerYear')
  readCandidates()
}

function readWork(): void {
  hoursPerDay = double('labour.hoursPerDay')
  ownPerHour = double('labour.ownPerHour')
  paidPerHour = double('labour.paidPerHour')
  perTrip = double('labour.perTrip')
  overrunMedian = double('labour.overrunMedian')
  overrunLogSd = double('labour.overrunLogSd')
  ownerAccessFactor = double('labour.ownerAccessFactor')
  accessHours = doubles('accessHours')
  testsCatch = double('intrusion.testsCatch')
  intrusionShape = double('intrusion.shape')
  intrusionScaleHours = double('intrusion.scaleHours')
  fittingOutShare = double('care.fittingOutShare')
  restChance = double('care.restChance')
  looksPerLog = doubles('looksPerLog')
}

function readPower(): void {
  curveDays = doubles('power.days')
  curveCost = doubles('power.cost')
  curvePoints = countOf('power.days')
  powerByMonth = doubles('power.byMonth')
  const last = curvePoints - 1
  const days = last > 0 ? curveDays[last - 1] : 0
  const cost = last > 0 ? curveCost[last - 1] : 0
  lastSlope = curveDays[last] > days ? (curveCost[last] - cost) / (curveDays[last] - days) : 0
}

function readCandidates(): void {
  resaleNewPrice = doubles('resale.newPrice')
  resaleShare = doubles('resale.share')
  resaleFallPerYear = doubles('resale.fallPerYear')
  resaleLeast = doubles('resale.least')
  resaleDeadShare = doubles('resale.deadShare')
  price = new Amounts('candidates.price')
  install = new Amounts('candidates.install')
  leadDays = new Amounts('candidates.leadDays')
  installDays = new Amounts('candidates.installDays')
  candidateFuelPerHour = doubles('candidates.fuelPerHour')
  partPriceFactor = doubles('candidates.partPriceFactor')
  labourFactor = doubles('candidates.labourFactor')
  candidateLowLoadShare = doubles('candidates.lowLoadShare')
  guaranteeYears = doubles('candidates.guaranteeYears')
  usedYears = doubles('candidates.usedYears')
  infantFaults = doubles('candidates.infantFaults')
  hourLifeFactor = doubles('candidates.hourLifeFactor')
}
