import { present } from '../invariant'

/** Rows of a square matrix. */
export type Matrix = readonly (readonly number[])[]

/**
 * The solution of a square system by elimination, the largest pivot first. The matrix must not be singular: stiffness
 * of a panel never is.
 */
export function solveLinear(matrix: Matrix, right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  rows.forEach((_, step) => eliminate(rows, step))
  const solution: number[] = new Array<number>(rows.length).fill(0)
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i]!
    const known = solution.reduce((sum, value, j) => (j > i ? sum + row[j]! * value : sum), 0)
    solution[i] = (row[rows.length]! - known) / row[i]!
  }
  return solution
}

function eliminate(rows: number[][], step: number): void {
  const from = rows.slice(step)
  const pivot =
    from.reduce((best, row, i) => (Math.abs(row[step]!) > Math.abs(from[best]![step]!) ? i : best), 0) + step
  const top = present(rows[pivot], 'a system of equations has no pivot row')
  rows[pivot] = rows[step]!
  rows[step] = top
  for (const row of rows.slice(step + 1)) {
    const factor = row[step]! / top[step]!
    if (factor === 0) continue
    for (let j = step; j < row.length; j++) row[j]! -= factor * top[j]!
  }
}
