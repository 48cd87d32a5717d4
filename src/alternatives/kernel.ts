/**
 * The simulator's kernel: a compiled model put into it, and histories played.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import {
  alternativeSections,
  candidatesOf,
  flatSize,
  modelSections,
  type Sections,
  stateSections,
  writeFlat,
} from './flat.js'
import { kernelBase64 } from './kernel-bytes.js'
import type { Program } from './program.js'

/** What `kernel/index.ts` exports; addresses are in its memory. */
interface Doors {
  readonly memory: { readonly buffer: ArrayBuffer }
  reserve(bytes: number): number
  open(model: number): void
  openPresent(states: number): void
  openCandidate(candidate: number, states: number): void
  openAlternatives(alternatives: number): void
  forgetFailures(): void
  play(seed: number, history: number, alternative: number): number
  sums(): number
  years(): number
  failuresByMode(): number
  failuresByDanger(): number
  busiestPart(): number
  begin(seed: number, history: number): void
  states(): number
  since(): number
  scales(): number
  kappaLog(): number
  drawFor(seed: number, history: number, set: number, mode: number, life: number, forWhat: number): void
  word(which: number): number
}

/** A model that asks for more than can be counted. */
export class TooManyEvents extends Error {}

/** A kernel with what may be true of a set in it. */
interface Loaded {
  readonly doors: Doors
  /** Starting states of candidates that are in it. */
  readonly candidates: Map<number, Posterior>
  modes?: Program['modes']
  alternatives?: readonly Alternative[]
  /** Where they lie: others take their place. */
  modelRoom?: Room
  alternativesRoom?: Room
}

interface Room {
  readonly at: number
  readonly size: number
}

/** WebAssembly as browsers, workers and Node all have it. */
const { WebAssembly } = globalThis as unknown as {
  WebAssembly: {
    compile: (bytes: Uint8Array) => Promise<object>
    Module: new (bytes: Uint8Array) => object
    Instance: new (module: object, imports: object) => { readonly exports: unknown }
  }
}

let compiled: object | undefined

/**
 * Compiles the kernel beforehand, beside whatever else is done meanwhile. `bytes`: where they come from, if not from this very
 * script.
 */
export async function warmKernel(bytes: () => Uint8Array | Promise<Uint8Array> = kernelBytes): Promise<void> {
  const ready = compiled ?? (await WebAssembly.compile(await bytes()))
  compiled ??= ready
}

function kernelBytes(): Uint8Array {
  const letters = atob(kernelBase64)
  const bytes = new Uint8Array(letters.length)
  for (let i = 0; i < bytes.length; i++) bytes[i] = letters.charCodeAt(i)
  return bytes
}

function instantiate(): Doors {
  compiled ??= new WebAssembly.Module(kernelBytes())
  const abort = () => {
    throw new Error('the kernel and the compiled model do not fit together')
  }
  return new WebAssembly.Instance(compiled, { env: { abort } }).exports as Doors
}

/** Kernels by the large tables that are in them: models that differ in anything else share one. */
const loaded = new WeakMap<Posterior, Loaded>()

/** The kernel of a program, ready to play its alternatives, with no failure counted. */
export function kernelOf(program: Program): Doors {
  let kernel = loaded.get(program.posterior)
  const isNew = kernel === undefined
  kernel ??= { doors: instantiate(), candidates: new Map() }
  const { doors } = kernel
  if (kernel.modes !== program.modes) {
    kernel.modelRoom = put(doors, modelSections(program), kernel.modelRoom)
    doors.open(kernel.modelRoom.at)
    kernel.modes = program.modes
    delete kernel.alternatives
  }
  if (isNew) {
    doors.openPresent(put(doors, stateSections(program.posterior)).at)
    loaded.set(program.posterior, kernel)
  }
  if (kernel.alternatives !== program.alternatives) {
    openCandidates(program, kernel)
    kernel.alternativesRoom = put(doors, alternativeSections(program), kernel.alternativesRoom)
    doors.openAlternatives(kernel.alternativesRoom.at)
    kernel.alternatives = program.alternatives
  }
  doors.forgetFailures()
  return doors
}

/** The tables are large: only those that are needed are put in. */
function openCandidates(program: Program, { doors, candidates }: Loaded): void {
  for (const c of program.alternatives.flatMap((alternative) => candidatesOf(program, alternative))) {
    const states = program.used.get(c)
    if (states === undefined || candidates.get(c) === states) continue
    doors.openCandidate(c, put(doors, stateSections(states)).at)
    candidates.set(c, states)
  }
}

/** Puts sections into the room that others had, if they fit; else into new room. */
function put(doors: Doors, sections: Sections, room?: Room): Room {
  const size = flatSize(sections)
  const taken = room !== undefined && room.size >= size ? room : { at: doors.reserve(size), size }
  writeFlat(sections, doors.memory.buffer, taken.at)
  return taken
}

/** Numbers in the kernel's memory. The view is good until the kernel wants more memory; its length is then 0. */
export function doublesAt(doors: Doors, at: number, count: number): Float64Array {
  return new Float64Array(doors.memory.buffer, at, count)
}

/** Plays one history of one alternative; its sums are then in the kernel's memory. */
export function playHistory(
  program: Program,
  doors: Doors,
  which: { readonly seed: number; readonly history: number; readonly alternative: number },
): void {
  const trouble = doors.play(which.seed, which.history, which.alternative)
  if (trouble === 0) return
  if (trouble === tooManySets) throw new TooManyEvents('the set is replaced more than 255 times')
  const part = program.model.parts[doors.busiestPart()]
  throw new TooManyEvents(
    `${part === undefined ? 'replacing the set' : `part "${part.id}"`} keeps the simulation busy: over 100000 events in one history`,
  )
}

const tooManySets = 2

let forDraws: Doors | undefined

/** The two words of a draw of a set as a whole, as the simulator draws them. */
export function setWords(of: {
  readonly seed: number
  readonly history: number
  readonly set: number
  readonly forWhat: number
}): readonly [number, number] {
  forDraws ??= instantiate()
  forDraws.drawFor(of.seed, of.history, of.set, WHOLE_SET, 0, of.forWhat)
  return [forDraws.word(0) >>> 0, forDraws.word(1) >>> 0]
}

/** Stands for "no mode". */
const WHOLE_SET = 8191
