/**
 * Numbers as people write them: `5,240.5`, `5.240,5`, `£1 250`, `85,-`.
 *
 * @module
 */

/** What stands between whole and fraction. */
export type DecimalMark = 'point' | 'comma'

/** Digits and marks of a written number, without currency and blanks; undefined where it is none. */
export function bareNumber(text: string): string | undefined {
  const bare = text
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^(?:[A-Za-z]{1,3}\.?)?\p{Sc}?/u, '')
    .replace(/[.,]-{1,2}$/, '')
    .replace(/\p{Sc}?(?:[A-Za-z]{1,3}\.?)?$/u, '')
  return /^\d[\d.,]*$/.test(bare) ? bare : undefined
}

/** Which mark a written number shows to be the decimal one; undefined where it leaves that open, as `1,234` does. */
export function markShownBy(bare: string): DecimalMark | undefined {
  const points = bare.split('.').length - 1
  const commas = bare.split(',').length - 1
  if (points > 0 && commas > 0) return bare.lastIndexOf('.') > bare.lastIndexOf(',') ? 'point' : 'comma'
  if (points > 1) return 'comma'
  if (commas > 1) return 'point'
  if (points + commas === 0 || /^[1-9]\d{0,2}[.,]\d{3}$/.test(bare)) return undefined
  return points === 1 ? 'point' : 'comma'
}

/** Whether the value depends on which mark is the decimal one. */
export function isOpen(bare: string): boolean {
  return /[.,]/.test(bare) && markShownBy(bare) === undefined
}

/** The value of a written number; undefined where its groups are none of three. */
export function numberFrom(bare: string, mark: DecimalMark): number | undefined {
  const [point, group] = mark === 'point' ? ['.', ','] : [',', '.']
  const [whole = '', ...fractions] = bare.split(point)
  const groups = whole.split(group)
  const grouped = groups.every((digits, index) =>
    index === 0 ? groups.length === 1 || /^[1-9]\d{0,2}$/.test(digits) : /^\d{3}$/.test(digits),
  )
  const fraction = fractions.join(point)
  if (!grouped || fractions.length > 1 || !/^\d*$/.test(fraction)) return undefined
  return Number(`${groups.join('')}.${fraction === '' ? '0' : fraction}`)
}
