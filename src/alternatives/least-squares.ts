/**
 * Least squares by the normal equations, for a regression on a handful of well-scaled columns.
 *
 * @module
 */

/** Ridge against columns that do not vary, relative to the largest diagonal element. */
const ridge = 1e-10

/** XᵀX and Xᵀy of some rows. */
export interface NormalEquations {
  readonly matrix: readonly Float64Array[]
  readonly right: Float64Array
}

/**
 * Fits values to the columns of `features` (which include the constant): ŷ = X(XᵀX)⁻¹Xᵀy. The columns are multiplied once
 * for all values that are fitted to them.
 */
export function fitterOf(features: readonly Float64Array[]): (values: Float64Array) => Float64Array {
  const matrix = productsOf(features)
  return (values) => {
    const weights = leastSquares({ matrix, right: Float64Array.from(features, (a) => dot(a, values)) })
    const fitted = new Float64Array(values.length)
    for (let j = 0; j < features.length; j++) {
      const feature = features[j]!
      const weight = weights[j]!
      for (let i = 0; i < fitted.length; i++) fitted[i]! += weight * feature[i]!
    }
    return fitted
  }
}

/** XᵀX, which is symmetric. */
function productsOf(columns: readonly Float64Array[]): Float64Array[] {
  const matrix = columns.map(() => new Float64Array(columns.length))
  for (let a = 0; a < columns.length; a++) {
    for (let b = 0; b <= a; b++) {
      matrix[a]![b] = dot(columns[a]!, columns[b]!)
      matrix[b]![a] = matrix[a]![b]!
    }
  }
  return matrix
}

/** The normal equations of several values on the same columns, of all rows or of some. */
export function normalEquations(
  features: readonly Float64Array[],
  values: readonly Float64Array[],
  rows?: Int32Array,
): NormalEquations[] {
  const pick = (column: Float64Array) => (rows === undefined ? column : pickedRows(column, rows))
  const columns = features.map(pick)
  const matrix = productsOf(columns)
  return values.map((one) => {
    const right = pick(one)
    return { matrix, right: Float64Array.from(columns, (column) => dot(column, right)) }
  })
}

/** The sum of several, one of them left out if it is named. */
export function without(list: readonly NormalEquations[], leftOut?: number): NormalEquations {
  const kept = list.filter((_, i) => i !== leftOut)
  const add = (rows: readonly Float64Array[]) =>
    rows[0]!.map((_, k) => rows.reduce((sum, row) => sum + row[k]!, 0))
  return {
    matrix: kept[0]!.matrix.map((_, r) => add(kept.map(({ matrix }) => matrix[r]!))),
    right: add(kept.map(({ right }) => right)),
  }
}

/** Weights of the columns. */
export function leastSquares({ matrix, right }: NormalEquations): Float64Array {
  const largest = Math.max(...matrix.map((row, i) => row[i]!))
  const steadied = matrix.map((row, i) => row.map((value, j) => (i === j ? value + ridge * largest : value)))
  return solveSymmetric(steadied, right)
}

/** What weights make of one row. */
export function fittedBy(weights: Float64Array, features: readonly Float64Array[], row: number): number {
  let sum = 0
  for (let j = 0; j < weights.length; j++) sum += weights[j]! * features[j]![row]!
  return sum
}

function pickedRows(values: Float64Array, rows: Int32Array): Float64Array {
  return Float64Array.from(rows, (row) => values[row]!)
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}

/** Solves a positive definite system by Cholesky's factors; `matrix` is overwritten. */
function solveSymmetric(matrix: readonly Float64Array[], right: Float64Array): Float64Array {
  const k = right.length
  for (let i = 0; i < k; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!
      for (let l = 0; l < j; l++) sum -= matrix[i]![l]! * matrix[j]![l]!
      matrix[i]![j] = i === j ? Math.sqrt(sum) : sum / matrix[j]![j]!
    }
  }
  const solution = Float64Array.from(right)
  for (let i = 0; i < k; i++) {
    for (let l = 0; l < i; l++) solution[i]! -= matrix[i]![l]! * solution[l]!
    solution[i]! /= matrix[i]![i]!
  }
  for (let i = k - 1; i >= 0; i--) {
    for (let l = i + 1; l < k; l++) solution[i]! -= matrix[l]![i]! * solution[l]!
    solution[i]! /= matrix[i]![i]!
  }
  return solution
}
