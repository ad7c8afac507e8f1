import { boxAround, boxCentre, boxGrown, boxRing, regionBox, type Box } from '../geometry/box'
import { intersectAll, withoutSlivers } from '../geometry/clip'
import { convexOverlap, convexOverlapArea } from '../geometry/convex'
import { point, type Point } from '../geometry/point'
import { regionArea, signedArea, type Polygon, type Region, type Ring } from '../geometry/polygon'

/** An end or an edge of a leaf, as the leaf lies numbered side up. */
export type LeafSide = 'numbered end' | 'far end' | 'left edge' | 'right edge'

/** What of a rough piece does not lie in sound wood. */
export interface Lack {
  /** By how much the piece would have to be shorter or narrower at one side to be free of it. */
  readonly by: number
  readonly side: LeafSide
  /** A place in what is missing. */
  readonly at: Point<'leaf'>
}

const SIDES: readonly LeafSide[] = ['numbered end', 'far end', 'left edge', 'right edge']

// what the grid leaves along an edge that just fits: square millimetres, and the width of such a strip
const NEGLIGIBLE = 0.5
const LEAST = 0.02

/**
 * The lacks of a rough piece where it lies on its leaf, at most one for each side, measured along the grain and
 * across it. First what lies wholly beyond the wood at each side is taken off; each part that is still missing counts for
 * the side at which least wood would be given up for it. Empty when the piece fits.
 */
export function lacksOf(rough: Ring<'leaf'>, usable: Region<'leaf'>): readonly Lack[] {
  const kept = intersectAll<'leaf'>([[[rough]], usable])
  if (signedArea(rough) - regionArea(kept) < NEGLIGIBLE) return []
  const whole = boxAround(rough)
  const sound = kept.length > 0 ? regionBox(kept) : whole
  const beyond = SIDES.map((side) => {
    const strip = stripAt(whole, side, sound)
    return { side, by: widthAt(strip, side), at: boxCentre(strip) }
  })
  const missing = partsMissing(convexOverlap(rough, boxRing(sound)), kept)
  const lacks = [...beyond, ...missing.map(([ring]) => cheapest(rough, whole, boxAround(ring)))]
  return SIDES.flatMap((side) => {
    const worst = lacks.filter((lack) => lack.side === side).reduce((p, q) => (q.by > p.by ? q : p))
    return worst.by > LEAST ? [worst] : []
  })
}

/** What of a piece is not kept, without what the grid leaves. */
function partsMissing(piece: Ring<'leaf'> | null, kept: Region<'leaf'>): Region<'leaf'> {
  if (!piece || signedArea(piece) - regionArea(kept) < NEGLIGIBLE) return []
  // with the borders that the two share, taking one from the other is slow; what lies outside is found at once
  const around = boxRing(boxGrown(boxAround(piece), { top: 1, right: 1, bottom: 1, left: 1 }))
  const outside: Region<'leaf'> = [
    [around, ...kept.map(([outer]) => outer)],
    ...kept.flatMap(([, ...holes]) => holes.map((hole): Polygon<'leaf'> => [hole])),
  ]
  return withoutSlivers(intersectAll<'leaf'>([[[piece]], outside]), LEAST)
}

/** How wide the strip is that goes at a side. */
function widthAt({ min, max }: Box<'leaf'>, side: LeafSide): number {
  return side === 'left edge' || side === 'right edge' ? max.x - min.x : max.y - min.y
}

/** The side at which least of the piece has to go to be rid of a missing part. */
function cheapest(rough: Ring<'leaf'>, whole: Box<'leaf'>, part: Box<'leaf'>): Lack {
  const strips = SIDES.map((side) => stripAt(whole, side, { min: part.max, max: part.min }))
  const given = strips.map((strip) => convexOverlapArea(rough, boxRing(strip)))
  const least = given.indexOf(Math.min(...given))
  return { side: SIDES[least]!, by: widthAt(strips[least]!, SIDES[least]!), at: boxCentre(part) }
}

/** The strip of a box from one side on to that of an inner one. */
function stripAt({ min, max }: Box<'leaf'>, side: LeafSide, inner: Box<'leaf'>): Box<'leaf'> {
  switch (side) {
    case 'numbered end':
      return { min, max: point(max.x, inner.min.y) }
    case 'far end':
      return { min: point(min.x, inner.max.y), max }
    case 'left edge':
      return { min, max: point(inner.min.x, max.y) }
    case 'right edge':
      return { min: point(inner.max.x, min.y), max }
  }
}
