/**
 * Columns of the repairs.
 *
 * @module
 */

import { Amounts } from './amounts'
import { bytes, doubles, integers } from './sections'

export let price = changetype<Amounts>(0)
export let hours = changetype<StaticArray<f64>>(0)
export let byOwner = changetype<StaticArray<u8>>(0)
export let trips = changetype<StaticArray<f64>>(0)
export let workshop = changetype<Amounts>(0)
export let wrongPart = changetype<StaticArray<f64>>(0)
export let intrusion = changetype<StaticArray<f64>>(0)
export let lastLikelier = changetype<StaticArray<f64>>(0)
export let supplyFrom = changetype<StaticArray<i32>>(0)
export let supplyChance = changetype<StaticArray<f64>>(0)
export let supplyDays = changetype<Amounts>(0)
export let supplyPrice = changetype<StaticArray<f64>>(0)
export let supplyQuality = changetype<StaticArray<f64>>(0)

export function readRepairs(): void {
  price = new Amounts('repairs.price')
  hours = doubles('repairs.hours')
  byOwner = bytes('repairs.byOwner')
  trips = doubles('repairs.trips')
  workshop = new Amounts('repairs.workshop')
  wrongPart = doubles('repairs.wrongPart')
  intrusion = doubles('repairs.intrusion')
  lastLikelier = doubles('repairs.lastLikelier')
  supplyFrom = integers('repairs.supplyFrom')
  supplyChance = doubles('repairs.supplyChance')
  supplyDays = new Amounts('repairs.supplyDays')
  supplyPrice = doubles('repairs.supplyPrice')
  supplyQuality = doubles('repairs.supplyQuality')
}
