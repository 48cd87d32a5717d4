/**
 * Columns of the parts.
 *
 * @module
 */

import { bytes, countOf, doubles, integers } from './sections'

export let presentQuality = changetype<StaticArray<f64>>(0)
export let modeFrom = changetype<StaticArray<i32>>(0)
export let repair = changetype<StaticArray<i32>>(0)
export let accessLow = changetype<StaticArray<i32>>(0)
export let accessHigh = changetype<StaticArray<i32>>(0)
export let serviced = changetype<StaticArray<u8>>(0)
export let serviceHours = changetype<StaticArray<f64>>(0)
export let serviceYears = changetype<StaticArray<f64>>(0)
export let serviceDiligence = changetype<StaticArray<f64>>(0)
export let serviceRenews = changetype<StaticArray<u8>>(0)
export let servicePrice = changetype<StaticArray<f64>>(0)
export let serviceWork = changetype<StaticArray<f64>>(0)
export let serviceByOwner = changetype<StaticArray<u8>>(0)
export let clearsFrom = changetype<StaticArray<i32>>(0)
export let clearsMode = changetype<StaticArray<i32>>(0)
export let broken = changetype<StaticArray<i32>>(0)
export let nearFrom = changetype<StaticArray<i32>>(0)
export let nearPart = changetype<StaticArray<i32>>(0)
export let count: i32 = 0

export function readParts(): void {
  presentQuality = doubles('parts.presentQuality')
  modeFrom = integers('parts.modeFrom')
  repair = integers('parts.repair')
  accessLow = integers('parts.accessLow')
  accessHigh = integers('parts.accessHigh')
  serviced = bytes('parts.serviced')
  serviceHours = doubles('parts.serviceHours')
  serviceYears = doubles('parts.serviceYears')
  serviceDiligence = doubles('parts.serviceDiligence')
  serviceRenews = bytes('parts.serviceRenews')
  servicePrice = doubles('parts.servicePrice')
  serviceWork = doubles('parts.serviceWork')
  serviceByOwner = bytes('parts.serviceByOwner')
  clearsFrom = integers('parts.clearsFrom')
  clearsMode = integers('parts.clearsMode')
  broken = integers('parts.broken')
  nearFrom = integers('parts.nearFrom')
  nearPart = integers('parts.nearPart')
  count = countOf('parts.repair')
}
