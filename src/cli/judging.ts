/**
 * Judging what came with the program: every file of the catalogue, the fault model, the kits and the demonstration boats.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { catalogueToJson } from '../catalogue/catalogue-json.js'
import { parseFaultModel } from '../catalogue/fault-model.js'
import { parseKits } from '../catalogue/kits.js'
import { parseCatalogue } from '../catalogue/parse.js'
import type { Problem } from '../catalogue/problem.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { readDemonstration } from '../store/demonstration.js'
import { catalogueFolder, demonstrationFolder, faultsFolder, type Judging, kitsFolder } from './judged.js'

/** @throws TypeError if a file is not sound: the program ships no such file. */
export const judging: Judging = {
  catalogue: () => catalogueToJson(judgedCatalogue()),
  faults: () =>
    sound('fault model', parseFaultModel(readCatalogueFiles(faultsFolder), judgedCatalogue())).model,
  kits: () => sound('kits', parseKits(readCatalogueFiles(kitsFolder), judgedCatalogue())).kits,
  demonstration: () => sound('demonstration boats', readDemonstration(demonstrationFolder)).boats,
}

let catalogue: Catalogue | undefined

function judgedCatalogue(): Catalogue {
  catalogue ??= sound('catalogue', parseCatalogue(readCatalogueFiles(catalogueFolder))).catalogue
  return catalogue
}

type Judged<T> = (T & { readonly ok: true }) | { readonly ok: false; readonly problems: readonly Problem[] }

function sound<T>(what: string, judged: Judged<T>): T {
  if (!judged.ok) {
    throw new TypeError(`${what} must be sound; found ${JSON.stringify(judged.problems.slice(0, 3))}`)
  }
  return judged
}
