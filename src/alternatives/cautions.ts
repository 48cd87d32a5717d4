/**
 * What every printed answer says of what this tool is not.
 *
 * @module
 */

/** The cautions in full, most pressing first. */
export const cautions: readonly string[] = [
  'Gensettle reckons with money and odds. It does not make electrical or engine work safe, and nothing it says means that a set may be run or touched.',
  'Licensed people and local rules come first. Where they say otherwise than this tool, they are right.',
  'Carbon monoxide, electric shock (also in the water around a boat), turning parts, hot coolant and exhaust, and fuel under injection pressure kill. Stop the set, lock it out and let it cool before a hand goes in.',
  'Figures marked practice are guesses until your own log says better. A forecast tells how often, never when.',
]

/** The same in one line, under a table. */
export const shortCaution =
  'Odds and money only: this makes no electrical or engine work safe. Licensed people and local rules come first; figures marked practice are guesses until your log says better.'
