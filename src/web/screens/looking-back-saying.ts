/**
 * How what was looked back on is said.
 *
 * @module
 */

export interface Saying {
  /** What a part is called in the midst of a sentence. */
  readonly part: (id: string) => string
  readonly money: (amount: number) => string
}
