/**
 * Bold where a person reads it; plain into a pipe or a file, whatever the environment says of itself.
 *
 * @module
 */

import picocolors from 'picocolors'

/** What is written to the standard output. */
export const colours = coloursOf(process.stdout)

/** What is written to the standard error. */
export const errorColours = coloursOf(process.stderr)

/** A stream that is no terminal has no `hasColors`. */
function coloursOf(
  stream: Partial<Pick<NodeJS.WriteStream, 'hasColors'>>,
): ReturnType<typeof picocolors.createColors> {
  return picocolors.createColors(stream.hasColors?.() ?? false)
}
