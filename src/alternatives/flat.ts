/**
 * A compiled model laid out flat, as the simulator's kernel reads it.
 *
 * Sections one after another, little-endian: a name of 32 bytes padded with zeros, the count of numbers (u32), the
 * bytes that the numbers take, padded to 8 (u32), then the numbers. Eight bytes of zeros end them.
 *
 * @module
 */

import type { Alternative, Candidate, LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { type Amounts, amountsOf, normalTable } from './amounts.js'
import { GIVE_UP, GIVE_UP_ABOVE, LEAVE, MEND, NO_LIMIT, REPLACE } from './codes.js'
import { outcomeCode, type Program, rowStarts } from './program.js'

type Column = Float64Array | Float32Array | Int32Array | Uint32Array | Uint8Array | Uint16Array
/** Columns by the names of their sections. */
export type Sections = Readonly<Record<string, Column>>

const nameBytes = 32
const headBytes = 40
const aligned = (bytes: number): number => Math.ceil(bytes / 8) * 8

/** Bytes that the sections take. */
export function flatSize(sections: Sections): number {
  return Object.values(sections).reduce((sum, column) => sum + headBytes + aligned(column.byteLength), 8)
}

/** Writes the sections into `memory` from `at`, a multiple of 8, on. */
export function writeFlat(sections: Sections, memory: ArrayBuffer, at: number): void {
  const bytes = new Uint8Array(memory)
  const view = new DataView(memory)
  let here = at
  for (const [name, column] of Object.entries(sections)) {
    if (name.length > nameBytes) throw new Error(`name must be at most ${nameBytes} letters; found ${name}`)
    bytes.fill(0, here, here + headBytes)
    for (let i = 0; i < name.length; i++) bytes[here + i] = name.charCodeAt(i)
    view.setUint32(here + nameBytes, column.length, true)
    view.setUint32(here + nameBytes + 4, aligned(column.byteLength), true)
    bytes.set(new Uint8Array(column.buffer, column.byteOffset, column.byteLength), here + headBytes)
    here += headBytes + aligned(column.byteLength)
  }
  bytes.fill(0, here, here + 8)
}

const doubles = (values: Iterable<number>): Float64Array => Float64Array.from(values)

/** Everything of a program but its alternatives and starting states. */
export function modelSections(program: Program): Sections {
  const { modes, parts, repairs, use, model } = program
  return {
    normal: normalTable,
    looksPerLog: program.looksPerLog,
    accessHours: program.accessHours,
    dangerChance: program.dangerChance,
    ...columnsOf('modes', {
      ...modes,
      isWorn: program.isWorn,
      isQuoted: program.isQuoted,
      costAtRisk: program.costAtRisk,
    }),
    ...columnsOf('parts', parts),
    ...columnsOf('repairs', repairs),
    ...columnsOf('use', use),
    'use.hoursPerYear': doubles([use.hoursPerYear]),
    'use.horizonMonth': doubles([use.horizonMonth]),
    'use.hourMonth': Int32Array.from(use.hourMonths.month),
    'use.hourMonthsPerUnit': doubles([use.hourMonths.perUnit]),
    'use.startMonth': Int32Array.from(use.startMonths.month),
    'use.startMonthsPerUnit': doubles([use.startMonths.perUnit]),
    ...boatSections(model),
    ...candidateSections(model),
  }
}

function boatSections({
  labour,
  intrusion,
  care,
  powerLoss,
  giveUp,
  setFactor,
  ...model
}: LifeModel): Sections {
  const single: Readonly<Record<string, number>> = {
    horizonYears: model.horizonYears,
    interest: model.realInterestPerYear,
    lowLoadShare: model.use.lowLoadShare,
    fuelPerHour: model.fuelPerHour,
    upkeepPerYear: model.upkeepPerYear,
    boatLogSd: setFactor.boatLogSd,
    setLogSd: setFactor.setLogSd,
    'labour.hoursPerDay': labour.hoursPerDay,
    'labour.ownPerHour': labour.ownPerHour,
    'labour.paidPerHour': labour.paidPerHour,
    'labour.perTrip': labour.perTrip,
    'labour.overrunMedian': labour.overrun.median,
    'labour.overrunLogSd': labour.overrun.logSd,
    'labour.ownerAccessFactor': labour.ownerAccessFactor,
    'intrusion.testsCatch': intrusion.testsCatch,
    'intrusion.shape': intrusion.onset.shape,
    'intrusion.scaleHours': intrusion.onset.scaleHours,
    'care.fittingOutShare': care.fittingOutShare,
    'care.restChance': care.restChance,
    setAgeYears: model.set.ageYears,
    salvageAtReplacement: model.set.salvageAtReplacement,
    'giveUp.perYear': giveUp.costPerYear,
    'giveUp.daysPerYear': giveUp.daysWithoutPerYear,
  }
  return {
    ...Object.fromEntries(Object.entries(single).map(([name, value]) => [name, doubles([value])])),
    'power.days': doubles(powerLoss.curve.map(({ days }) => days)),
    'power.cost': doubles(powerLoss.curve.map(({ cost }) => cost)),
    'power.byMonth': doubles(powerLoss.byMonth),
    ...columnsOf('giveUp.cost', amountsOf([giveUp.costNow])),
  }
}

/** Starting states of the present set, or of a candidate that is bought used. */
export function stateSections(states: Posterior): Sections {
  return columnsOf('states', states)
}

function candidateSections(model: LifeModel): Sections {
  const { candidates } = model
  const number = (read: (candidate: Candidate) => number) => doubles(candidates.map(read))
  const resales = [model.set.resale, ...candidates.map(({ resale }) => resale ?? model.set.resale)]
  const resale = (read: (resale: NonNullable<(typeof resales)[number]>) => number, without: number) =>
    doubles(resales.map((one) => (one === undefined ? without : read(one))))
  return {
    ...columnsOf('candidates', {
      price: amountsOf(candidates.map(({ price }) => price)),
      install: amountsOf(candidates.map(({ install }) => install)),
      leadDays: amountsOf(candidates.map(({ leadDays }) => leadDays)),
      installDays: amountsOf(candidates.map(({ installDays }) => installDays)),
      fuelPerHour: number(({ fuelPerHour }) => fuelPerHour ?? model.fuelPerHour),
      partPriceFactor: number(({ partPriceFactor }) => partPriceFactor),
      labourFactor: number(({ labourFactor }) => labourFactor),
      lowLoadShare: number(({ lowLoadShare }) => lowLoadShare ?? model.use.lowLoadShare),
      guaranteeYears: number(({ guaranteeYears }) => guaranteeYears),
      usedYears: number((candidate) => candidate.used?.years ?? 0),
      infantFaults: number(({ infantFaults }) => infantFaults),
      hourLifeFactor: number(({ hourLifeFactor }) => hourLifeFactor),
    }),
    ...columnsOf('resale', {
      newPrice: resale(({ newPrice }) => newPrice, 0),
      share: resale(({ share }) => share, -1),
      fallPerYear: resale(({ fallPerYear }) => fallPerYear, 0),
      least: resale(({ least }) => least, 0),
      deadShare: resale(({ deadShare }) => deadShare, 0),
    }),
  }
}

/** Candidates that an alternative may fit, now, later or above its limit. */
export function candidatesOf({ model }: Program, { now, replaceLater, limit }: Alternative): number[] {
  const ids = [
    typeof now === 'object' && 'replaceWith' in now ? now.replaceWith : undefined,
    replaceLater?.with,
    typeof limit?.above === 'object' ? limit.above.replaceWith : undefined,
  ]
  return ids.flatMap((id) => (id === undefined ? [] : [model.candidates.findIndex((one) => one.id === id)]))
}

/** The alternatives of a program. */
export function alternativeSections(program: Program): Sections {
  const { model, alternatives, parts } = program
  const candidate = (id: string | undefined) => model.candidates.findIndex((one) => one.id === id)
  const actions = alternatives.map(({ now }) => (typeof now === 'object' && 'parts' in now ? now : undefined))
  const items = actions.map((action) => action?.parts ?? [])
  const partOf = (id: string) => model.parts.findIndex((part) => part.id === id)
  const amount = (
    read: (action: NonNullable<(typeof actions)[number]>) => Parameters<typeof amountsOf>[0][number],
  ) => amountsOf(actions.map((action) => (action === undefined ? 0 : read(action))))
  const overruns = actions.map((action) => action?.quote?.overrun ?? model.labour.overrun)
  return columnsOf('alternatives', {
    now: Uint8Array.from(alternatives, ({ now }) => actionCode(now)),
    replaceWith: Int32Array.from(alternatives, ({ now }) =>
      candidate(typeof now === 'object' && 'replaceWith' in now ? now.replaceWith : undefined),
    ),
    laterWith: Int32Array.from(alternatives, ({ replaceLater }) => candidate(replaceLater?.with)),
    laterYear: doubles(alternatives.map(({ replaceLater }) => replaceLater?.year ?? 0)),
    above: Int32Array.from(alternatives, ({ limit }) =>
      limit === undefined
        ? NO_LIMIT
        : limit.above === 'give-up'
          ? GIVE_UP_ABOVE
          : candidate(limit.above.replaceWith),
    ),
    knots: doubles(alternatives.flatMap(({ limit }) => limit?.knots ?? [0, 0, 0])),
    itemFrom: rowStarts(items),
    itemPart: Int32Array.from(items.flat(), ({ part }) => partOf(part)),
    itemMode: Int32Array.from(items.flat(), ({ part, mode }) => {
      const p = partOf(part)
      return mode === undefined
        ? -1
        : parts.modeFrom[p]! + model.parts[p]!.modes.findIndex(({ id }) => id === mode)
    }),
    itemOutcome: Uint8Array.from(items.flat(), ({ outcome }) => outcomeCode[outcome]),
    itemQuality: doubles(items.flat().map(({ quality }) => quality)),
    itemAgesLess: doubles(items.flat().map(({ agesLess }) => agesLess)),
    isQuoted: Uint8Array.from(actions, (action) => (action?.quote === undefined ? 0 : 1)),
    isPriced: Uint8Array.from(actions, (action) => ((action?.quote ?? action?.price) === undefined ? 0 : 1)),
    price: amount(({ quote, price }) => quote?.price ?? price ?? 0),
    besides: amount(({ quote }) => quote?.besides ?? 0),
    wait: amount(({ wait }) => wait),
    days: amount(({ days }) => days ?? 0),
    areDaysGiven: Uint8Array.from(actions, (action) => (action?.days === undefined ? 0 : 1)),
    overrunMedian: doubles(overruns.map(({ median }) => median)),
    overrunLogSd: doubles(overruns.map(({ logSd }) => logSd)),
    intrusionChance: doubles(actions.map((action) => action?.intrusionChance ?? 0)),
  })
}

function actionCode(now: Alternative['now']): number {
  if (now === 'leave') return LEAVE
  if (now === 'give-up') return GIVE_UP
  return 'replaceWith' in now ? REPLACE : MEND
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
