/**
 * How long a photograph of a phone takes into the store over HTTP, and the small picture made from it.
 *
 * @module
 */

import sharp from 'sharp'
import { serveFolder } from '../test/served-folder.js'

/** Milliseconds, the middle of some runs. */
export interface PictureTimes {
  readonly megabytes: number
  /** Sent, looked through, and safe on disk: to stay under 1,000. */
  readonly uploadMs: number
  /** Asked for the first time. */
  readonly thumbnailMs: number
  /** Asked for again. */
  readonly keptMs: number
}

/** A photograph of 12 megapixels, as grainy as one of an engine space. */
export async function benchPictures({ repeats = 5 } = {}): Promise<PictureTimes> {
  const served = await serveFolder()
  const runs: Omit<PictureTimes, 'megabytes'>[] = []
  let megabytes = 0
  for (let run = 0; run < repeats; run++) {
    const body = await grainy(run)
    megabytes = body.length / 1e6
    const headers = { 'content-type': 'image/jpeg' }
    const times = [performance.now()]
    const sent = await served.ask('/api/photographs', { method: 'POST', body, headers })
    times.push(performance.now())
    const { photograph } = sent.json<{ readonly photograph: { readonly sha256: string } }>()
    for (const _ of ['made', 'kept']) {
      const small = await served.ask(`/api/photographs/${photograph.sha256}/480`)
      if (small.status !== 200) throw new Error(`a small picture must be made; found status ${small.status}`)
      times.push(performance.now())
    }
    const [start = 0, uploaded = 0, made = 0, kept = 0] = times
    runs.push({ uploadMs: uploaded - start, thumbnailMs: made - uploaded, keptMs: kept - made })
  }
  await served.stop()
  return { megabytes, ...runs.sort((a, b) => a.uploadMs - b.uploadMs)[Math.floor(repeats / 2)]! }
}

function grainy(run: number): Promise<Buffer> {
  const noise = { type: 'gaussian' as const, mean: 120 + run, sigma: 18 }
  return sharp({ create: { width: 4000, height: 3000, channels: 3, background: '#808080', noise } })
    .jpeg({ quality: 90 })
    .toBuffer()
}
