import type { Piece } from '../fit/lay-face'
import { boxAround, type Box } from '../geometry/box'
import { ringEdges, type Ring } from '../geometry/polygon'
import { present } from '../invariant'
import { leafOutline } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'

/** From the wild edges to the sides of the rough piece, at one of its ends. */
export interface AcrossAt {
  readonly fromLeft: number
  readonly fromRight: number
}

/**
 * Where a rough piece lies on its leaf, told so that it can be found again with a rule, numbered side up: along from
 * the numbered end, across from both wild edges at both ends of the piece. A wild edge gives no straight line to
 * measure from, so nothing is told between the ends.
 */
export interface LeafPlace {
  /** From the numbered end to the near and to the far end of the piece, along its middle. */
  readonly near: number
  readonly far: number
  /** From the far end of the leaf to the far end of the piece. */
  readonly rest: number
  readonly atNear: AcrossAt
  readonly atFar: AcrossAt
}

/** Measured on the outline; the piece must have a leaf. */
export function leafPlace(flitch: Flitch, piece: Piece): LeafPlace {
  const outline = leafOutline(flitch, present(piece.leaf, 'a piece without a leaf has no place'))
  const box = boxAround(piece.roughOnLeaf)
  const { from, to } = alongAt(outline, box)
  return {
    near: box.min.y - from,
    far: box.max.y - from,
    rest: to - box.max.y,
    atNear: acrossAt(outline, piece.roughOnLeaf, box.min.y),
    atFar: acrossAt(outline, piece.roughOnLeaf, box.max.y),
  }
}

/** Where the leaf begins and ends on the middle line of the piece. */
function alongAt(outline: Ring<'leaf'>, { min, max }: Box<'leaf'>): { from: number; to: number } {
  const middle = (min.x + max.x) / 2
  const ends = crossings(outline, 'x', middle)
  const leaf = boxAround(outline)
  return {
    from: nearestBefore(ends, (min.y + max.y) / 2) ?? leaf.min.y,
    to: nearestAfter(ends, (min.y + max.y) / 2) ?? leaf.max.y,
  }
}

/** From the wild edges to what the piece has at this height: a straight end, or the tip of a wedge. */
function acrossAt(outline: Ring<'leaf'>, rough: Ring<'leaf'>, y: number): AcrossAt {
  const { min, max } = boxAround(rough.filter((p) => Math.abs(p.y - y) < 0.01))
  const leaf = boxAround(outline)
  // where the piece reaches past the leaf, the nearest place on the leaf is measured
  const level = Math.min(leaf.max.y - 1e-6, Math.max(leaf.min.y + 1e-6, y))
  const edges = crossings(outline, 'y', level)
  const middle = (min.x + max.x) / 2
  return {
    fromLeft: min.x - (nearestBefore(edges, middle) ?? leaf.min.x),
    fromRight: (nearestAfter(edges, middle) ?? leaf.max.x) - max.x,
  }
}

function crossings(outline: Ring<'leaf'>, fixed: 'x' | 'y', at: number): readonly number[] {
  const free = fixed === 'x' ? 'y' : 'x'
  return ringEdges(outline).flatMap(({ a, b }) =>
    a[fixed] > at === b[fixed] > at ? [] : [a[free] + ((b[free] - a[free]) * (at - a[fixed])) / (b[fixed] - a[fixed])],
  )
}

const nearestBefore = (places: readonly number[], at: number): number | null => {
  const before = places.filter((place) => place <= at)
  return before.length ? Math.max(...before) : null
}

const nearestAfter = (places: readonly number[], at: number): number | null => {
  const after = places.filter((place) => place > at)
  return after.length ? Math.min(...after) : null
}
