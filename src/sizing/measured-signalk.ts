/**
 * Power out of a Signal K stream, live or recorded as one message a line.
 *
 * Alternating current is told under `electrical.ac.<source>.phase.<phase>` as realPower [W], apparentPower [VA], current [A],
 * lineNeutralVoltage [V] and powerFactor; all in SI units. Source: the open specification of Signal K, quoted.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import { type Fold, openFold } from './measured-fold.js'
import type { BadRow, Measured } from './measured-table.js'

export interface SignalKOptions {
  /** Path of the source, such as `electrical.ac.genset`; left out: the only one there is. */
  readonly path?: string
  /** Of paths that tell current or apparent power alone. */
  readonly powerFactor?: number
  /** The boat's clock before universal time. [h] */
  readonly utcOffsetHours?: number
}

export interface SignalKReader {
  /** One message as text, or one line of a recording; what is no message of power is passed over. */
  take(line: string): void
  end(): Measured
  /** Moments so far. */
  readonly samples: number
}

/** What is wanted of a server: the paths to subscribe to. */
export const signalKPaths = 'electrical.ac.*'

const ofPhase =
  /^(.+)\.phase\.([A-Za-z0-9]+)\.(realPower|apparentPower|current|lineNeutralVoltage|powerFactor)$/
const mostSources = 16
const mostTold = 100

interface Source {
  readonly fold: Fold
  readonly values: Map<string, Map<string, number>>
  readonly leaves: Set<string>
  count: number
}

/** Reads messages one after another. Each source is folded by itself, so that nothing has to be known beforehand. */
export function readSignalK(options: SignalKOptions): SignalKReader {
  const sources = new Map<string, Source>()
  const bad: BadRow[] = []
  let line = 0
  let rows = 0
  let badRows = 0
  const refuse = (code: BadRow['code'], found: string) => {
    badRows++
    if (bad.length < mostTold) bad.push({ line, code, found })
  }
  const takeUpdate = (update: unknown, fallbackS: number | undefined) => {
    const { timestamp, values } = update as { timestamp?: unknown; values?: unknown }
    if (!Array.isArray(values)) return
    const touched = new Set<string>()
    for (const { path, value } of values as { path?: unknown; value?: unknown }[]) {
      const found = typeof path === 'string' ? ofPhase.exec(path) : null
      if (found === null || typeof value !== 'number') continue
      const [, name = '', phase = '', leaf = ''] = found
      if (options.path !== undefined && name !== options.path) continue
      if (!sources.has(name) && sources.size >= mostSources) continue
      const source = sources.get(name) ?? { fold: openFold(), values: new Map(), leaves: new Set(), count: 0 }
      sources.set(name, source)
      const held = source.values.get(phase) ?? new Map<string, number>()
      held.set(leaf, value)
      source.values.set(phase, held)
      source.leaves.add(leaf)
      touched.add(name)
    }
    if (touched.size === 0) return
    rows++
    const at = typeof timestamp === 'string' ? Date.parse(timestamp) / 1000 : Number.NaN
    const time = Number.isNaN(at) ? fallbackS : at
    if (time === undefined) return refuse('no-time', shown(timestamp))
    for (const name of touched) {
      const source = sources.get(name)!
      const sample = powerOf(source.values, options)
      if (sample === undefined) continue
      if (sample.kW < -0.05) refuse('negative', `${sample.kW} kW`)
      else {
        source.count++
        source.fold.add({
          time: time + 3600 * (options.utcOffsetHours ?? 0),
          ...sample,
          kW: Math.max(0, sample.kW),
        })
      }
    }
  }
  return {
    take: (text) => {
      line++
      const from = text.indexOf('{')
      if (from < 0) return text.trim() === '' ? undefined : refuse('broken', shown(text.slice(0, 60)))
      const before = /^(\d{13})\b/.exec(text)
      let message: unknown
      try {
        message = JSON.parse(text.slice(from))
      } catch {
        return refuse('broken', shown(text.slice(0, 60)))
      }
      const { updates } = message as { updates?: unknown }
      if (!Array.isArray(updates)) return
      for (const update of updates) {
        if (typeof update === 'object' && update !== null)
          takeUpdate(update, before ? Number(before[1]) / 1000 : undefined)
      }
    },
    end: () => endOf(sources, options, { rows, badRows, bad }),
    get samples() {
      return Math.max(0, ...[...sources.values()].map(({ count }) => count))
    },
  }
}

/** Power of all phases, as they stand; undefined while one of them has told too little. */
function powerOf(
  phases: ReadonlyMap<string, ReadonlyMap<string, number>>,
  { powerFactor = 1 }: SignalKOptions,
) {
  const legs = [...phases]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, held]) => {
      const current = held.get('current')
      const volts = held.get('lineNeutralVoltage')
      const va =
        held.get('apparentPower') ??
        (current === undefined || volts === undefined ? undefined : current * volts)
      const watts =
        held.get('realPower') ??
        (va === undefined ? undefined : va * Math.abs(held.get('powerFactor') ?? powerFactor))
      return { watts, va }
    })
  if (legs.length === 0 || legs.some(({ watts }) => watts === undefined)) return undefined
  const legsKW = legs.map(({ watts }) => watts! / 1000)
  const kVA = legs.some(({ va }) => va === undefined)
    ? undefined
    : legs.reduce((sum, { va }) => sum + va! / 1000, 0)
  return {
    kW: legsKW.reduce((sum, each) => sum + each, 0),
    ...(kVA === undefined ? {} : { kVA: Math.abs(kVA) }),
    ...(legsKW.length > 1 ? { legsKW } : {}),
  }
}

function endOf(
  sources: ReadonlyMap<string, Source>,
  options: SignalKOptions,
  told: { readonly rows: number; readonly badRows: number; readonly bad: readonly BadRow[] },
): Measured {
  const names = [...sources.keys()].sort()
  const [name] = names
  const refused = (found: string, allowed: string, code = 'no-power'): Measured => ({
    ok: false,
    problems: [{ code, path: 'path', found, allowed }],
    bad: told.bad,
  })
  if (name === undefined) {
    const wanted = options.path ?? 'electrical.ac.<source>'
    return refused(
      'no power in the stream',
      `messages of ${wanted}.phase.<phase>.realPower, or current and voltage`,
    )
  }
  if (names.length > 1) return refused(names.join(', '), 'one of these sources, named', 'several-sources')
  const { fold, leaves, values } = sources.get(name)!
  const folded = fold.end()
  if (folded === undefined)
    return refused(`${name} without power`, 'realPower, or apparentPower, or current and lineNeutralVoltage')
  const units: Readonly<Record<string, string>> = {
    realPower: 'W',
    apparentPower: 'VA',
    current: 'A',
    lineNeutralVoltage: 'V',
    powerFactor: '',
  }
  const onlyApparent = !leaves.has('realPower') && !leaves.has('powerFactor')
  return {
    ok: true,
    folded,
    read: {
      columns: [...leaves]
        .sort()
        .map((leaf) => ({ field: fieldOf[leaf]!, heading: `${name}.phase.*.${leaf}`, unit: units[leaf]! })),
      otherColumns: [],
      headingsOnLine: 0,
      times: 'written',
      dateOrder: 'does-not-matter',
      decimal: 'point',
      guessedUnits: [],
      assumed: [
        ...(onlyApparent ? [`no power factor was measured; ${options.powerFactor ?? 1} is taken`] : []),
        ...(options.utcOffsetHours === undefined
          ? ['its times are in universal time, and are taken for the boat’s own clock']
          : []),
        ...(values.size > 1 ? [`the power of ${values.size} phases is added up`] : []),
      ],
      ...told,
    },
  }
}

const fieldOf = {
  realPower: 'power',
  apparentPower: 'apparent',
  current: 'current',
  lineNeutralVoltage: 'volts',
  powerFactor: 'factor',
} as Readonly<Record<string, 'power' | 'apparent' | 'current' | 'volts' | 'factor'>>
