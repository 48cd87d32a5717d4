/**
 * The workers, begun with the page: while it is drawn and the log is fetched, they start and fetch the catalogue.
 *
 * @module
 */

import * as Comlink from 'comlink'
import type { Conductor } from './messages.js'

const conductor = Comlink.wrap<Conductor>(
  new Worker(new URL('./conductor.worker.ts', import.meta.url), { type: 'module' }),
)
void conductor.warm().catch(() => undefined)

export function theConductor(): Comlink.Remote<Conductor> {
  return conductor
}
