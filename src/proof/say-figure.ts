/**
 * A figure with its unit, as a person reads it.
 *
 * @module
 */

const signs: Readonly<Record<string, string>> = {
  Mohm: 'MΩ',
  kohm: 'kΩ',
  ohm: 'Ω',
  mohm: 'mΩ',
  uF: 'µF',
  uA: 'µA',
  C: '°C',
  '1': '',
  'ohm mm2/m': 'Ω mm²/m',
  'mohm/m': 'mΩ/m',
  inH2O: 'inches of water',
  inHg: 'inches of mercury',
}

/** The sign of a unit: `MΩ` for `Mohm`. */
export function signOf(unit: string): string {
  return signs[unit] ?? unit
}

/** A number to three digits that count, or to as many as part it from a limit, with its unit on the same line; a speed to the turn. */
export function sayFigure(value: number, unit: string, limit?: number): string {
  const sign = signOf(unit)
  const text = unit === 'rpm' ? String(Math.round(value)) : digits(value, limit)
  return sign === '' ? text : `${text}\u00a0${sign}`
}

function digits(value: number, limit: number | undefined): string {
  for (const count of [3, 4, 5, 6]) {
    const rounded = Number(value.toPrecision(count))
    const same = limit !== undefined && rounded < limit === value < limit && rounded > limit === value > limit
    if (limit === undefined || same || count === 6) {
      return Math.abs(rounded) >= 1e6 || (rounded !== 0 && Math.abs(rounded) < 1e-4)
        ? rounded.toExponential()
        : String(rounded)
    }
  }
  return String(value)
}
