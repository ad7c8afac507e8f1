/**
 * Contract. The map between two views of a plane, from four or more pairs of points (no three of the first four in a
 * line). Points are pixel or mm coordinates; both sets are normalised first (Hartley), then the eight unknowns are
 * solved by least squares. Gives null where the points do not determine a map.
 */
import { point, type Point, type Space } from '../../geometry/point'

/** Row by row: `x' = (m0·x + m1·y + m2) / w`, `y' = (m3·x + m4·y + m5) / w`, `w = m6·x + m7·y + m8`. */
export interface Homography<From extends Space, To extends Space> {
  readonly m: readonly number[]
  readonly way?: (from: From, to: To) => [From, To]
}

export function applyHomography<A extends Space, B extends Space>({ m }: Homography<A, B>, p: Point<A>): Point<B> {
  const w = m[6]! * p.x + m[7]! * p.y + m[8]!
  return point((m[0]! * p.x + m[1]! * p.y + m[2]!) / w, (m[3]! * p.x + m[4]! * p.y + m[5]!) / w)
}

/** The map that carries each `from` to its `to` as nearly as can be; exactly, for four pairs. */
export function fitHomography<A extends Space, B extends Space>(
  from: readonly Point<A>[],
  to: readonly Point<B>[],
): Homography<A, B> | null {
  if (from.length < 4 || from.length !== to.length) return null
  const [a, b] = [normaliser(from), normaliser(to)]
  const normal = Array.from({ length: 8 }, () => new Array<number>(9).fill(0))
  from.forEach((p, i) => {
    const [x, y] = [(p.x - a.x) * a.scale, (p.y - a.y) * a.scale]
    const [u, v] = [(to[i]!.x - b.x) * b.scale, (to[i]!.y - b.y) * b.scale]
    addEquation(normal, [x, y, 1, 0, 0, 0, -u * x, -u * y, u])
    addEquation(normal, [0, 0, 0, x, y, 1, -v * x, -v * y, v])
  })
  const solved = solve(normal)
  if (!solved) return null
  const into = [a.scale, 0, -a.x * a.scale, 0, a.scale, -a.y * a.scale, 0, 0, 1]
  const back = [1 / b.scale, 0, b.x, 0, 1 / b.scale, b.y, 0, 0, 1]
  return { m: times(times(back, [...solved, 1]), into) }
}

/** The way back. */
export function invertHomography<A extends Space, B extends Space>({ m }: Homography<A, B>): Homography<B, A> {
  const [a, b, c, d, e, f, g, h, i] = m as [number, number, number, number, number, number, number, number, number]
  return {
    m: [
      e * i - f * h,
      c * h - b * i,
      b * f - c * e,
      f * g - d * i,
      a * i - c * g,
      c * d - a * f,
      d * h - e * g,
      b * g - a * h,
      a * e - b * d,
    ],
  }
}

function normaliser<S extends Space>(points: readonly Point<S>[]) {
  const x = points.reduce((sum, p) => sum + p.x, 0) / points.length
  const y = points.reduce((sum, p) => sum + p.y, 0) / points.length
  const spread = points.reduce((sum, p) => sum + Math.hypot(p.x - x, p.y - y), 0) / points.length
  return { x, y, scale: Math.SQRT2 / Math.max(spread, 1e-12) }
}

/** Adds a row (eight factors and a right side) to the normal equations. */
function addEquation(normal: number[][], row: readonly number[]): void {
  for (let i = 0; i < 8; i++) for (let j = 0; j < 9; j++) normal[i]![j]! += row[i]! * row[j]!
}

/** Gauss with pivots; null where the equations do not determine the unknowns. */
export function solve(rows: number[][]): number[] | null {
  const n = rows.length
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i
    ;[rows[k], rows[best]] = [rows[best]!, rows[k]!]
    const pivot = rows[k]![k]!
    if (Math.abs(pivot) < 1e-10) return null
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const factor = rows[i]![k]! / pivot
      if (factor !== 0) for (let j = k; j <= n; j++) rows[i]![j]! -= factor * rows[k]![j]!
    }
  }
  return rows.map((row, k) => row[n]! / row[k]!)
}

const times = (p: readonly number[], q: readonly number[]): number[] =>
  Array.from({ length: 9 }, (_, at) => {
    const [row, column] = [Math.floor(at / 3), at % 3]
    return [0, 1, 2].reduce((sum, k) => sum + p[3 * row + k]! * q[3 * k + column]!, 0)
  })
