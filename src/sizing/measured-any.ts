/**
 * A recording of either kind, told apart by its beginning: a table, or messages of Signal K one a line.
 *
 * @module
 */

import { readSignalK, type SignalKOptions } from './measured-signalk.js'
import { type Measured, type MeasuredOptions, type MeasuredReader, readMeasured } from './measured-table.js'

/** Reads a recording in pieces cut anywhere; the first piece says what it is. */
export function readAnyRecording(options: MeasuredOptions & SignalKOptions): MeasuredReader {
  let reader: MeasuredReader | undefined
  return {
    take: (text) => {
      reader ??= isStream(text) ? byLines(readSignalK(options)) : readMeasured(options)
      reader.take(text)
    },
    end: () => (reader ?? readMeasured(options)).end(),
  }
}

/** Recorded messages: the first thing is a brace, or a time in milliseconds and a mark before one. */
function isStream(text: string): boolean {
  return /^\ufeff?\s*(?:\d{13};[A-Za-z0-9-]*;)?\{/.test(text)
}

/** Pieces handed on line by line. */
function byLines(reader: { take(line: string): void; end(): Measured }): MeasuredReader {
  let rest = ''
  return {
    take: (text) => {
      const lines = (rest + text).split('\n')
      rest = lines.pop() ?? ''
      for (const line of lines) reader.take(line)
    },
    end: () => {
      if (rest !== '') reader.take(rest)
      return reader.end()
    },
  }
}
