/**
 * `gensettle export` and `gensettle import`: a boat as one file.
 *
 * @module
 */

import { exportBoat } from '../store/export-boat.js'
import { importBoat } from '../store/import-boat.js'
import { type DataOption, withReading, withStore } from './opened.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'

/** Writes everything of a boat into a new file. */
export function exportToFile(
  path: string,
  options: DataOption & { readonly boat?: string; readonly withoutPlaces?: boolean },
): Promise<Result> {
  return withReading(options, async (store) => {
    const boats = store.boats()
    const boat = options.boat ?? (boats.length === 1 ? boats[0] : undefined)
    if (boat === undefined || !boats.includes(boat)) {
      const allowed =
        boats.length === 0 ? 'a boat of your own; none is entered yet' : `one of: ${boats.join(', ')}`
      return refuse({ code: 'unknown-boat', path: '--boat', found: boat ?? 'nothing', allowed })
    }
    const bar = progressOf('writing')
    const exported = await stoppable((signal) =>
      exportBoat(store, boat, path, {
        signal,
        withoutPlaces: options.withoutPlaces === true,
        onProgress: ({ done, total }) => bar.show(done, total),
      }),
    ).finally(bar.end)
    if (!exported.ok) return exported
    const { ok: _, ...counts } = exported
    const { entries, photographs, absent, tellPlace, leftOut } = exported
    return {
      ok: true,
      json: { type: 'gensettle/export', version: 1, boat, file: path, ...counts },
      text: [
        `${boat}: ${entries} entries and ${photographs} photographs written to ${path}.`,
        ...(absent > 0 ? [`${absent} photographs that entries name are not there any more.`] : []),
        ...(tellPlace > 0
          ? [
              `${tellPlace} of the photographs tell, or may tell, where they were taken: this file is your own copy. For others, export it --without-places, and hand the pictures over with "gensettle pictures".`,
            ]
          : []),
        ...(leftOut > 0
          ? [
              `${leftOut} photographs were left out, because they tell, or may tell, where they were taken; "gensettle pictures" makes copies of them that do not.`,
            ]
          : []),
      ].join('\n'),
    }
  })
}

/** Adds a boat file to the store, whole or not at all. */
export function importFromFile(path: string, options: DataOption): Promise<Result> {
  return withStore(options, async (store) => {
    const bar = progressOf('reading')
    const imported = await stoppable((signal) =>
      importBoat(store, path, { signal, onProgress: ({ done, total }) => bar.show(done, total) }),
    ).finally(bar.end)
    if (!imported.ok) return imported
    const { boat, added, alreadyHeld, photographs } = imported
    return {
      ok: true,
      json: { type: 'gensettle/import', version: 1, boat, added, alreadyHeld, photographs },
      text: `${boat}: ${added} entries added, ${alreadyHeld} were there already; ${photographs} photographs.`,
    }
  })
}

/** Long work that Ctrl-C stops cleanly: nothing half done is left. */
async function stoppable<T>(work: (signal: AbortSignal) => Promise<T>): Promise<T> {
  const stop = new AbortController()
  const abort = () => stop.abort()
  process.once('SIGINT', abort)
  process.once('SIGTERM', abort)
  try {
    return await work(stop.signal)
  } finally {
    process.off('SIGINT', abort)
    process.off('SIGTERM', abort)
  }
}
