/**
 * A mixed-integer programme laid down row by row, and its optimum.
 *
 * Numbers go to the solver as arrays, never as text: a text that it cannot read comes back as an empty programme without
 * an error. Whatever is not a proved optimum is a failure, told in words.
 *
 * @module
 */

import type { Highs, ModelStatusCode } from 'highs'

/** One variable. */
export interface Column {
  readonly cost?: number
  readonly from?: number
  readonly to?: number
  /** Takes whole values only. */
  readonly whole?: boolean
}

/** A sum of variables between two bounds; a bound left out does not bind. */
export interface Row {
  readonly terms: readonly Term[]
  readonly least?: number
  readonly most?: number
}

/** A variable, by its number, times a factor. */
export type Term = readonly [column: number, factor: number]

/** A programme under construction. */
export interface Programme {
  readonly columns: Column[]
  readonly rows: Row[]
}

export type Optimum =
  | { readonly ok: true; readonly values: Float64Array; readonly cost: number }
  | { readonly ok: false; readonly why: 'infeasible' | 'time' | 'failed'; readonly words: string }

type Load = (options?: { readonly locateFile?: (file: string) => string }) => Promise<Highs>

/** The solver, fetched when it is first asked for: three and a half megabytes. Its types tell the default export of another module form. */
export async function loadSolver(...options: Parameters<Load>): Promise<Highs> {
  const { default: load } = (await import('highs')) as unknown as { readonly default: Load }
  return load(...options)
}

export function emptyProgramme(): Programme {
  return { columns: [], rows: [] }
}

/** Adds a variable and gives its number. */
export function addColumn(programme: Programme, column: Column): number {
  return programme.columns.push(column) - 1
}

/** Adds a yes-or-no and gives its number. */
export function addChoice(programme: Programme, cost = 0, isOpen = true): number {
  return addColumn(programme, { cost, from: 0, to: isOpen ? 1 : 0, whole: true })
}

export interface SolverLimit {
  readonly seconds: number
  /** `little`: for a programme so small that preparing it takes longer than solving it. */
  readonly effort?: 'usual' | 'little'
}

/** The least cost that the rows allow, proved: no gap is left between the best found and the bound. */
export function optimumOf(
  highs: Highs,
  programme: Programme,
  { seconds, effort = 'usual' }: SolverLimit,
): Optimum {
  return highs.withModel(toArrays(highs, programme), (model): Optimum => {
    model.options.set({
      ...{ output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-7, time_limit: seconds },
      ...(effort === 'little' ? { presolve: 'off', mip_heuristic_effort: 0 } : {}),
    })
    const { modelStatus } = model.run()
    if (!isOptimal(modelStatus)) return { ok: false, why: whyOf(modelStatus), words: wordsOf(modelStatus) }
    return { ok: true, values: model.getSolution().colValue, cost: model.getObjectiveValue() }
  })
}

/** Codes of the solver's interface. */
const optimal = 7
const infeasible: readonly ModelStatusCode[] = [8, 9]
const outOfTime = 13

/** Whether the solver proved what it gives. */
export function isOptimal(status: ModelStatusCode): boolean {
  return status === optimal
}

function whyOf(status: ModelStatusCode): 'infeasible' | 'time' | 'failed' {
  if (infeasible.includes(status)) return 'infeasible'
  return status === outOfTime ? 'time' : 'failed'
}

function wordsOf(status: ModelStatusCode): string {
  const why = whyOf(status)
  if (why === 'infeasible') return 'nothing meets all that is asked'
  if (why === 'time') return 'no best answer was proved in the time given'
  return `the solver stopped without a proved answer (its code ${status})`
}

/** The programme as arrays, its matrix row by row. */
export function toArrays(highs: Highs, { columns, rows }: Programme) {
  const far = highs.infinity
  const entries = rows.reduce((sum, { terms }) => sum + terms.length, 0)
  const starts = new Int32Array(rows.length + 1)
  const indices = new Int32Array(entries)
  const values = new Float64Array(entries)
  let at = 0
  rows.forEach(({ terms }, row) => {
    for (const [column, factor] of terms) {
      indices[at] = column
      values[at] = factor
      at++
    }
    starts[row + 1] = at
  })
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, ({ cost }) => cost ?? 0),
    colLower: Float64Array.from(columns, ({ from }) => from ?? 0),
    colUpper: Float64Array.from(columns, ({ to }) => to ?? far),
    rowLower: Float64Array.from(rows, ({ least }) => least ?? -far),
    rowUpper: Float64Array.from(rows, ({ most }) => most ?? far),
    matrix: {
      format: 'csr' as const,
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices,
      values,
    },
    integrality: Int32Array.from(columns, ({ whole }) => (whole ? 1 : 0)),
  }
}
