/**
 * An amount of money in words.
 *
 * @module
 */

const signs: Readonly<Record<string, string>> = { GBP: '£', USD: '$', EUR: '€' }

/** Making a format takes as long as a hundred numbers written with it. */
const whole = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 0 })

/** Three figures of an amount with the sign of its currency before it, or its three letters after it: "£13,300", "450 CHF". */
export function moneyIn(currency: string, amount: number): string {
  const size = Math.abs(amount)
  const step = size < 100 ? 1 : 10 ** (Math.floor(Math.log10(size)) - 2)
  const rounded = Math.round(size / step) * step
  const sign = signs[currency]
  const after = sign === undefined && currency !== '' ? ` ${currency}` : ''
  return `${amount < 0 && rounded > 0 ? '−\u2060' : ''}${sign ?? ''}${whole.format(rounded)}${after}`
}
