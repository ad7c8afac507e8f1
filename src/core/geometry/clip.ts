/**
 * Polygons combined: united, intersected, taken from one another.
 *
 * Input: regions as `polygon.ts` describes them, running either way, with coordinates below 30 m. Every operation
 * first snaps its input to the grid and drops repeated points. Output: polygons that do not overlap, outer rings of
 * positive area and holes of negative, no ring repeating a point, nothing without area. Tolerance: exact for the
 * snapped input to 1e-6 of the area, so for the raw input to its perimeter times the grid. Failure: none; where the
 * first library gives up or gives an area that cannot be, the operation is done on a coarser grid, and then by a
 * second library that works in whole numbers.
 */
import { Clipper64, ClipType, FillRule, PathType, PolyTree64, type PolyPath64 } from 'clipper2-ts'
import polygonClipping from 'polygon-clipping'
import type { MultiPolygon } from 'polygon-clipping'
import { regionBox, type Box } from './box'
import { fromGridPolygon, toGridPolygons, withoutSpikes, type GridRing } from './clip-grid'
import { distance, type Space } from './point'
import { polygonArea, regionArea, ringEdges, signedArea, type Polygon, type Region, type Ring } from './polygon'
import { GRID } from './tolerance'

type Operation = 'union' | 'intersection' | 'difference' | 'xor'

const COARSER_GRID = GRID * 4

/** Everything that lies in any of the regions. One region by itself is cleaned: overlaps within it are united. */
export function unite<S extends Space>(...regions: readonly Region<S>[]): Region<S> {
  const filled = regions.filter((region) => region.length > 0)
  if (filled.length > 1 && areAllApart(filled.map(regionBox))) return filled.flatMap(snappedRegion)
  return combine('union', filled)
}

/** What lies in all of the regions. */
export function intersect<S extends Space>(...regions: readonly Region<S>[]): Region<S> {
  if (regions.some((region) => region.length === 0)) return []
  const boxes = regions.map(regionBox)
  if (boxes.some((box, i) => i > 0 && !boxesMeet(boxes[i - 1]!, box))) return []
  return combine('intersection', regions)
}

/** What lies in the region and in none of the others. */
export function regionLess<S extends Space>(region: Region<S>, ...taken: readonly Region<S>[]): Region<S> {
  if (region.length === 0) return []
  const box = regionBox(region)
  const meeting = taken.filter((other) => other.length > 0 && boxesMeet(box, regionBox(other)))
  return meeting.length === 0 ? snappedRegion(region) : combine('difference', [region, ...meeting])
}

/** As `regionLess` but a few times faster: whole numbers of the grid throughout, so that meeting points are rounded to it. */
export function regionLessOnGrid<S extends Space>(region: Region<S>, ...taken: readonly Region<S>[]): Region<S> {
  if (region.length === 0) return []
  const box = regionBox(region)
  const meeting = taken.filter((other) => other.length > 0 && boxesMeet(box, regionBox(other)))
  return meeting.length === 0 ? snappedRegion(region) : combineWhole('difference', [region, ...meeting])
}

/** What lies in one of two regions but not in both. */
export const symmetricDifference = <S extends Space>(a: Region<S>, b: Region<S>): Region<S> => combine('xor', [a, b])

/**
 * What lies in all of many regions, combined as a tree. Works in whole numbers of the grid throughout; each meeting
 * point found on the way is rounded to the grid.
 */
export function intersectAll<S extends Space>(regions: readonly Region<S>[]): Region<S> {
  if (regions.length === 1) return snappedRegion(regions[0]!)
  let level = regions.map((region) => toGridPolygons(region).flat())
  if (level.length === 0) return []
  while (level.length > 2) {
    const next: GridRing[][] = []
    for (let i = 0; i < level.length; i += 2) {
      const both = level[i + 1] ? bothPaths(level[i]!, level[i + 1]!) : level[i]!
      // with nothing no more has anything in common
      if (both.length === 0) return []
      next.push(both)
    }
    level = next
  }
  const [a, b] = level
  return a && b ? treeRegion(a, b, ClipType.Intersection) : []
}

/** The region on the grid, as an operation would leave it. */
const snappedRegion = <S extends Space>(region: Region<S>): Region<S> =>
  toGridPolygons(region).map((rings) => fromGridPolygon<S>(rings))

/** The region without polygons that are thinner, on the average, than a width: what rounding leaves behind. */
export const withoutSlivers = <S extends Space>(region: Region<S>, width = 2 * GRID): Region<S> =>
  region.filter((polygon) => (2 * polygonArea(polygon)) / polygonPerimeter(polygon) >= width)

/** The region as it stands, its outer rings turned positive and its holes negative. */
export const orientedRegion = <S extends Space>(region: Region<S>): Region<S> =>
  region.map(([outer, ...holes]): Polygon<S> => [
    orientedRing(outer, 1),
    ...holes.map((hole) => orientedRing(hole, -1)),
  ])

const orientedRing = <S extends Space>(ring: Ring<S>, way: 1 | -1): Ring<S> =>
  signedArea(ring) * way < 0 ? [...ring].reverse() : ring

const polygonPerimeter = <S extends Space>(polygon: Polygon<S>): number =>
  polygon.reduce((sum, ring) => sum + ringEdges(ring).reduce((length, { a, b }) => length + distance(a, b), 0), 0)

/**
 * Where paths that may cross themselves and each other wind round a point once or more, positively. A path that turns
 * back on itself along a level line makes the library unite wrongly, so such places are dropped first: they enclose
 * nothing.
 */
export const woundRegion = <S extends Space>(paths: readonly GridRing[]): Region<S> =>
  treeRegion(paths.map(withoutSpikes), [], ClipType.Union)

function combine<S extends Space>(operation: Operation, regions: readonly Region<S>[]): Region<S> {
  for (const grid of [GRID, COARSER_GRID]) {
    const snapped = regions.map((region) => toGridPolygons(region, grid))
    const result = combineOnGrid<S>(operation, snapped, grid)
    if (result && isPlausible(operation, snapped, result, grid)) return result
  }
  return combineWhole(operation, regions)
}

function combineOnGrid<S extends Space>(operation: Operation, snapped: GridRing[][][], grid: number): Region<S> | null {
  const [first, ...rest] = snapped.map((polygons) => polygons.map((rings) => rings.map(toPairs)))
  if (!first) return []
  try {
    return fromPairs(polygonClipping[operation](first, ...rest), grid)
  } catch {
    // the library gives up where crossings nearly coincide; on another grid they come apart
    return null
  }
}

const toPairs = (ring: GridRing) => ring.map(({ x, y }): [number, number] => [x, y])

function fromPairs<S extends Space>(polygons: MultiPolygon, grid: number): Region<S> {
  const rings = polygons.map((polygon) => polygon.map((ring) => ring.slice(0, -1).map(([x, y]) => ({ x, y }))))
  return orientedRegion(rings.map((polygon) => fromGridPolygon<S>(polygon, grid)))
}

function isPlausible<S extends Space>(op: Operation, snapped: GridRing[][][], result: Region<S>, grid: number) {
  const areas = snapped.map((polygons) => regionArea(polygons.map((rings) => fromGridPolygon<S>(rings, grid))))
  const [least, most] = areaLimits(op, areas)
  const area = regionArea(result)
  const slack = 1e-6 * areas.reduce((sum, each) => sum + each, 0)
  return area >= least - slack && area <= most + slack
}

/** The least and the most area that the result of an operation can have. */
function areaLimits(operation: Operation, areas: readonly number[]): [number, number] {
  const [first = 0, ...rest] = areas
  const others = rest.reduce((sum, area) => sum + area, 0)
  switch (operation) {
    case 'union':
      // polygons of one region are allowed to overlap when it is united by itself
      return [areas.length === 1 ? 0 : Math.max(...areas, 0), first + others]
    case 'intersection':
      return [0, Math.min(...areas)]
    case 'difference':
      return [first - others, first]
    case 'xor':
      return [Math.abs(first - others), first + others]
  }
}

function combineWhole<S extends Space>(operation: Operation, regions: readonly Region<S>[]): Region<S> {
  if (operation === 'intersection') return intersectAll(regions)
  const [first = [], ...rest] = regions.map((region) => toGridPolygons(region).flat())
  const type = { union: ClipType.Union, difference: ClipType.Difference, xor: ClipType.Xor }[operation]
  return treeRegion(first, rest.flat(), type)
}

function bothPaths(a: GridRing[], b: GridRing[]): GridRing[] {
  const paths: GridRing[] = []
  prepared(a, b).execute(ClipType.Intersection, FillRule.Positive, paths)
  return paths.map(withoutSpikes)
}

function treeRegion<S extends Space>(
  subject: readonly GridRing[],
  clip: readonly GridRing[],
  type: ClipType,
): Region<S> {
  const tree = new PolyTree64()
  prepared(subject, clip).execute(type, FillRule.Positive, tree)
  const polygons: Polygon<S>[] = []
  collectPolygons(tree, polygons)
  return polygons
}

function prepared(subject: readonly GridRing[], clip: readonly GridRing[]): Clipper64 {
  const clipper = new Clipper64()
  // the library stumbles over a ring without points
  const filled = (rings: readonly GridRing[]) => rings.filter((ring) => ring.length > 0)
  clipper.addPaths(filled(subject), PathType.Subject)
  clipper.addPaths(filled(clip), PathType.Clip)
  return clipper
}

/** Gathers the outer rings below a node, each with its holes; islands within holes are outer rings again. */
function collectPolygons<S extends Space>(node: PolyPath64, polygons: Polygon<S>[]) {
  for (let i = 0; i < node.count; i++) {
    const outer = node.child(i)
    const rings = [outer.poly ?? []]
    for (let j = 0; j < outer.count; j++) {
      const hole = outer.child(j)
      rings.push(hole.poly ?? [])
      collectPolygons(hole, polygons)
    }
    polygons.push(fromGridPolygon<S>(rings))
  }
}

/** Boxes that overlap, touch, or come nearer than the grid. */
const boxesMeet = <S extends Space>(p: Box<S>, q: Box<S>): boolean =>
  p.min.x <= q.max.x + GRID && q.min.x <= p.max.x + GRID && p.min.y <= q.max.y + GRID && q.min.y <= p.max.y + GRID

const areAllApart = <S extends Space>(boxes: readonly Box<S>[]): boolean =>
  boxes.every((box, i) => boxes.slice(i + 1).every((other) => !boxesMeet(box, other)))
