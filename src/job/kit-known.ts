/**
 * Answers to what is asked before an order, as far as the log gives them.
 *
 * @module
 */

import type { KitQuestion } from '../catalogue/kit-schema.js'
import { byDate } from '../logbook/current.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { type PieceName, pieceKey } from './order.js'

/** An answer, and the entry that gave it. */
export interface KnownAnswer {
  readonly answer: string
  readonly entry: string
}

/** A piece that may be a part in its own right: what is told of that counts too. */
export interface SharedPiece extends PieceName {
  readonly shared?: string | undefined
}

/** Asked of every piece of which there are several: the kits tell how many a usual set has. */
export const countQuestion = 'count'
/** Questions whose answer is the number or the size of the piece. */
const askForIt = ['bearing-number', 'seal-size', 'o-ring-size']
/** Questions that the number of the piece answers. */
const ofTheNumber = new Set(['part-number', 'bearing-number'])

export interface KnownOfPieces {
  /** What was told of a piece when its particulars were entered, else what the log says of the set. */
  readonly answerOf: (question: KitQuestion, piece: SharedPiece) => KnownAnswer | undefined
  /** How many the set has, where its keeper has counted them. */
  readonly countOf: (piece: PieceName) => number | undefined
  /** The number on the piece that is in the set now. */
  readonly numberOf: (piece: SharedPiece) => KnownAnswer | undefined
}

/** Words of a field that stands in the log without its unit. */
const unitOfField: Readonly<Record<string, string>> = {
  ratingKw: 'kW',
  volts: 'V',
  hertz: 'Hz',
  rpm: 'rpm',
  rawWaterHoseMm: 'mm',
  exhaustHoseMm: 'mm',
  uF: 'µF',
}

/** Answers from the entries of a set in their current form; the latest of each counts. */
export function knownOfPieces(entries: readonly Entry[], set: string): KnownOfPieces {
  const told = new Map<string, KnownAnswer>()
  const numbers = new Map<string, KnownAnswer>()
  const facts = new Map<string, KnownAnswer>()
  for (const entry of byDate(entries.filter((one) => one.set === set))) {
    if (isKind(entry, 'particulars')) {
      const { answers = [], number } = entry.body
      const key = pieceKey(entry.body)
      for (const { question, answer } of answers) told.set(`${key} ${question}`, { answer, entry: entry.id })
      if (number !== undefined) numbers.set(key, { answer: number, entry: entry.id })
    } else if (isKind(entry, 'fitted') && entry.body.partNumber !== undefined) {
      numbers.set(entry.body.part, { answer: entry.body.partNumber, entry: entry.id })
    } else if (isKind(entry, 'set') || isKind(entry, 'space')) {
      for (const [field, value] of Object.entries(entry.body)) {
        const answer = wordsOf(value, unitOfField[field])
        if (answer !== undefined) facts.set(`${entry.kind}.${field}`, { answer, entry: entry.id })
      }
    } else if (isKind(entry, 'reading')) {
      for (const { name, value, unit } of entry.body.conditions ?? []) {
        facts.set(`reading.${name}.${unit}`, { answer: wordsOf(value, unitOfField[unit])!, entry: entry.id })
      }
    }
  }
  const numberOf = (piece: SharedPiece) =>
    [pieceKey(piece), piece.shared]
      .flatMap((key) => [
        numbers.get(`${key}`),
        ...askForIt.map((question) => told.get(`${key} ${question}`)),
      ])
      .find(Boolean)
  return {
    answerOf: ({ id, known }, piece) =>
      [pieceKey(piece), piece.shared, piece.part].map((key) => told.get(`${key} ${id}`)).find(Boolean) ??
      (ofTheNumber.has(id) ? numberOf(piece) : undefined) ??
      (known === undefined ? undefined : facts.get(known)),
    numberOf,
    countOf: (piece) => {
      const count = Number(told.get(`${pieceKey(piece)} ${countQuestion}`)?.answer)
      return Number.isInteger(count) && count > 0 ? count : undefined
    },
  }
}

function wordsOf(value: unknown, unit?: string): string | undefined {
  const said = Array.isArray(value)
    ? value.filter((one) => typeof one !== 'object').join(' and ')
    : typeof value === 'number'
      ? String(value)
      : typeof value === 'string'
        ? value.replaceAll('-', ' ')
        : ''
  return said === '' ? undefined : unit === undefined ? said : `${said} ${unit}`
}
