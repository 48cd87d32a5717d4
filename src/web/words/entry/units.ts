/**
 * Units as they are written, and the values that tests usually give.
 *
 * @module
 */

const unitNames: Readonly<Record<string, string>> = {
  ohm: 'Ω',
  mohm: 'mΩ',
  kohm: 'kΩ',
  Mohm: 'MΩ',
  uF: 'µF',
  C: '°C',
  F: '°F',
  K: 'K difference',
  d: 'days',
  deg: 'degrees',
  '1': 'bare number',
}

export function unitName(unit: string): string {
  return unitNames[unit] ?? unit
}

/** Values that a test usually gives, so that nobody has to name them. */
export const usualReadings: Readonly<
  Record<
    string,
    { readonly value: readonly [string, string]; readonly conditions: readonly [string, string][] }
  >
> = {
  'insulation-test': {
    value: ['winding to frame', 'Mohm'],
    conditions: [
      ['winding', 'C'],
      ['tester', 'V'],
    ],
  },
  'winding-resistance': { value: ['line to neutral', 'ohm'], conditions: [['winding', 'C']] },
  'capacitor-test': { value: ['capacitance', 'uF'], conditions: [['marked', 'uF']] },
  'bearing-listen': { value: ['velocity at outboard end', 'mm/s'], conditions: [['load', 'kW']] },
  'oil-gauge': { value: ['oil pressure', 'kPa'], conditions: [['oil', 'C']] },
  'fuel-vacuum': { value: ['vacuum', 'kPa'], conditions: [['load', 'kW']] },
  'spot-temperature': { value: ['temperature', 'C'], conditions: [['load', 'kW']] },
  'temperature-log': { value: ['coolant', 'C'], conditions: [['load', 'kW']] },
  'compression-test': { value: ['cylinder 1', 'kPa'], conditions: [['coolant', 'C']] },
  'cooling-pressure-test': { value: ['pressure lost in ten minutes', 'kPa'], conditions: [] },
  'flow-measure': { value: ['flow', 'l/min'], conditions: [['speed', 'rpm']] },
  'meter-test': { value: ['line to neutral', 'V'], conditions: [['load', 'kW']] },
  'bond-test': { value: ['frame to bond', 'ohm'], conditions: [] },
}
