/**
 * `gensettle measured RECORDING`: what a meter, a logger or a Signal K server recorded, folded and kept; not its rows.
 *
 * @module
 */

import { byDate, currentEntries } from '../logbook/current.js'
import type { DateOrder } from '../logbook/paper-log-dates.js'
import type { DecimalMark } from '../logbook/paper-log-numbers.js'
import type { Problem } from '../logbook/problems.js'
import { particularsOf } from '../register/particulars.js'
import {
  type MeasuredField,
  type MeasuredUnit,
  measuredFields,
  unitFactors,
} from '../sizing/measured-columns.js'
import {
  chancesWhileOn,
  curveOf,
  loadAt,
  type MeasuredBody,
  measuredBody,
  type RecordedDay,
  recordedDay,
} from '../sizing/measured-summary.js'
import type { HowMeasured, MeasuredOptions } from '../sizing/measured-table.js'
import type { Store } from '../store/store.js'
import { boatToWrite, setToWrite, writeAndAsk } from './log.js'
import { type DataOption, withStore } from './opened.js'
import { today } from './places.js'
import { listenTo, readRecording } from './recording.js'
import { type Result, refuse } from './result.js'

export interface MeasuredCommand extends DataOption {
  readonly boat?: string
  readonly set?: string
  readonly of: MeasuredBody['of']
  /** "field=heading in the file" and "field=unit". */
  readonly column?: readonly string[]
  readonly unit?: readonly string[]
  readonly dates?: DateOrder
  readonly decimal?: DecimalMark
  readonly volts?: number
  readonly powerFactor?: number
  readonly utcOffset?: number
  /** Path of a Signal K source. */
  readonly path?: string
  /** How long a server is listened to. [s] */
  readonly seconds: number
  /** Read and judge, write nothing. */
  readonly check?: boolean
}

export async function measure(recording: string, command: MeasuredCommand): Promise<Result> {
  const told = optionsOf(command)
  if (!told.ok) return told
  const isServer = /^https?:\/\//.test(recording)
  const { measured, about } = isServer
    ? await listenTo(recording, { ...told.options, seconds: command.seconds })
    : await readRecording(recording, told.options)
  if (!measured.ok) {
    const rows = measured.bad.map(({ line, code, found }) => ({
      code,
      path: `line ${line}`,
      found,
      allowed: allowedRows[code],
    }))
    return refuse(...measured.problems, ...rows.slice(0, 20))
  }
  const { folded, read } = measured
  const body = measuredBody(folded, read, { ...about, of: command.of })
  const dated = read.times !== 'elapsed-seconds'
  const dates = dated
    ? { from: dayOf(folded.firstTime), until: dayOf(folded.lastTime) }
    : { from: today(), until: today() }
  const json = { type: 'gensettle/measured', version: 1, read, ...sums(body), curve: curve(body) } as const
  if (command.check) {
    const text = `${seenText({ body, read })}\nNothing was written.`
    return { ok: true, json: { ...json, entries: [], asked: [] }, text }
  }
  return withStore(command, (store) => {
    const boat = boatToWrite(store, command.boat)
    const set = setToWrite(store, {
      kind: 'measured',
      boat: boat.ok ? boat.name : undefined,
      asked: command.set,
    })
    if (!boat.ok || !set.ok || set.set === null) {
      return refuse(...(boat.ok ? [] : boat.problems), ...(set.ok ? [] : set.problems))
    }
    const draft = { boat: boat.name, set: set.set, kind: 'measured', body, ...dates } as const
    const written = writeAndAsk(store, [draft], 'gensettle/measured')
    if (!written.ok) return written
    const ratingKw = ratingOf(store, boat.name, set.set)
    const day = ratingKw === undefined ? undefined : recordedDay(body, ratingKw)
    return {
      ok: true,
      json: { ...written.json, ...json, ...(day === undefined ? {} : { day }) },
      text: `${written.text}\n\n${seenText({ body, read, ...(day === undefined ? {} : { day }) })}`,
    }
  })
}

function ratingOf(store: Store, boat: string, set: string): number | undefined {
  const read = store.read(boat)
  return read.ok
    ? particularsOf(byDate(currentEntries(read.entries).entries), set).setFacts.ratingKw
    : undefined
}

/** What may stand in a row. */
const allowedRows = {
  'no-time': 'a date and a time',
  'no-number': 'a number of power, or of current',
  negative: 'power that is not below nothing: the clamp may sit the other way round',
  'too-much': 'at most 200 kW: the unit may be W',
  broken: 'a whole message',
} as const

type Told =
  | { readonly ok: true; readonly options: MeasuredOptions & { readonly path?: string } }
  | { readonly ok: false; readonly problems: readonly Problem[] }

function optionsOf(command: MeasuredCommand): Told {
  const problems: Problem[] = []
  const columns: Partial<Record<MeasuredField, string>> = {}
  const units: Partial<Record<MeasuredField, MeasuredUnit>> = {}
  const pairs = (
    list: readonly string[],
    path: string,
    put: (field: MeasuredField, value: string) => boolean,
  ) => {
    for (const pair of list) {
      const [field = '', ...rest] = pair.split('=')
      const known = measuredFields.find((name) => name === field)
      if (known === undefined || !put(known, rest.join('='))) {
        const what =
          path === '--unit'
            ? `field=unit, the unit one of: ${Object.keys(unitFactors).filter(Boolean).join(', ')}`
            : `field=heading, the field one of: ${measuredFields.join(', ')}`
        problems.push({ code: 'unknown-field', path, found: pair, allowed: what })
      }
    }
  }
  pairs(command.column ?? [], '--column', (field, heading) => {
    columns[field] = heading
    return heading !== ''
  })
  pairs(command.unit ?? [], '--unit', (field, unit) => {
    units[field] = unit as MeasuredUnit
    return Object.hasOwn(unitFactors, unit)
  })
  if (problems.length > 0) return { ok: false, problems }
  const { dates, decimal, volts, powerFactor, utcOffset, path } = command
  return {
    ok: true,
    options: {
      columns,
      units,
      ...(dates === undefined ? {} : { dateOrder: dates }),
      ...(decimal === undefined ? {} : { decimal }),
      ...(volts === undefined ? {} : { volts }),
      ...(powerFactor === undefined ? {} : { powerFactor }),
      ...(utcOffset === undefined ? {} : { utcOffsetHours: utcOffset }),
      ...(path === undefined ? {} : { path }),
    },
  }
}

function dayOf(seconds: number): string {
  return new Date(1000 * seconds).toISOString().slice(0, 10)
}

function sums({ rows, badRows, coveredS, gapS, days, starts, energyKwh, mostKw }: MeasuredBody) {
  return { rows, badRows, coveredS, gapS, days, starts, energyKwh, mostKw }
}

function curve(body: MeasuredBody) {
  return curveOf(chancesWhileOn(body), body.stepKw)
}

function seenText({
  body,
  read,
  day,
}: {
  readonly body: MeasuredBody
  readonly read: HowMeasured
  readonly day?: RecordedDay
}): string {
  const hours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`
  const points = curve(body)
  const at = (share: number) => `${loadAt(points, share).toFixed(1)} kW`
  return [
    `Read: ${read.columns.map(({ field, heading, unit }) => `${field} from "${heading}"${unit === '' ? '' : ` in ${unit}`}`).join(', ')}.`,
    ...(read.otherColumns.length === 0 ? [] : [`Passed over: ${read.otherColumns.join(', ')}.`]),
    ...(read.guessedUnits.length === 0
      ? []
      : [
          `No heading tells the unit of ${read.guessedUnits.join(', ')}: taken from the size of the numbers; --unit says otherwise.`,
        ]),
    ...(read.dateOrder === 'does-not-matter' ? [] : [`Dates were read ${read.dateOrder}.`]),
    ...read.assumed.map((one) => `Taken for granted: ${one}.`),
    `${read.rows.toLocaleString('en-GB')} rows; ${hours(body.coveredS)} measured on ${body.days} days, ${hours(body.gapS)} of gaps.`,
    ...(read.badRows === 0 ? [] : [`${read.badRows.toLocaleString('en-GB')} rows were left out:`]),
    ...read.bad
      .slice(0, 20)
      .map(({ line, code, found }) => `  line ${line}: found ${found}; allowed is ${allowedRows[code]}`),
    ...(read.bad.length > 20 ? ['  … --json lists a hundred of them'] : []),
    '',
    `${body.energyKwh.toFixed(1)} kWh, at most ${body.mostKw.toFixed(1)} kW. While power is drawn: half of the time ${at(0.5)} or more, one hour in twenty ${at(0.05)}, one in a hundred ${at(0.01)}.`,
    ...(day === undefined
      ? []
      : [
          `On a day: ${day.hours.toFixed(1)} h in ${day.starts.toFixed(1)} starts, ${Math.round(100 * day.lowLoadShare)} of 100 running hours under three tenths of the rating.`,
        ]),
  ].join('\n')
}
