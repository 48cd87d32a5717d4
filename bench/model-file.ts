/**
 * A compiled model as a file for the programs in C: the very sections that the kernel reads, and a few that only the
 * program written plainly needs, because the kernel has them in tables.
 *
 * @module
 */

import { writeFileSync } from 'node:fs'
import {
  alternativeSections,
  flatSize,
  modelSections,
  type Sections,
  stateSections,
  writeFlat,
} from '../src/alternatives/flat.js'
import type { Program } from '../src/alternatives/program.js'

/** Writes a program, its alternatives, and the posterior in it. */
export function writeModelFile(program: Program, path: string): void {
  const sections = {
    ...modelSections(program),
    ...stateSections(program.posterior),
    ...usedSections(program),
    ...alternativeSections(program),
    ...plainSections(program),
  }
  const memory = new ArrayBuffer(flatSize(sections))
  writeFlat(sections, memory, 0)
  writeFileSync(path, new Uint8Array(memory))
}

/** Starting states of used candidates, told apart by the candidate's number: `states3.theta`. */
function usedSections({ used }: Program): Sections {
  return Object.fromEntries(
    [...used].flatMap(([c, states]) =>
      Object.entries(stateSections(states)).map(
        ([name, values]) => [name.replace(/^states/, `states${c}`), values] as const,
      ),
    ),
  )
}

/** How good each check is on average, and how often it is made. */
function plainSections({ model, modes }: Program): Sections {
  const care = new Map(model.checks.map((check) => [check.id, check]))
  const checks = model.parts
    .flatMap((part) => part.modes)
    .flatMap((mode) => mode.checks.filter(({ check }) => care.has(check)))
  if (checks.length !== modes.checkEvery.length) {
    throw new Error('checks must be those of the compiled model')
  }
  return {
    'plain.detection': Float64Array.from(checks, ({ detection }) => detection),
    'plain.detectionFailed': Float64Array.from(
      checks,
      ({ detection, detectionFailed }) => detectionFailed ?? detection,
    ),
    'plain.diligence': Float64Array.from(checks, ({ check }) => care.get(check)!.diligence),
  }
}
