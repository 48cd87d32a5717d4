/**
 * How far long work has come: a bar on standard error, only where a person sits before it.
 *
 * @module
 */

import { Presets, SingleBar } from 'cli-progress'

export interface Progress {
  /** Tells how much of the whole is done. */
  show(done: number, total: number): void
  end(): void
}

/** A bar with a name; nothing at all where standard error is no terminal. */
export function progressOf(what: string): Progress {
  if (!process.stderr.isTTY) return { show: () => undefined, end: () => undefined }
  const bar = new SingleBar(
    {
      format: `${what} {bar} {percentage} %`,
      stream: process.stderr,
      clearOnComplete: true,
      hideCursor: true,
    },
    Presets.legacy,
  )
  let started = false
  return {
    show: (done, total) => {
      if (started) bar.update(done)
      else bar.start(total, done)
      started = true
    },
    end: () => {
      if (started) bar.stop()
    },
  }
}
