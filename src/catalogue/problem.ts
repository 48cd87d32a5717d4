/**
 * What is wrong with something that came from a file or a person.
 *
 * @module
 */

/** One thing wrong with what came in. A reader collects all of them before it answers. */
export interface Problem {
  /** Short fixed word, so that a screen can word it. */
  readonly code: string
  /** Where in what came in, steps joined by dots; a record in a list is named by its id. */
  readonly path: string
  readonly found: string
  readonly allowed: string
}

/** A value from outside as a short piece of text for a message. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  const text = JSON.stringify(value) ?? typeof value
  return text.length > 80 ? `${text.slice(0, 77)}...` : text
}
