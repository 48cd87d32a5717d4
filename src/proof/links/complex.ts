/**
 * Complex numbers, and linear equations in them: all that phasors need.
 *
 * @module
 */

export interface Complex {
  readonly re: number
  readonly im: number
}

export const nought: Complex = { re: 0, im: 0 }

export function complex(re: number, im = 0): Complex {
  return { re, im }
}

/** Of that size, at that angle. [°] */
export function polar({ size, degrees }: { readonly size: number; readonly degrees: number }): Complex {
  const angle = (degrees * Math.PI) / 180
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) }
}

export function plus(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im }
}

export function minus(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im }
}

export function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re }
}

export function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square }
}

export function scaled(a: Complex, factor: number): Complex {
  return { re: a.re * factor, im: a.im * factor }
}

export function conjugate(a: Complex): Complex {
  return { re: a.re, im: -a.im }
}

export function sizeOf(a: Complex): number {
  return Math.hypot(a.re, a.im)
}

/** From −180 (not itself) to 180. [°] */
export function degreesOf(a: Complex): number {
  return (Math.atan2(a.im, a.re) * 180) / Math.PI
}

/**
 * Solves A x = b by elimination, the largest element of each column as its pivot.
 *
 * @throws RangeError if no single solution exists.
 */
export function solveLinear(
  matrix: readonly (readonly Complex[])[],
  right: readonly Complex[],
): readonly Complex[] {
  const size = right.length
  const rows = matrix.map((row, at) => [...row, right[at]!])
  const largest = Math.max(...rows.flatMap((row) => row.map(sizeOf)))
  for (let column = 0; column < size; column++) {
    let pivot = column
    for (let row = column + 1; row < size; row++) {
      if (sizeOf(rows[row]![column]!) > sizeOf(rows[pivot]![column]!)) pivot = row
    }
    if (!(sizeOf(rows[pivot]![column]!) > largest * 1e-14)) {
      throw new RangeError(`matrix must be regular; found no pivot in column ${column + 1}`)
    }
    ;[rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!]
    for (let row = column + 1; row < size; row++) {
      const factor = over(rows[row]![column]!, rows[column]![column]!)
      if (sizeOf(factor) === 0) continue
      for (let at = column; at <= size; at++) {
        rows[row]![at] = minus(rows[row]![at]!, times(factor, rows[column]![at]!))
      }
    }
  }
  const solved: Complex[] = new Array(size)
  for (let row = size - 1; row >= 0; row--) {
    let rest = rows[row]![size]!
    for (let at = row + 1; at < size; at++) rest = minus(rest, times(rows[row]![at]!, solved[at]!))
    solved[row] = over(rest, rows[row]![row]!)
  }
  return solved
}
