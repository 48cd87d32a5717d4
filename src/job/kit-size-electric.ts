/**
 * What stands on capacitors and batteries.
 *
 * @module
 */

import type { StandardSizes } from '../catalogue/kit-schema.js'
import type { BatterySize, CapacitorSize } from './kit-size.js'

/** "30 µF 450 V class B". Source of the classes: IEC 60252-1. */
export function readCapacitor(text: string, { capacitorClasses }: StandardSizes): CapacitorSize | undefined {
  const microfarads = numberBefore(text, '(?:µ|μ|u|m)f(?:d)?')
  if (microfarads === undefined) return undefined
  const volts = numberBefore(text, 'v(?:ac|~)?')
  const letter = /class ([a-d])\b/i.exec(text)?.[1]?.toUpperCase()
  const operation = capacitorClasses.list.find(({ id }) => id === letter)?.id
  return {
    is: 'capacitor',
    microfarads,
    ...(volts === undefined ? {} : { volts }),
    ...(operation === undefined ? {} : { operation }),
  }
}

/** "12 V 70 Ah 720 A L3 + right"; a case by its name or as length × width × height. */
export function readBattery(text: string, { batteries }: StandardSizes): BatterySize | undefined {
  const ampereHours = numberBefore(text, 'ah')
  const named = batteries.list.find(({ id }) => new RegExp(`(?:^|\\s)${id}(?:\\s|$)`, 'i').test(text))
  if (ampereHours === undefined && named === undefined) return undefined
  const measured = /(\d{2,3}) ?x ?(\d{2,3}) ?x ?(\d{2,3})/.exec(text)?.slice(1).map(Number)
  const [lengthMm, widthMm, heightMm] =
    measured ?? (named === undefined ? [] : [named.lengthMm, named.widthMm, named.heightMm])
  const volts = numberBefore(text, 'v')
  const crankingA = numberBefore(text, 'a(?!h)(?:\\b|$)')
  const side = /\+ ?(?:pole )?(left|right)|(left|right) ?\+/i.exec(text)
  const positive = (side?.[1] ?? side?.[2])?.toLowerCase() as 'left' | 'right' | undefined
  return {
    is: 'battery',
    ...(volts === undefined ? {} : { volts }),
    ...(ampereHours === undefined ? {} : { ampereHours }),
    ...(crankingA === undefined ? {} : { crankingA }),
    ...(lengthMm === undefined ? {} : { lengthMm }),
    ...(widthMm === undefined ? {} : { widthMm }),
    ...(heightMm === undefined ? {} : { heightMm }),
    ...(positive === undefined ? {} : { positive }),
  }
}

function numberBefore(text: string, unit: string): number | undefined {
  const match = new RegExp(`(\\d+(?:\\.\\d+)?) ?${unit}(?![a-z])`, 'i').exec(text)
  return match === null ? undefined : Number(match[1])
}
