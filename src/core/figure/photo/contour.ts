import { point, type Point, type Space } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import type { Plane } from '../box-sums'

/**
 * The longest closed line on which a field, known at the middles of pixels, has a value: marching squares, in pixels
 * from the picture's outer corner. null if there is none. What touches the border of the picture is not closed.
 */
export function longestContour(field: Plane, width: number, height: number, level: number): Ring<'screen'> | null {
  const seen = new Uint8Array(width * height)
  let best: Point<'screen'>[] | null = null
  for (let y = 0; y + 1 < height; y++)
    for (let x = 0; x + 1 < width; x++) {
      const at = y * width + x
      // begin where the line crosses the left edge of a cell, going in
      if (seen[at] || !(field[at]! < level && field[at + width]! >= level)) continue
      const line = traced(field, width, height, level, x, y, seen)
      if (line && (!best || line.length > best.length)) best = line
    }
  return best
}

/** Edges of a cell: 0 top, 1 right, 2 bottom, 3 left. */
type CellEdge = 0 | 1 | 2 | 3
const STEPS: readonly (readonly [number, number])[] = [
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0],
]

/** Follows the line from cell to cell with the higher side kept on one hand. */
function traced(
  field: Plane,
  width: number,
  height: number,
  level: number,
  startX: number,
  startY: number,
  seen: Uint8Array,
): Point<'screen'>[] | null {
  const line: Point<'screen'>[] = []
  let [x, y] = [startX, startY]
  let enter: CellEdge = 3
  for (;;) {
    if (enter === 3 && field[y * width + x]! < level) seen[y * width + x] = 1
    line.push(crossing(field, width, level, x, y, enter))
    const leave: CellEdge = exitFrom(field, width, level, x, y, enter)
    x += STEPS[leave]![0]
    y += STEPS[leave]![1]
    if (x < 0 || y < 0 || x + 1 >= width || y + 1 >= height) return null
    enter = ((leave + 2) % 4) as CellEdge
    if (x === startX && y === startY && enter === 3) return line
    if (line.length > 4 * (width + height) * 20) return null
  }
}

function corners(field: Plane, width: number, x: number, y: number): readonly number[] {
  const at = y * width + x
  return [field[at]!, field[at + 1]!, field[at + width + 1]!, field[at + width]!]
}

/** The edge by which the line leaves; at a saddle it turns towards the low side, so that the high sides stay apart. */
function exitFrom(field: Plane, width: number, level: number, x: number, y: number, enter: CellEdge): CellEdge {
  const high = corners(field, width, x, y).map((value) => value >= level)
  const isCrossed = (edge: number) => high[edge] !== high[(edge + 1) % 4]
  for (const turn of [1, 2, 3]) {
    const edge = ((enter + 4 - turn) % 4) as CellEdge
    if (isCrossed(edge)) return edge
  }
  return enter
}

function crossing(field: Plane, width: number, level: number, x: number, y: number, edge: CellEdge): Point<'screen'> {
  const c = corners(field, width, x, y)
  const [a, b] = [c[edge]!, c[(edge + 1) % 4]!]
  const t = a === b ? 0.5 : (level - a) / (b - a)
  const places = [
    [x, y],
    [x + 1, y],
    [x + 1, y + 1],
    [x, y + 1],
  ] as const
  const [from, to] = [places[edge]!, places[(edge + 1) % 4]!]
  return point(from[0] + (to[0] - from[0]) * t + 0.5, from[1] + (to[1] - from[1]) * t + 0.5)
}

/** The points of a closed line that are needed to stay within `within` of it (Douglas and Peucker, from two far points). */
export function simplifiedRing<S extends Space>(ring: Ring<S>, within: number): Ring<S> {
  if (ring.length < 5) return ring
  let far = 0
  const away = (p: Point<S>) => (p.x - ring[0]!.x) ** 2 + (p.y - ring[0]!.y) ** 2
  ring.forEach((p, i) => (far = away(p) > away(ring[far]!) ? i : far))
  const there = simplifiedLine(ring.slice(0, far + 1), within)
  const back = simplifiedLine([...ring.slice(far), ring[0]!], within)
  return [...there.slice(0, -1), ...back.slice(0, -1)]
}

function simplifiedLine<S extends Space>(line: readonly Point<S>[], within: number): readonly Point<S>[] {
  const keep = new Uint8Array(line.length)
  keep[0] = keep[line.length - 1] = 1
  const open: [number, number][] = [[0, line.length - 1]]
  for (let span = open.pop(); span; span = open.pop()) {
    const [from, to] = span
    const [a, b] = [line[from]!, line[to]!]
    const length = Math.max(Math.hypot(b.x - a.x, b.y - a.y), 1e-9)
    let [worst, at] = [within, -1]
    for (let i = from + 1; i < to; i++) {
      const p = line[i]!
      const off = Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length
      if (off > worst) [worst, at] = [off, i]
    }
    if (at === -1) continue
    keep[at] = 1
    open.push([from, at], [at, to])
  }
  return line.filter((_, i) => keep[i])
}
