/**
 * Tries boats in a process of its own, one after another, as they are handed to it.
 *
 * @module
 */

import { type Trial, tryBoat } from './trial.js'

/** Waits for boats. */
export function tryBoatsAsTheyCome(): void {
  process.on('message', (asked: { readonly boat: number; readonly trial: Trial }) => {
    tryBoat(asked.boat, asked.trial).then(
      (result) => process.send?.(result),
      (error: unknown) => {
        console.error(error)
        process.exit(1)
      },
    )
  })
}
