/**
 * What a page of one set is handed.
 *
 * @module
 */

export interface OfSet {
  readonly boat: string
  readonly set: string
}
