/**
 * Where a piece can lie within a region without being turned.
 *
 * Input: a region (with holes, of several polygons) and the ring of a piece, convex or not, running either way; a
 * convex piece may have no width, or be a single point. Output: the region of all displacements v for which the piece
 * moved by v lies in the region, borders counted in. Holes that would lie wholly inside the piece are kept clear.
 * Tolerance: exact for the region and the piece snapped to the grid, with meeting points rounded to the grid.
 * Failure: none. A fit without play (along a line, or in one place) has no area: `innerFitExact` finds those too.
 *
 * The way: for each polygon, the lines along which the piece touches its rings (see `inner-fit-path.ts`, and for convex
 * pieces `touching-border.ts`), run so that they wind round v once more than the piece at v has parts outside the
 * polygon or in its holes. What they wind round positively is the answer. It holds for a piece that is in one part
 * without holes, as every ring is, and which is not larger than the polygon both ways.
 */
import { boxAround, boxHeight, boxWidth } from './box'
import { gridTwiceArea, toGrid, toGridPolygons, toGridRing, type GridPoint, type GridRing } from './clip-grid'
import { orientedRegion, regionLess, unite, withoutSlivers, woundRegion } from './clip'
import { convexHull, isConvex } from './convex'
import { touchingPath, touchingPaths } from './inner-fit-path'
import { add, distance, point, type Space } from './point'
import { farthestInside, nearestInside } from './pole'
import { areApart } from './polygons-apart'
import { regionArea, ringEdges, type Polygon, type Region, type Ring } from './polygon'
import { edgeLength } from './segment'
import { EXACT_FIT, GRID } from './tolerance'
import { touchingBorder } from './touching-border'

/** Every displacement that lays the piece within the region, where they fill an area. */
export function innerFit<S extends Space>(region: Region<S>, piece: Ring<S>): Region<S> {
  const turned = turnedByHalf(piece)
  return gridParts(region).flatMap((rings) => polygonFit<S>(rings, turned))
}

export interface InnerFit<S extends Space> {
  readonly region: Region<S>
  /**
   * The piece fits without any play. The region is then a band or a spot about the place where it does, in which the
   * piece sticks out by no more than `EXACT_FIT`.
   */
  readonly exact: boolean
}

/** As `innerFit`; when there is no area, the places where the piece fits exactly. */
export function innerFitExact<S extends Space>(region: Region<S>, piece: Ring<S>): InnerFit<S> {
  const roomy = withoutSlivers(innerFit(region, piece))
  if (roomy.length > 0) return { region: roomy, exact: false }
  const turned = turnedByHalf(piece)
  const places = gridParts(region)
    .flatMap((rings) => toGridPolygons(woundRegion(rings.map((ring) => touchingPath(ring, EXACT_FIT_DISC)))))
    .flatMap((rings) => polygonFit<S>(rings, turned))
    .filter((polygon) => isTrueFit(region, piece, polygon))
  return { region: places, exact: places.length > 0 }
}

/** The region drawn in by `dx` from the left and the right and by `dy` from above and below. */
export function erodedByBox<S extends Space>(region: Region<S>, dx: number, dy: number): Region<S> {
  if (dx <= 0 && dy <= 0) return orientedRegion(region)
  return innerFit(region, [point(-dx, -dy), point(dx, -dy), point(dx, dy), point(-dx, dy)])
}

/** A piece on the grid turned by half about the origin. */
interface Turned {
  readonly ring: GridRing
  readonly convex: boolean
  readonly width: number
  readonly height: number
}

function turnedByHalf<S extends Space>(piece: Ring<S>): Turned {
  const convex = isConvex(piece)
  // snapping may dent a convex ring, so its hull is taken on the grid
  const snapped = convex ? [...(convexHull(piece.map((p) => toGrid(p))) as GridPoint[])] : toGridRing(piece)
  const ring = snapped.map(({ x, y }) => ({ x: -x, y: -y }))
  if (gridTwiceArea(ring) < 0) ring.reverse()
  const box = boxAround<S>(ring)
  return { ring, convex, width: boxWidth(box), height: boxHeight(box) }
}

function polygonFit<S extends Space>(rings: GridRing[], { ring: piece, convex, width, height }: Turned): Region<S> {
  const box = boxAround<S>(rings[0]!)
  if (width >= boxWidth(box) || height >= boxHeight(box)) return []
  // the lines are those of everything outside the polygon; backwards they wind round where none of it is touched
  const outside = rings.map((ring) => [...ring].reverse())
  const paths = outside.flatMap((ring) => (convex ? [touchingBorder(ring, piece)] : touchingPaths(ring, piece)))
  return woundRegion(paths.map((path) => path.reverse()))
}

/** The polygons of a region on the grid. Those that touch are made one: a piece may lie across the line where they do. */
function gridParts<S extends Space>(region: Region<S>): GridRing[][] {
  const parts = toGridPolygons(region)
  return areApart(parts) ? parts : toGridPolygons(unite(region))
}

/**
 * By this the room is widened all round to find exact fits. Widening the room, and not narrowing the piece, keeps a
 * sharp corner of the piece where it is: taking 5 µm off its two edges would draw it back by far more.
 */
const EXACT_FIT_DISC: GridRing = toGridRing(
  Array.from({ length: 8 }, (_, i) => {
    const angle = ((2 * i + 1) * Math.PI) / 8
    return point<'leaf'>(EXACT_FIT * Math.cos(angle), EXACT_FIT * Math.sin(angle))
  }),
)

/** Set down in the middle of the places found, the piece sticks out by no more than the widening. */
function isTrueFit<S extends Space>(region: Region<S>, piece: Ring<S>, places: Polygon<S>): boolean {
  const pole = farthestInside([places])
  if (!pole) return false
  const laid = piece.map((p) => add(p, pole.at))
  const slack = EXACT_FIT + 2 * GRID
  const cornersLie = laid.every((p) => distance(nearestInside(region, p) ?? p, p) <= slack)
  const perimeter = ringEdges(laid).reduce((sum, edge) => sum + edgeLength(edge), 0)
  return cornersLie && regionArea(regionLess([[laid]], region)) <= slack * perimeter
}
