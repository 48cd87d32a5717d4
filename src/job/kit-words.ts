/**
 * Words of a kit: what stands against beginning, and what comes of holding two numbers against one another.
 *
 * @module
 */

import type { Kit, Need } from './kit.js'
import type { Compared, Difference } from './kit-compare.js'

/** "Raw-water pump body" or "Gasket, for raw-water pump body". */
export function sayNeed({ name, piece, part }: Need, nameOf: (part: string) => string): string {
  return piece === undefined ? nameOf(part) : `${name}, for ${inSentence(nameOf(part))}`
}

/** "2 + 1 spare". */
export function sayCount({ count, spares }: Pick<Need, 'count' | 'spares'>): string {
  return spares === 0 ? String(count) : `${count} + ${spares} spare`
}

/** The one sentence on top: begin, or do not, and because of what. */
export function sayHold({ needs, stops }: Kit, nameOf: (part: string) => string): string {
  const [first] = stops
  if (needs.length === 0) return 'Nothing has to be in hand for it.'
  if (first === undefined) return 'You can begin: all that it cannot do without is here and like the old.'
  const more = stops.length - 1
  const others = more === 0 ? '' : ` ${more} more ${more === 1 ? 'piece is' : 'pieces are'} not ready.`
  return `Do not begin: ${inSentence(sayNeed(first, nameOf))} ${sayLack(first)}.${others}`
}

/** "does not match (width: 15 mm, 17 mm)", "is to be ordered". */
export function sayLack(need: Need, sayDay = (date: string) => date): string {
  const { lacks, tally, byNumber } = need
  switch (lacks) {
    case 'does-not-match':
      return `does not match (${differsOf(need)})`
    case 'settle':
      return 'may be needed: settle that first'
    case 'to-order':
      return 'is still to be ordered'
    case 'late':
      return `was expected ${sayDay(tally.expected!)} and is not here`
    case 'on-the-way':
      return tally.expected === undefined
        ? 'is on its way'
        : `is on its way, expected ${sayDay(tally.expected)}`
    case 'unchecked':
      return byNumber?.verdict === 'think'
        ? `has come and is not yet held against the old (${sayDifferences(byNumber.differences)})`
        : 'has come and is not yet held against the old'
    default:
      return 'is here and like the old'
  }
}

function differsOf({ tally, byNumber, state }: Need): string {
  if (state === 'does-not-fit' && tally.differs !== undefined) return tally.differs
  const misfits = byNumber?.differences.filter(({ weight }) => weight === 'does-not-fit') ?? []
  return `by its number, ${sayDifferences(misfits)}`
}

/** "width 17 mm, not 15 mm; seals: open, the old one sealed both sides". */
export function sayDifferences(differences: readonly Difference[]): string {
  return differences.map((one) => `${one.what} ${one.new}, not ${one.old}`).join('; ')
}

/** What comes of holding the new one's number against the old one's. */
export function sayCompared({ verdict, differences, both, standard, alsoLook }: Compared): string {
  const by = standard === undefined ? '' : ` (${standard})`
  const look = alsoLook.length === 0 ? '' : ` The sizes do not tell ${alsoLook.join('; ')}.`
  switch (verdict) {
    case 'fits':
      return `These go in place of one another: ${both}${by}.${look}`
    case 'think': {
      const reasons = differences.map(
        (one) => `${one.what} ${one.new}, not ${one.old}: ${one.because ?? 'look at it'}`,
      )
      return `It goes in: ${both}${by}. But ${reasons.join('; ')}.${look}`
    }
    case 'does-not-fit':
      return `They do not: ${sayDifferences(differences.filter(({ weight }) => weight === 'does-not-fit'))}${by}.`
    case 'cannot-tell':
      return `Cannot tell from these.${look === '' ? ' Measure both, or ask by what stands on the old one.' : look}`
  }
}

/** The first name of a part: what follows a comma explains it. */
export function shortName(name: string): string {
  return name.split(',')[0]!
}

/** A name within a sentence; "O-ring" and what is written in capitals stay. */
export function inSentence(name: string): string {
  return /^[A-Z][A-Z-]/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1)
}
