/**
 * The command line: `gensettle COMMAND`.
 *
 * @module
 */

import { CommanderError } from 'commander'
import { makeProgram } from './program.js'
import { exitStatus } from './result.js'

/** A reader that has gone away, such as `head`, is no fault. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
  process.exit(exitStatus.done)
})

try {
  const [first, ...rest] = process.argv.slice(2)
  // The help of a command is its own, at any depth.
  const words = first === 'help' ? [...rest, '--help'] : process.argv.slice(2)
  await makeProgram().parseAsync(words, { from: 'user' })
} catch (error) {
  if (!(error instanceof CommanderError)) throw error
  // Help and the version are asked for; all else that the parser stops at is wrong use, which it has told already.
  process.exitCode = error.exitCode === 0 ? exitStatus.done : exitStatus.wrongUse
}
