/**
 * What people call the parts of the catalogue in a log: the catalogue's words, and the shorter ones that can mean one part only.
 *
 * @module
 */

import type { PartNames } from './paper-log-words.js'

const fewestLetters = 3

/** Names of each part: its id in words, its full name, and each beginning or end of the id that no other part shares. */
export function partNamesOf(
  parts: readonly { readonly id: string; readonly name: string }[],
): readonly PartNames[] {
  const owners = new Map<string, Set<string>>()
  for (const { id } of parts) {
    for (const short of shortNames(id)) owners.set(short, (owners.get(short) ?? new Set()).add(id))
  }
  return parts.map(({ id, name }) => ({
    id,
    names: [
      id.replaceAll('-', ' '),
      name,
      ...shortNames(id).filter((short) => owners.get(short)?.size === 1),
    ],
  }))
}

/** "sea pump impeller": "pump impeller" and "impeller"; "oil and filter": "oil" and "filter". */
function shortNames(id: string): string[] {
  const words = id.split('-')
  const and = words.indexOf('and')
  const pieces = and < 0 ? words.map((_, i) => words.slice(i)) : [words.slice(0, and), words.slice(and + 1)]
  return pieces
    .map((piece) => piece.join(' '))
    .filter((short) => short.length >= fewestLetters && short !== words.join(' '))
}
