/**
 * What a table of measurements leaves open, settled from its first rows: form of the times, decimal mark, units.
 *
 * @module
 */

import { type Problem, shown } from '../catalogue/problem.js'
import type { DateOrder } from '../logbook/paper-log-dates.js'
import type { DecimalMark } from '../logbook/paper-log-numbers.js'
import {
  type MeasuredColumn,
  type MeasuredField,
  type MeasuredUnit,
  unitFactors,
} from './measured-columns.js'
import { orderShownBy, type TimeForm, timeFormOf, timeReader } from './measured-times.js'

/** What a person says of a log beside its columns. */
export interface Told {
  readonly dateOrder?: DateOrder
  readonly decimal?: DecimalMark
  /** Where only current was measured. [V] */
  readonly volts?: number
  /** Where only current or apparent power was. */
  readonly powerFactor?: number
  /** The boat's clock before universal time, for times that are written in that. [h] */
  readonly utcOffsetHours?: number
}

/** How each row becomes a moment. */
export interface Settled {
  readonly time: (cells: readonly string[]) => number | undefined
  /** Reads one field; undefined: there is no such column. */
  readonly number: (field: MeasuredField) => ((cells: readonly string[]) => number | undefined) | undefined
  readonly form: TimeForm
  readonly order: DateOrder | 'does-not-matter'
  readonly decimal: DecimalMark
  readonly units: Readonly<Record<string, MeasuredUnit>>
  /** Fields whose unit no heading told. */
  readonly guessedUnits: readonly MeasuredField[]
  readonly assumed: readonly string[]
}

/** Beyond these, a column without a unit is taken to be in thousandths. */
const largestKW = 120

export function settleRows(
  columns: readonly MeasuredColumn[],
  rows: readonly (readonly string[])[],
  told: Told & { readonly delimiter: string },
): { readonly settled?: Settled; readonly problems: readonly Problem[] } {
  const problems: Problem[] = []
  const at = new Map(columns.map((column) => [column.field, column]))
  const timeText = timeTextOf(at)
  const texts = rows.map(timeText).filter((text) => text.trim() !== '')
  const form = timeFormOf(texts)
  const shownOrder = form === 'written' ? orderShownBy(texts) : 'does-not-matter'
  if (form === undefined) {
    const allowed =
      'a date and a time such as 2024-05-12 14:03:22, seconds since 1970, or seconds since the log began'
    problems.push({ code: 'no-time', path: 'time', found: shown(texts[0] ?? 'nothing'), allowed })
  }
  if (told.dateOrder === undefined && (shownOrder === undefined || shownOrder === 'both')) {
    const found = shownOrder === 'both' ? 'dates of both orders' : shown(texts[0])
    problems.push({ code: 'date-order-open', path: 'time', found, allowed: 'told: day-first or month-first' })
  }
  const decimal = told.decimal ?? decimalOf(columns, rows, told.delimiter)
  const onlyCurrent = ![...at.keys()].some((field) => /^(power|apparent)/.test(field)) && !at.has('energy')
  const hasVolts = [...at.keys()].some((field) => field.startsWith('volts'))
  if (onlyCurrent && !hasVolts && told.volts === undefined) {
    const allowed = 'the voltage told, since only current was measured'
    problems.push({ code: 'volts-open', path: 'volts', found: 'nothing', allowed })
  }
  if (problems.length > 0) return { problems }

  const order = told.dateOrder ?? (shownOrder === 'month-first' ? 'month-first' : 'day-first')
  const read = timeReader({ form: form!, order, offsetS: 3600 * (told.utcOffsetHours ?? 0) })
  const { units, guessedUnits } = unitsOf(columns, rows, decimal)
  return {
    problems,
    settled: {
      time: (cells) => read(timeText(cells)),
      number: (field) => {
        const column = at.get(field)
        if (column === undefined) return undefined
        const { place } = column
        const factor = unitFactors[units[field] ?? '']
        return (cells) => {
          const value = numberIn(cells[place] ?? '', decimal)
          return value === undefined ? undefined : value * factor
        }
      },
      form: form!,
      order: shownOrder === 'does-not-matter' ? 'does-not-matter' : order,
      decimal,
      units,
      guessedUnits,
      assumed: assumedOf(at, told, form!),
    },
  }
}

/** A cell as a number; undefined where it is blank or none. */
export function numberIn(cell: string, decimal: DecimalMark): number | undefined {
  if (decimal === 'point') {
    const value = Number(cell)
    if (!Number.isNaN(value) && cell.trim() !== '') return Number.isFinite(value) ? value : undefined
  }
  const text = cell.trim().replace(/\s|[\u00a0\u202f]/g, '')
  if (!/^[+-]?[\d.,]+(?:e[+-]?\d+)?(?:[kKmM]?[WVA]{1,2}h?|%)?$/.test(text)) return undefined
  const bare = text.replace(/[a-zA-Z%]+$/, '')
  const plain = decimal === 'comma' ? bare.replace(/\./g, '').replace(',', '.') : bare.replace(/,/g, '')
  const value = Number(plain)
  return plain !== '' && Number.isFinite(value) ? value : undefined
}

function timeTextOf(at: ReadonlyMap<MeasuredField, MeasuredColumn>): (cells: readonly string[]) => string {
  const time = at.get('time')?.place
  if (time !== undefined) return (cells) => cells[time] ?? ''
  const date = at.get('date')?.place ?? -1
  const clock = at.get('clock')?.place ?? -1
  return (cells) => `${(cells[date] ?? '').trim()} ${(cells[clock] ?? '').trim()}`
}

/** A comma before other than three digits is a decimal one; before three, so it is where the cells are not parted by commas. */
function decimalOf(
  columns: readonly MeasuredColumn[],
  rows: readonly (readonly string[])[],
  delimiter: string,
): DecimalMark {
  const numbers = columns.filter(({ field }) => !['time', 'date', 'clock'].includes(field))
  const cells = rows.flatMap((row) => numbers.map(({ place }) => (row[place] ?? '').trim()))
  const certain = cells.some((cell) => /^[+-]?\d+,(?!\d{3}$)\d+$/.test(cell))
  const likely = delimiter !== ',' && cells.some((cell) => /^[+-]?\d+,\d+$/.test(cell))
  const point = cells.some((cell) => /^[+-]?\d+\.\d+$/.test(cell))
  return (certain || likely) && !point ? 'comma' : 'point'
}

function unitsOf(
  columns: readonly MeasuredColumn[],
  rows: readonly (readonly string[])[],
  decimal: DecimalMark,
) {
  const units: Record<string, MeasuredUnit> = {}
  const guessedUnits: MeasuredField[] = []
  for (const { field, unit, place } of columns) {
    if (unit !== undefined) {
      units[field] = unit
      continue
    }
    const quantity = field.replace(/[123]$/, '')
    const sizes = rows.map((row) => Math.abs(numberIn(row[place] ?? '', decimal) ?? 0))
    const largest = Math.max(0, ...sizes)
    const guess: Readonly<Record<string, MeasuredUnit>> = {
      power: largest > largestKW ? 'W' : 'kW',
      apparent: largest > largestKW ? 'VA' : 'kVA',
      current: 'A',
      volts: 'V',
      energy: 'kWh',
      factor: largest > 1.5 ? '%' : '',
    }
    if (guess[quantity] === undefined) continue
    units[field] = guess[quantity]!
    if (quantity === 'power' || quantity === 'apparent' || quantity === 'energy') guessedUnits.push(field)
  }
  return { units, guessedUnits }
}

function assumedOf(at: ReadonlyMap<MeasuredField, MeasuredColumn>, told: Told, form: TimeForm): string[] {
  const has = (quantity: string) => [...at.keys()].some((field) => field.replace(/[123]$/, '') === quantity)
  const assumed: string[] = []
  if (!has('power') && !has('energy') && !has('factor')) {
    const factor = told.powerFactor ?? 1
    const most = told.powerFactor === undefined ? ': the kW are the most that they can be' : ''
    assumed.push(`no power factor was measured; ${factor} is taken${most}`)
  }
  if (!has('power') && !has('apparent') && !has('energy') && !has('volts'))
    assumed.push(`${told.volts} V throughout`)
  if (form.startsWith('epoch') && told.utcOffsetHours === undefined) {
    assumed.push('its times are in universal time, and are taken for the boat’s own clock')
  }
  if (form === 'elapsed-seconds')
    assumed.push('it tells no time of day; it is taken to have begun at midnight')
  return assumed
}
