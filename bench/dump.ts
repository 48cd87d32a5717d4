/**
 * A compiled model as one flat file for the programs in C.
 *
 * Layout, little-endian: sections one after another, each a name of 24 bytes (padded with zero bytes), the count of
 * numbers (u32), their kind (u32: 0 f64, 1 i32, 2 f32, 3 u8), then the numbers, padded to 8 bytes. Sections are
 * named after the columns they hold (`modes.shape`, `parts.broken` …); `scalars` stands in the order below.
 *
 * @module
 */

import { writeFileSync } from 'node:fs'
import { type Amounts, normalTable } from '../src/alternatives/amounts.js'
import type { Program } from '../src/alternatives/program.js'

type Column = Float64Array | Int32Array | Uint32Array | Float32Array | Uint8Array | Uint16Array

/** Writes a program and the posterior in it. */
export function dumpProgram(program: Program, path: string): void {
  const { modes, parts, repairs, use, posterior, model } = program
  const sections: Record<string, Column> = {
    scalars: Float64Array.from(scalars(program)),
    normal: normalTable,
    looksPerLog: program.looksPerLog,
    accessHours: program.accessHours,
    isWorn: program.isWorn,
    dangerChance: program.dangerChance,
    byMonth: Float64Array.from(model.powerLoss.byMonth),
    curveDays: Float64Array.from(model.powerLoss.curve, ({ days }) => days),
    curveCost: Float64Array.from(model.powerLoss.curve, ({ cost }) => cost),
    'use.hourMonth': use.hourMonths.month,
    'use.startMonth': use.startMonths.month,
    ...columnsOf('modes', modes),
    ...columnsOf('parts', parts),
    ...columnsOf('use', use),
    ...columnsOf('post', posterior),
    ...columnsOf('rep', repairs),
  }
  writeFileSync(path, Buffer.concat(Object.entries(sections).map(([name, values]) => section(name, values))))
}

function scalars({ model, use, modes, parts, posterior }: Program): number[] {
  const { labour, intrusion, care, set, setFactor } = model
  const { resale } = set
  return [
    ...[model.horizonYears, model.realInterestPerYear, model.use.lowLoadShare],
    ...[model.fuelPerHour, model.upkeepPerYear],
    ...[labour.hoursPerDay, labour.ownPerHour, labour.paidPerHour, labour.perTrip],
    ...[labour.overrun.median, labour.overrun.logSd, labour.ownerAccessFactor],
    ...[intrusion.testsCatch, intrusion.onset.shape, intrusion.onset.scaleHours],
    ...[care.fittingOutShare, care.restChance, set.ageYears],
    ...[resale?.newPrice ?? 0, resale?.share ?? 0, resale?.fallPerYear ?? 0],
    ...[resale?.least ?? 0, resale?.deadShare ?? 0],
    ...[use.hoursPerYear, use.horizonMonth, use.hourMonths.perUnit, use.startMonths.perUnit],
    ...[modes.count, parts.count, posterior.kappaLog.length],
    ...[setFactor.boatLogSd, setFactor.setLogSd, model.powerLoss.curve.length, use.time.length],
  ]
}

/** Every column of a record, and of the amounts in it, by its name. */
function columnsOf(prefix: string, record: object): Record<string, Column> {
  const found: Record<string, Column> = {}
  for (const [name, value] of Object.entries(record)) {
    if (isAmounts(value)) Object.assign(found, columnsOf(`${prefix}.${name}`, value))
    else if (ArrayBuffer.isView(value)) found[`${prefix}.${name}`] = value as Column
  }
  return found
}

function isAmounts(value: unknown): value is Amounts {
  return typeof value === 'object' && value !== null && 'level' in value
}

function section(name: string, values: Column): Buffer {
  const column =
    values instanceof Uint16Array || values instanceof Uint32Array ? Int32Array.from(values) : values
  const kind = [Float64Array, Int32Array, Float32Array, Uint8Array].findIndex(
    (type) => column instanceof type,
  )
  const head = Buffer.alloc(32)
  head.write(name, 0, 'ascii')
  head.writeUInt32LE(column.length, 24)
  head.writeUInt32LE(kind, 28)
  const body = Buffer.from(column.buffer, column.byteOffset, column.byteLength)
  return Buffer.concat([head, body, Buffer.alloc((8 - (body.length % 8)) % 8)])
}
