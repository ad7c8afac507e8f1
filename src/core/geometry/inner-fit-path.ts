/**
 * The closed lines along which a piece touches a ring while it keeps its angle: the ring's edges and the piece's,
 * put together by their directions.
 *
 * Input: rings on the grid without repeats and spikes; the piece runs positively. Output: closed paths on the grid,
 * which may cross themselves. How often they wind round a point v counts (Euler characteristic) the parts that the
 * shape inside the ring has in common with the piece turned by half and set down at v. Exact; nothing fails.
 * Source: L. Guibas, L. Ramshaw, J. Stolfi, "A kinetic framework for computational geometry" (1983).
 *
 * An edge of the piece as steep as an edge of the ring counts as coming just before it: the same rule everywhere, so
 * that every path closes.
 */
import { gridBetween, gridCross, type GridPoint, type GridRing } from './clip-grid'

/** The one path of a ring (either way) and a convex piece, which may be a segment or a point. */
export function touchingPath(ring: GridRing, convexPiece: GridRing): GridRing {
  const edges = ringSteps(ring)
  const steps = convexPiece.length > 1 ? ringSteps(convexPiece) : []
  const count = steps.length
  let corner = count > 0 ? extremeCorner(steps, edges[0]!) : 0
  const path: GridRing = []

  const put = (at: GridPoint) => {
    const on = convexPiece[corner]!
    path.push({ x: at.x + on.x, y: at.y + on.y })
  }
  for (let i = 0; i < ring.length; i++) {
    const incoming = edges[i]!
    const outgoing = edges[(i + 1) % edges.length]!
    const next = ring[(i + 1) % ring.length]!
    put(next)
    if (gridCross(incoming, outgoing) > 0) {
      while (count > 0 && isAfter(incoming, steps[corner]!, outgoing)) {
        corner = (corner + 1) % count
        put(next)
      }
    } else {
      while (count > 0 && isAfter(outgoing, steps[(corner + count - 1) % count]!, incoming)) {
        corner = (corner + count - 1) % count
        put(next)
      }
    }
  }
  return path
}

/** The paths of a ring (either way) and any simple piece. */
export function touchingPaths(ring: GridRing, piece: GridRing): GridRing[] {
  const corners = piece.length
  const waysOn = touchingSteps(ring, piece)
  const paths: GridRing[] = []
  for (const start of waysOn.keys()) {
    while (waysOn.get(start)!.length > 0) {
      const path: GridRing = []
      let node = start
      do {
        const at = ring[Math.floor(node / corners)]!
        const on = piece[node % corners]!
        path.push({ x: at.x + on.x, y: at.y + on.y })
        node = waysOn.get(node)!.pop()!
      } while (node !== start)
      paths.push(path)
    }
  }
  return paths
}

/**
 * From each touching of a ring's corner and a piece's corner (numbered together) the touchings that come next: as
 * many as lead to it.
 */
function touchingSteps(ring: GridRing, piece: GridRing): Map<number, number[]> {
  const waysOn = new Map<number, number[]>()
  const ringEdges = ringSteps(ring)
  const pieceEdges = ringSteps(piece)
  const connect = (ringFrom: number, pieceFrom: number, ringTo: number, pieceTo: number) => {
    const from = (ringFrom % ring.length) * piece.length + (pieceFrom % piece.length)
    const to = (ringTo % ring.length) * piece.length + (pieceTo % piece.length)
    const ways = waysOn.get(from)
    if (ways) ways.push(to)
    else waysOn.set(from, [to])
  }
  for (let i = 0; i < ring.length; i++) {
    const ringIn = ringEdges[(i + ring.length - 1) % ring.length]!
    const ringOut = ringEdges[i]!
    const ringTurn = gridCross(ringIn, ringOut)
    for (let j = 0; j < piece.length; j++) {
      const pieceIn = pieceEdges[(j + piece.length - 1) % piece.length]!
      const pieceOut = pieceEdges[j]!
      if (ringTurn > 0 && isAfter(ringIn, pieceOut, ringOut)) connect(i, j, i, j + 1)
      if (ringTurn < 0 && isAfter(ringOut, pieceOut, ringIn)) connect(i, j + 1, i, j)
      const pieceTurn = gridCross(pieceIn, pieceOut)
      if (pieceTurn > 0 && isBefore(pieceIn, ringOut, pieceOut)) connect(i, j, i + 1, j)
      if (pieceTurn < 0 && isBefore(pieceOut, ringOut, pieceIn)) connect(i + 1, j, i, j)
    }
  }
  return waysOn
}

const ringSteps = (ring: GridRing): GridPoint[] => ring.map((p, i) => gridBetween(p, ring[(i + 1) % ring.length]!))

/** Turning positively from one direction to another (by less than half a turn), `step` lies after the first, or on the last. */
const isAfter = (from: GridPoint, step: GridPoint, to: GridPoint): boolean =>
  gridCross(from, step) > 0 && gridCross(step, to) >= 0

/** As `isAfter`, with the first direction counted in and the last one out. */
const isBefore = (from: GridPoint, step: GridPoint, to: GridPoint): boolean =>
  gridCross(from, step) >= 0 && gridCross(step, to) > 0

/** The corner of a convex ring at which a line of this direction touches it. */
function extremeCorner(steps: GridPoint[], direction: GridPoint): number {
  return steps.findIndex((outgoing, k) => {
    const incoming = steps[(k + steps.length - 1) % steps.length]!
    return isAhead(incoming, direction) && !isAhead(outgoing, direction)
  })
}

/** The direction is reached from the first by turning positively by less than half a turn, or is the same. */
function isAhead(from: GridPoint, direction: GridPoint): boolean {
  const turn = gridCross(from, direction)
  return turn > 0 || (turn === 0 && from.x * direction.x + from.y * direction.y > 0)
}
