/**
 * Ctrl-C and its kin, heard from the first moment on so that work under way is put away in order.
 *
 * @module
 */

export interface Stopping {
  readonly signal: AbortSignal
  /** Settles when the program is told to stop. */
  readonly heard: Promise<void>
  /** From here on signals do again what they usually do. */
  end(): void
}

/** One Ctrl-C comes twice where a starter hands it on: what follows this soon is the same. [ms] */
const sameStop = 1000
/** Status of a program that was told to stop twice, by the custom of shells. */
const cutOff = 130

/** Hears SIGINT and SIGTERM. The first one stops the work, one that comes later ends the program at once. */
export function hearStop(): Stopping {
  const stop = new AbortController()
  let stoppedAt = 0
  let tell = () => {}
  const heard = new Promise<void>((resolve) => {
    tell = resolve
  })
  const hear = () => {
    if (!stop.signal.aborted) {
      stoppedAt = Date.now()
      stop.abort()
      tell()
    } else if (Date.now() - stoppedAt > sameStop) process.exit(cutOff)
  }
  const signals = ['SIGINT', 'SIGTERM'] as const
  for (const signal of signals) process.on(signal, hear)
  return {
    signal: stop.signal,
    heard,
    end: () => {
      for (const signal of signals) process.off(signal, hear)
    },
  }
}
