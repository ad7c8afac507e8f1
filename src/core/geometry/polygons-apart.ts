/**
 * Whether polygons on the grid keep clear of each other.
 *
 * Input: polygons as `clip-grid.ts` describes them. Output: true when no two have a point in common, also on their borders.
 * Exact; nothing fails.
 */
import { gridBetween, gridCross, type GridPoint, type GridRing } from './clip-grid'

interface GridBox {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export function areApart(polygons: readonly (readonly GridRing[])[]): boolean {
  const boxes = polygons.map(([outer]) => boxOf(outer!))
  return polygons.every((polygon, i) =>
    polygons.slice(i + 1).every((other, j) => {
      const otherBox = boxes[i + 1 + j]!
      return !meet(boxes[i]!, otherBox) || isApart(polygon, boxes[i]!, other, otherBox)
    }),
  )
}

function isApart(p: readonly GridRing[], pBox: GridBox, q: readonly GridRing[], qBox: GridBox): boolean {
  const near = edgesWithin(p, qBox)
  if (edgesWithin(q, pBox).some((edge) => near.some((other) => edgesMeet(edge, other)))) return false
  return !covers(p, q[0]![0]!) && !covers(q, p[0]![0]!)
}

type GridEdge = readonly [GridPoint, GridPoint]

const edgesWithin = (rings: readonly GridRing[], box: GridBox): GridEdge[] =>
  rings.flatMap((ring) =>
    ring.flatMap((a, i): GridEdge[] => {
      const b = ring[(i + 1) % ring.length]!
      return meet(boxOf([a, b]), box) ? [[a, b]] : []
    }),
  )

function boxOf(points: readonly GridPoint[]): GridBox {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { x, y } of points) {
    if (x < left) left = x
    if (x > right) right = x
    if (y < top) top = y
    if (y > bottom) bottom = y
  }
  return { left, top, right, bottom }
}

const meet = (p: GridBox, q: GridBox): boolean =>
  p.left <= q.right && q.left <= p.right && p.top <= q.bottom && q.top <= p.bottom

/** Edges whose lines each leave the other's ends on both sides, or on it. */
function edgesMeet([a, b]: GridEdge, [c, d]: GridEdge): boolean {
  const side = (from: GridPoint, to: GridPoint, p: GridPoint) =>
    Math.sign(gridCross(gridBetween(from, to), gridBetween(from, p)))
  return meet(boxOf([a, b]), boxOf([c, d])) && side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0
}

/** A point off the border lies in a polygon: a line from it to the right crosses the border an odd number of times. */
function covers(rings: readonly GridRing[], { x, y }: GridPoint): boolean {
  let inside = false
  for (const ring of rings) {
    ring.forEach((a, i) => {
      const b = ring[(i + 1) % ring.length]!
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    })
  }
  return inside
}
