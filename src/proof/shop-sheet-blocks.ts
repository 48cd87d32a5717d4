/**
 * What a sheet for a workshop is made of: plain values, put on a screen or on paper by whoever shows them.
 *
 * @module
 */

import type { Photograph } from '../logbook/photographs.js'
import type { LinkDrawing } from './links/drawing.js'

export type SheetBlock =
  | { readonly is: 'text'; readonly text: string; readonly bold?: string }
  | { readonly is: 'list'; readonly items: readonly string[] }
  | { readonly is: 'stop'; readonly text: string }
  | { readonly is: 'table'; readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] }
  /** Things to be filled in by hand, each with room for it. */
  | { readonly is: 'blanks'; readonly names: readonly string[] }
  /** Photographs of the log, shown small, upright and without where they were taken; by name alone where there is no room for them. */
  | { readonly is: 'pictures'; readonly pictures: readonly Photograph[] }
  | { readonly is: 'drawings'; readonly drawings: readonly LinkDrawing[] }
  | { readonly is: 'signatures'; readonly lines: readonly string[] }

export interface SheetPassage {
  readonly title: string
  readonly says?: string
  readonly blocks: readonly SheetBlock[]
}
