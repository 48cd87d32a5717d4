/**
 * What pages are built of, each in one line.
 *
 * Passage     a part of a page, with what to read it by in the margin
 * Say, Lead   the answer in a sentence, and the paragraph after it
 * useFigures  computed numbers that open in place; Said: a paragraph with them; FigureRow: a table's row
 * NumbersTable  a table of numbers, each of which opens; NumbersRow: a row of it
 * Heads       the heads of a table's columns
 * Preparing   a page that has no figures yet; Failed: one that will have none
 * Stop        a condition that blocks, with the acts that close it
 * Asked       an entry that looks odd, with its answers
 * Cautions    hazards of the work a page leads to
 * Tag         a word that marks a thing
 * Button      an act; PlainButton: one in a sentence; Link: to another page
 * Tried       a number to try, with its track; Overrule: one to write into the log
 * Refining    long work, with a stop
 * Behind      something folded away; WideTable: a table that is moved sideways
 *
 * @module
 */

export { Behind, WideTable } from './behind.js'
export { Button, Link, PlainButton } from './button.js'
export { Overrule, Tried } from './field.js'
export {
  type Behind as BehindFigure,
  FigureRow,
  type FigureSaid,
  hole,
  Said,
  useFigures,
} from './figure.js'
export { Heads } from './heads.js'
export { NumbersRow, NumbersTable } from './numbers.js'
export { Lead, Passage, Say } from './passage.js'
export { Refining } from './refining.js'
export { Failed, Preparing } from './states.js'
export { Asked, Cautions, Stop } from './stop.js'
export { Tag } from './tag.js'
