/**
 * What a brief is made of, whatever it is shown on: paper, a screen, a prompt.
 *
 * @module
 */

import type { Span } from './report.js'

/** A word that marks a row. */
export type BriefTag = 'Best in money' | 'Barred'

/** One alternative with its range. */
export interface BriefRange {
  readonly name: string
  readonly tag?: BriefTag
  /** Why it is barred. */
  readonly why?: string
  readonly low: number
  readonly middle: number
  readonly high: number
  readonly expected: number
  /** The same in words, for who does not see the drawing. */
  readonly drawn: string
  /** Expected; dearer than the best; days without power; stops; dangers. */
  readonly cells: readonly string[]
}

export type BriefBlock =
  | { readonly is: 'say'; readonly text: string; readonly bold?: string }
  | { readonly is: 'text'; readonly text: string; readonly bold?: string }
  | { readonly is: 'list'; readonly items: readonly string[] }
  | { readonly is: 'stop'; readonly title: string; readonly text: string }
  | { readonly is: 'number'; readonly number: string; readonly text: string; readonly widths?: BriefWidths }
  | { readonly is: 'table'; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | {
      readonly is: 'ranges'
      /** Of the name, of the drawing, of each cell. */
      readonly heads: readonly string[]
      readonly rows: readonly BriefRange[]
    }
  | { readonly is: 'signatures'; readonly lines: readonly string[] }

/** The price to walk away from in its two widths, with the quote as it stands. */
export interface BriefWidths {
  readonly price: number
  readonly findingOut: Span
  readonly simulation: Span
  readonly quote: number
  readonly said: {
    readonly price: string
    readonly low: string
    readonly high: string
    readonly quote: string
  }
  readonly drawn: string
}

export interface BriefPassage {
  readonly title: string
  /** How to read it. */
  readonly says?: string
  /** What is read by who checks: in small type. */
  readonly fine?: true
  readonly blocks: readonly BriefBlock[]
}
