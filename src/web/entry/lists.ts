/**
 * Lists of an entry as the text under which a form keeps them.
 *
 * @module
 */

/** A point of a price that grows with days, as it was typed. */
export interface Point {
  readonly days: string
  readonly price: string
}

/** Months, 1 to 12, in a text such as `4 5 6`. */
export function monthsTyped(text: string): readonly number[] {
  return text.split(' ').filter(Boolean).map(Number)
}

/** One point on each line: days, a tab, the price. */
export function pointsTyped(text: string): readonly Point[] {
  if (text === '') return []
  return text.split('\n').map((line) => {
    const [days = '', price = ''] = line.split('\t')
    return { days, price }
  })
}

export function pointsText(points: readonly Point[]): string {
  return points.map(({ days, price }) => `${days}\t${price}`).join('\n')
}
