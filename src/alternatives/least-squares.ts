/**
 * Least squares by the normal equations, for a regression on a handful of well-scaled columns.
 *
 * @module
 */

/** Ridge against columns that do not vary, relative to the largest diagonal element. */
const ridge = 1e-10

/**
 * Fitted values of `values` on the columns of `features` (which include the constant): ŷ = X(XᵀX)⁻¹Xᵀy.
 */
export function solveLeastSquares(features: readonly Float64Array[], values: Float64Array): Float64Array {
  const k = features.length
  const n = values.length
  const normal = features.map((a) => Float64Array.from(features, (b) => dot(a, b)))
  const right = Float64Array.from(features, (a) => dot(a, values))
  const largest = Math.max(...normal.map((row, i) => row[i]!))
  for (let i = 0; i < k; i++) normal[i]![i]! += ridge * largest
  const weights = solveSymmetric(normal, right)
  const fitted = new Float64Array(n)
  for (let j = 0; j < k; j++) {
    const feature = features[j]!
    const weight = weights[j]!
    for (let i = 0; i < n; i++) fitted[i]! += weight * feature[i]!
  }
  return fitted
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
