/**
 * What a chain of edges sweeps with a convex piece on its right: the border of it, in linear time.
 *
 * Input: points on the grid, a chain that goes only down (y grows) or level, the right side of a convex piece from its
 * highest to its lowest corner. Output: a line that goes down or level, its corners on the grid. Tolerance: meeting points
 * are rounded to the grid; each is found on edges as they were before any cut, so that no rounding builds on another.
 * Failure: none.
 *
 * Because the piece is convex, what a later edge sweeps lies outside what the earlier ones do from some level on and
 * nowhere above it. So each edge takes off the end of the border and puts its own in its place.
 */
import { joinLine, putPlace, type GrowingBorder, type Line } from './growing-border'

/**
 * A border, from its highest point to its lowest. Before corner `from` it is the piece's side as it stands where the chain
 * starts, the same corners and as many. After corner `to` it is the side as it stands where the chain ends, and comes to
 * it on the edge that follows the side's corner `ahead`.
 */
export interface Swept {
  readonly from: number
  readonly to: number
  readonly ahead: number
}

/** Makes a border that of what all edges of a chain sweep. */
export function sweptBorder(border: GrowingBorder, chain: Line, side: Line): Swept {
  border.size = 0
  putPiece(border, side, chain)
  const swept: Line = { x: [], y: [], size: 0 }
  let [from, to, ahead] = [border.size, 0, 0]
  for (let i = 0; i + 1 < chain.size; i++) {
    const lead = sweep(swept, chain, i, side)
    const { next, isPut } = joinLine(border, swept)
    const last = border.size - 1
    from = Math.max(0, Math.min(from, last))
    // the line's second corner is the first one that it has of the side
    to = isPut && next > 1 ? last : last + Math.max(1, 2 - next)
    ahead = lead + Math.max(1, next) - 2
    for (let k = next; k < swept.size; k++) putPlace(border, swept.x[k]!, swept.y[k]!)
  }
  return { from, to, ahead }
}

/** Starts a border with the side of the piece where a chain starts. */
function putPiece(border: GrowingBorder, side: Line, chain: Line) {
  for (let k = 0; k < side.size; k++) putPlace(border, side.x[k]! + chain.x[0]!, side.y[k]! + chain.y[0]!)
}

/** Makes a line the border of what the i-th edge of a chain sweeps; the corner of the piece's side that goes ahead. */
function sweep(swept: Line, chain: Line, i: number, side: Line): number {
  const [ax, ay] = [chain.x[i]!, chain.y[i]!]
  const [bx, by] = [chain.x[i + 1]!, chain.y[i + 1]!]
  const lead = leadingCorner(side, bx - ax, by - ay)
  swept.x[0] = ax + side.x[lead]!
  swept.y[0] = ay + side.y[lead]!
  swept.size = 1
  for (let k = lead; k < side.size; k++, swept.size++) {
    swept.x[swept.size] = bx + side.x[k]!
    swept.y[swept.size] = by + side.y[k]!
  }
  return lead
}

/** The corner of a piece's right side that goes ahead when it moves along a step. */
function leadingCorner({ x, y, size }: Line, dx: number, dy: number): number {
  let k = 0
  while (k + 1 < size && (x[k + 1]! - x[k]!) * dy > (y[k + 1]! - y[k]!) * dx) k++
  return k
}
