/**
 * Whether polygons on the grid keep clear of each other.
 *
 * Input: polygons as `clip-grid.ts` describes them. Output: true when no two have a point in common, also on their borders.
 * Exact; nothing fails.
 */
import { boxAround, type Box } from './box'
import { gridBetween, gridCross, type GridPoint, type GridRing } from './clip-grid'

type GridBox = Box<'leaf'>

export function areApart(polygons: readonly (readonly GridRing[])[]): boolean {
  const boxes = polygons.map(([outer]) => boxAround<'leaf'>(outer!))
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
      return meet(boxAround<'leaf'>([a, b]), box) ? [[a, b]] : []
    }),
  )

/** Borders counted in. */
const meet = (p: GridBox, q: GridBox): boolean =>
  p.min.x <= q.max.x && q.min.x <= p.max.x && p.min.y <= q.max.y && q.min.y <= p.max.y

/** Edges whose lines each leave the other's ends on both sides, or on it. */
function edgesMeet([a, b]: GridEdge, [c, d]: GridEdge): boolean {
  const side = (from: GridPoint, to: GridPoint, p: GridPoint) =>
    Math.sign(gridCross(gridBetween(from, to), gridBetween(from, p)))
  return (
    meet(boxAround<'leaf'>([a, b]), boxAround<'leaf'>([c, d])) &&
    side(a, b, c) * side(a, b, d) <= 0 &&
    side(c, d, a) * side(c, d, b) <= 0
  )
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
