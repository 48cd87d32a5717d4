/**
 * What came with the program: the catalogue, the fault model, the kits and the demonstration boats.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { catalogueFromJson } from '../catalogue/catalogue-json.js'
import type { Kits } from '../catalogue/kit-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { demonstrationStore } from '../store/demonstration-store.js'
import type { ReadableStore } from '../store/read-store.js'
import { demonstrationFolder, judged, type Shipped } from './judged.js'

/** What judges is loaded only where the build has not judged the files as they are. */
const judging = judged.isThere() ? undefined : (await import('./judging.js')).judging

export const shippedCatalogue = once((): Catalogue => catalogueFromJson(shipped('catalogue')))
export const shippedFaultModel = once((): FaultModel => shipped('faults'))
export const shippedKits = once((): Kits => shipped('kits'))
export const shippedDemonstration = once(
  (): ReadableStore => demonstrationStore(demonstrationFolder, shipped('demonstration')),
)

function shipped<K extends keyof Shipped>(what: K): Shipped[K] {
  return judging === undefined ? judged.read(what) : judging[what]()
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
