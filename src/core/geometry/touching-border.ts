/**
 * The outermost part of the line along which a convex piece touches a ring: what `touchingPath` gives, without most of
 * the loops that it makes inside the touched shape.
 *
 * Input: a ring on the grid without repeats and spikes, running either way; a convex piece that runs positively, or is
 * a segment or a point. Output: a closed path on the grid that winds positively round a point exactly where
 * `touchingPath` does, with far fewer corners and crossings. Tolerance: meeting points are rounded to the grid.
 * Failure: none.
 *
 * The way: between its highest and lowest places a ring is a chain that only goes down, or only up. Of all that the
 * edges of a chain sweep with the piece, only the outermost border counts (`swept-border.ts`). Where the shape is hollow
 * between two chains, the line goes back along the piece set down in the hollow.
 *
 * Why the sign of the winding stays: cut the shape level at every hollow. Parts and cuts make a tree. `touchingPath`
 * counts, for a position, the parts touched less the cuts touched. This path counts the parts
 * touched less the neighbours that are both touched. Of a tree either leaves one or more as soon as a single part is
 * touched.
 */
import { gridTwiceArea, type GridPoint, type GridRing } from './clip-grid'
import { withHollowsFilled } from './hollow'
import { emptyBorder, putPoint, type Line } from './growing-border'
import { sweptBorder } from './swept-border'

/** The closed border of a ring (either way) and a convex piece. */
export function touchingBorder(ring: GridRing, convexPiece: GridRing): GridRing {
  const sides: Sides = { down: rightSide(convexPiece, 1), up: rightSide(convexPiece, -1) }
  const chains = outermostChains(ring, sides)
  const path: GridRing = []
  const border = emptyBorder()
  let hollow = !chains[chains.length - 1]!.bulges
  let first = 0
  chains.forEach(({ way, line, bulges, end }, i) => {
    const [here, there] = way > 0 ? [sides.down, sides.up] : [sides.up, sides.down]
    const { from, to, ahead } = sweptBorder(border, line, here)
    // back along the piece in the hollow, but for what the borders would only run along again
    if (i === 0) first = from
    else if (hollow) putBackwards(path, chains[i - 1]!.end, here, way, { from: here.size - 1, to: from })
    const last = bulges ? border.size - 1 : to
    for (let k = hollow ? from : 0; k <= last; k++) path.push({ x: way * border.x[k]!, y: way * border.y[k]! })
    hollow = !bulges
    if (!hollow) return
    putBackwards(path, end, here, way, { from: ahead, to: 0 })
    if (i === chains.length - 1) putBackwards(path, end, there, way > 0 ? -1 : 1, { from: there.size - 1, to: first })
  })
  return path
}

/** The right side of a piece, and its left side turned by half, each from its highest to its lowest corner. */
interface Sides {
  readonly down: Line
  readonly up: Line
}

/** The chains of a ring, its hollows that are too narrow for the piece filled. */
function outermostChains(ring: GridRing, sides: Sides): Chain[] {
  const chains = chainsOf(ring)
  // of the room inside a ring less may be left than the piece takes up, and of that the counting above is not true
  const isOutside = chains.length > 2 && gridTwiceArea(ring) < 0
  return chains.length === 2 || isOutside ? chains : chainsOf(withoutNarrowHollows(ring, sides))
}

function withoutNarrowHollows(ring: GridRing, { down, up }: Sides): GridRing {
  // how far the piece's upper and lower edges run level
  const opensUp = down.x[0]! + up.x[up.size - 1]!
  const opensDown = down.x[down.size - 1]! + up.x[0]!
  const filled = opensUp > 0 ? withHollowsFilled(ring, opensUp) : ring
  return opensDown > 0 ? turnedByHalf(withHollowsFilled(turnedByHalf(filled), opensDown)) : filled
}

const turnedByHalf = (ring: GridRing): GridRing => ring.map(({ x, y }) => ({ x: -x, y: -y }))

/** Part of a ring that goes only down (`way` 1) or only up (−1), level steps counted in. */
interface Chain {
  readonly way: 1 | -1
  /** Its corners; of a chain that goes up turned by half, so that every chain goes down with its shape on the left. */
  readonly line: Line
  /** Its last corner. */
  readonly end: GridPoint
  /** At its end the shape bulges out; where not, it is hollow there. */
  readonly bulges: boolean
}

/** The chains of a ring; level steps before a turn belong to the chain that they follow. */
function chainsOf(ring: GridRing): Chain[] {
  const n = ring.length
  const first = firstTurn(ring)
  const chains: Chain[] = []
  let line: Line = { x: [], y: [], size: 0 }
  let way: 1 | -1 = ring[(first + 1) % n]!.y > ring[first]!.y ? 1 : -1
  for (let k = 0, i = first; k <= n; k++, i = i + 1 === n ? 0 : i + 1) {
    const at = ring[i]!
    putPoint(line, way * at.x, way * at.y)
    const rise = ring[i + 1 === n ? 0 : i + 1]!.y - at.y
    if (k < n && rise * way >= 0) continue
    chains.push({ way, line, end: at, bulges: turnsRight(ring, i) })
    line = { x: [way * -at.x], y: [way * -at.y], size: 1 }
    way = way > 0 ? -1 : 1
  }
  return chains
}

/** A corner from which a ring goes up or down after it went the other way before. */
function firstTurn(ring: GridRing): number {
  const n = ring.length
  const rise = (i: number) => Math.sign(ring[i + 1 === n ? 0 : i + 1]!.y - ring[i]!.y)
  // the last step that is not level before the ring's beginning
  let before = 0
  for (let i = n - 1; before === 0; i--) before = rise(i)
  for (let i = 0; ; i++) {
    const here = rise(i)
    if (here === -before) return i
  }
}

function turnsRight(ring: GridRing, corner: number): boolean {
  const n = ring.length
  const [before, at, after] = [ring[(corner - 1 + n) % n]!, ring[corner % n]!, ring[(corner + 1) % n]!]
  return (at.x - before.x) * (after.y - at.y) - (at.y - before.y) * (after.x - at.x) > 0
}

/** The right side of a convex piece, or of the piece turned by half (−1), from its highest to its lowest corner. */
function rightSide(piece: GridRing, way: 1 | -1): Line {
  // of corners at one level the one farthest right
  const isHigher = (p: GridPoint, q: GridPoint) => way * (q.y - p.y) > 0 || (p.y === q.y && way * (p.x - q.x) > 0)
  const isLower = (p: GridPoint, q: GridPoint) => way * (p.y - q.y) > 0 || (p.y === q.y && way * (p.x - q.x) > 0)
  let [top, bottom] = [0, 0]
  for (let i = 1; i < piece.length; i++) {
    if (isHigher(piece[i]!, piece[top]!)) top = i
    if (isLower(piece[i]!, piece[bottom]!)) bottom = i
  }
  const side: Line = { x: [], y: [], size: 0 }
  for (let i = top; ; i = (i + 1) % piece.length) {
    putPoint(side, way * piece[i]!.x, way * piece[i]!.y)
    if (i === bottom) return side
  }
}

/** Adds part of one side of a piece set down somewhere, from a lower corner to a higher one. */
function putBackwards(
  path: GridRing,
  at: GridPoint,
  side: Line,
  way: 1 | -1,
  { from, to }: { readonly from: number; readonly to: number },
) {
  for (let k = from; k >= to; k--) path.push({ x: at.x + way * side.x[k]!, y: at.y + way * side.y[k]! })
}
