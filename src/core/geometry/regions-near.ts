/**
 * Whether two shapes come near each other.
 *
 * Input: regions that have no wood in common. Output: whether any two points of their borders are nearer than asked.
 * Tolerance: that of floating-point steps. Failure: none.
 */
import { boxAround, boxGrown, boxesOverlap, regionBox, type Box } from './box'
import type { Space } from './point'
import { ringEdges, type Edge, type Region } from './polygon'
import { distanceBetweenEdges } from './segment'

export function regionsNear<S extends Space>(p: Region<S>, q: Region<S>, within: number): boolean {
  if (p.length === 0 || q.length === 0) return false
  const by = { top: within, right: within, bottom: within, left: within }
  const [nearP, nearQ] = [boxGrown(regionBox(p), by), boxGrown(regionBox(q), by)]
  const others = edgesIn(q, nearP)
  return edgesIn(p, nearQ).some((edge) => others.some((other) => distanceBetweenEdges(edge, other) < within))
}

const edgesIn = <S extends Space>(region: Region<S>, box: Box<S>): readonly Edge<S>[] =>
  region.flatMap((polygon) =>
    polygon.flatMap((ring) => ringEdges(ring).filter(({ a, b }) => touches(boxAround([a, b]), box))),
  )

/** An upright or level edge has a box without area. */
const touches = <S extends Space>(p: Box<S>, q: Box<S>): boolean =>
  boxesOverlap(boxGrown(p, { top: 1, right: 1, bottom: 1, left: 1 }), q)
