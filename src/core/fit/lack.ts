import { boxAround, boxCentre, boxGrown, boxRing, regionBox } from '../geometry/box'
import { intersectAll, regionLess, withoutSlivers, woundRegion } from '../geometry/clip'
import { toGrid, toGridPolygons } from '../geometry/clip-grid'
import { touchingPath } from '../geometry/inner-fit-path'
import { point, type Point } from '../geometry/point'
import { regionArea, type Polygon, type Region, type Ring } from '../geometry/polygon'
import { slabsOf, type Slab, type Stretch } from '../geometry/slabs'

/** An end or an edge of a leaf, as the leaf lies numbered side up. */
export type LeafSide = 'numbered end' | 'far end' | 'left edge' | 'right edge'

/** What of a rough piece does not lie in sound wood. */
export interface Lack {
  /** By how much the piece would have to be shorter or narrower at one side, or the leaf larger there, to be free of it. */
  readonly by: number
  readonly side: LeafSide
  /** A place in what is missing. */
  readonly at: Point<'leaf'>
}

const SIDES: readonly LeafSide[] = ['numbered end', 'far end', 'left edge', 'right edge']
const ENDS: readonly LeafSide[] = ['numbered end', 'far end']
const EDGES: readonly LeafSide[] = ['left edge', 'right edge']

// what the grid leaves along an edge that just fits: square millimetres, and the width of such a strip
const NEGLIGIBLE = 0.5
const LEAST = 0.02

/**
 * The lacks of a rough piece where it lies on its leaf, at most one for each side, measured along the grain and
 * across it. Each part that is missing counts for the side at which the leaf would have to be larger by least; what goes
 * round a corner of the leaf, for an end and then for an edge. Empty when the piece fits.
 */
export function lacksOf(rough: Ring<'leaf'>, usable: Region<'leaf'>): readonly Lack[] {
  const wood: Wood = { rough, usable }
  const lacks = partsMissing(wood).flatMap((part) => {
    const least = leastLack(part, wood)
    return least ? [least] : roundCorner(part, wood)
  })
  return SIDES.flatMap((side) => {
    const here = lacks.filter((lack) => lack.side === side)
    const worst = here.length > 0 ? here.reduce((p, q) => (q.by > p.by ? q : p)) : null
    return worst && worst.by > LEAST ? [worst] : []
  })
}

interface Wood {
  readonly rough: Ring<'leaf'>
  readonly usable: Region<'leaf'>
}

/** What of a piece does not lie in the wood, without what the grid leaves. */
function partsMissing({ rough, usable }: Wood): Region<'leaf'> {
  // where the two share borders taking one from the other is slow; what lies outside the wood is found at once
  const around = boxRing(boxGrown(boxAround(rough), { top: 1, right: 1, bottom: 1, left: 1 }))
  const outside: Region<'leaf'> = [
    [around, ...usable.map(([outer]) => outer)],
    ...usable.flatMap(([, ...holes]) => holes.map((hole): Polygon<'leaf'> => [hole])),
  ]
  const missing = intersectAll<'leaf'>([[[rough]], outside])
  return regionArea(missing) < NEGLIGIBLE ? [] : withoutSlivers(missing, LEAST)
}

/** The side at which least is lacking for a part; null when larger at one side alone the leaf would not do. */
function leastLack(part: Polygon<'leaf'>, { rough, usable }: Wood): Lack | null {
  const slabs = (axis: 'x' | 'y') => slabsOf<'leaf'>([[part], [[rough]], usable], axis, LEAST)
  const [along, across] = [slabs('x'), slabs('y')]
  const at = boxCentre(boxAround(part[0]))
  const lacks = SIDES.map((side): Lack => ({
    side,
    by: Math.max(0, ...(ENDS.includes(side) ? along : across).map((slab) => lackIn(slab, side))),
    at,
  }))
  const least = lacks.reduce((p, q) => (q.by < p.by ? q : p))
  return least.by < Infinity ? least : null
}

/** How far it is in a slab from the piece's border at a side to the wood that comes next after what is missing. */
const lackIn = (slab: Slab, side: LeafSide): number =>
  Math.max(0, ...slab[0]!.map((missing) => lackOfStretch(missing, slab, side)))

function lackOfStretch({ from, to }: Stretch, [, piece, wood]: Slab, side: LeafSide): number {
  const isLow = side === 'numbered end' || side === 'left edge'
  const middle = (place: readonly [number, number]) => (place[0] + place[1]) / 2
  const whole = piece!.find((stretch) => middle(stretch.from) < middle(to) && middle(stretch.to) > middle(from))
  const next = isLow
    ? wood!.find((stretch) => middle(stretch.from) >= middle(to) - LEAST)
    : wood!.findLast((stretch) => middle(stretch.to) <= middle(from) + LEAST)
  // along an edge that the piece and the wood share the grid leaves a sliver
  if (!whole || (to[0] - from[0] < LEAST && to[1] - from[1] < LEAST)) return 0
  if (!next) return Infinity
  const [near, far] = isLow ? [whole.from, next.from] : [next.to, whole.to]
  return Math.max(0, far[0] - near[0], far[1] - near[1])
}

/** What is missing round a corner: at the ends what lies above or below wood, and at the edges what then is left. */
function roundCorner(part: Polygon<'leaf'>, { rough, usable }: Wood): readonly Lack[] {
  const atEnds = lacksAtEither([part], { rough, usable }, ENDS)
  const larger = atEnds.reduce((wood, { side, by }) => enlarged(wood, side, by), usable)
  const left = withoutSlivers(regionLess<'leaf'>([part], larger), LEAST)
  return [...atEnds, ...lacksAtEither(left, { rough, usable: larger }, EDGES)]
}

/** The lacks at two sides across from each other, every stretch of what is missing counted for the nearer one. */
function lacksAtEither(missing: Region<'leaf'>, { rough, usable }: Wood, sides: readonly LeafSide[]): readonly Lack[] {
  const most = sides.map(() => 0)
  for (const slab of slabsOf<'leaf'>([missing, [[rough]], usable], sides === ENDS ? 'x' : 'y', LEAST)) {
    for (const stretch of slab[0]!) {
      const lacks = sides.map((side) => lackOfStretch(stretch, slab, side))
      const least = Math.min(...lacks)
      const at = lacks.indexOf(least)
      if (least < Infinity) most[at] = Math.max(most[at]!, least)
    }
  }
  const at = missing.length > 0 ? boxCentre(regionBox(missing)) : point<'leaf'>(0, 0)
  return sides.flatMap((side, i) => (most[i]! > LEAST ? [{ side, by: most[i]!, at }] : []))
}

/** Wood that has become larger at one of its sides. */
export function enlarged(wood: Region<'leaf'>, side: LeafSide, by: number): Region<'leaf'> {
  const far = side === 'numbered end' || side === 'left edge' ? -by : by
  const way = [point<'leaf'>(0, 0), ENDS.includes(side) ? point(0, far) : point(far, 0)].map((p) => toGrid(p))
  return woundRegion(toGridPolygons(wood).flatMap((rings) => rings.map((ring) => touchingPath(ring, way))))
}
