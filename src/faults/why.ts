/**
 * Why a fault stands where it does: which answers speak for and against it and by how much, what else would look the same,
 * and what it drags down when the set is run on.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Fault } from '../catalogue/fault-schema.js'
import type { AnswerKey, FaultPosterior, FaultTables } from './infer.js'

/** One answer's say: so many times likelier with this fault than if no fault had to do with it; under 1 speaks against. */
export interface Speaks {
  readonly answer: AnswerKey
  readonly times: number
}

export interface LooksAlike {
  readonly fault: string
  readonly chance: number
  /** The check left over that would best tell the two apart. */
  readonly toldApartBy?: string
}

export interface DraggedPart {
  readonly part: string
  /** Chance that the failure does it. */
  readonly chance: number
  readonly what: string
}

export interface Why {
  readonly fault: string
  readonly chance: number
  /** The strongest first, for and against. */
  readonly speaks: readonly Speaks[]
  /** Likely as well, and explaining what was answered nearly as well. */
  readonly looksAlike: readonly LooksAlike[]
  readonly dragsDown: readonly string[]
  readonly draggedParts: readonly DraggedPart[]
}

/** Faults whose answers are within this factor of each other look the same; less likely ones are left out. Practice. */
const alikeTimes = 3
const alikeChance = 0.02
const mostAlike = 5

export function whyOf(
  tables: FaultTables,
  posterior: FaultPosterior,
  of: {
    readonly fault: string
    /** Ids of checks that could still be done. */
    readonly left: readonly string[]
    readonly catalogue: Pick<Catalogue, 'parts'>
  },
): Why {
  const f = tables.faults.indexOf(of.fault)
  const fault = tables.model.faults[f]
  if (fault === undefined) throw new RangeError(`fault must be of the fault model; found ${of.fault}`)
  const speaks = posterior.pulls
    .map(({ answer, byFault, otherwise }) => ({ answer, times: Math.exp(byFault[f]! - otherwise) }))
    .sort((a, b) => Math.abs(Math.log(b.times)) - Math.abs(Math.log(a.times)))
  return {
    fault: of.fault,
    chance: posterior.chances[f]!,
    speaks,
    looksAlike: alikeTo(tables, posterior, { f, left: of.left }),
    dragsDown: fault.dragsDown,
    draggedParts: draggedBy(fault, of.catalogue),
  }
}

function alikeTo(
  tables: FaultTables,
  { pulls, chances }: FaultPosterior,
  { f, left }: { readonly f: number; readonly left: readonly string[] },
): LooksAlike[] {
  const pullOn = (g: number) => pulls.reduce((sum, { byFault }) => sum + byFault[g]!, 0)
  const own = pullOn(f)
  return [...chances.keys()]
    .filter((g) => g !== f && chances[g]! >= alikeChance && Math.abs(pullOn(g) - own) < Math.log(alikeTimes))
    .sort((a, b) => chances[b]! - chances[a]!)
    .slice(0, mostAlike)
    .map((g) => {
      const check = bestBetween(tables, { f, g, left })
      return {
        fault: tables.faults[g]!,
        chance: chances[g]!,
        ...(check === undefined ? {} : { toldApartBy: check }),
      }
    })
}

/** The check with the largest Σ (P(o|f) − P(o|g))·ln(P(o|f)/P(o|g)); none where all say the same of both. */
function bestBetween(
  tables: FaultTables,
  { f, g, left }: { readonly f: number; readonly g: number; readonly left: readonly string[] },
): string | undefined {
  let best: string | undefined
  let most = 1e-9
  for (const check of left) {
    let apart = 0
    for (const logs of tables.checks.get(check)!.values()) {
      apart += (Math.exp(logs[f]!) - Math.exp(logs[g]!)) * (logs[f]! - logs[g]!)
    }
    if (apart > most) [best, most] = [check, apart]
  }
  return best
}

/** Other parts that the catalogue has the failure damage; of several ways, the likeliest. */
function draggedBy({ parts }: Fault, catalogue: Pick<Catalogue, 'parts'>): DraggedPart[] {
  const dragged = new Map<string, DraggedPart>()
  for (const { part, mode } of parts) {
    const modes = catalogue.parts.find(({ id }) => id === part)?.modes ?? []
    for (const known of modes) {
      if (mode !== undefined && known.id !== mode) continue
      for (const { to, chance, what } of known.links) {
        if (chance > (dragged.get(to)?.chance ?? 0)) dragged.set(to, { part: to, chance, what })
      }
    }
  }
  return [...dragged.values()].sort((a, b) => b.chance - a.chance)
}
