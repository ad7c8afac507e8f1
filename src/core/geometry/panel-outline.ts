/**
 * Outlines of panels, and what lies all round them.
 *
 * Input: a shape with its width and length, and by how much each edge is moved out (in where negative). Output: a ring
 * running positively about the panel's centre, which is the centre of the box round the shape; each edge says to which
 * side of the panel it belongs, which edge of the shape it comes from, and on which curve it lies. Rectangles and arches
 * have four edges, each moved by its own distance; every other shape is moved by one, the largest of the four. Tolerance:
 * curves run beside their polygons by no more than the chord error; circles and ellipses have the area of the true
 * curve. Failure: null when nothing is left.
 */
import { arcPoints } from './arc'
import { boxAround, boxGrown, boxRing, type Box, type Edges, type Side } from './box'
import type { Curve } from './curve'
import { movedSimpleWithSources } from './moved-simple'
import { add, between, distance, point, subtract, type Point, type Space } from './point'
import { ringEdges, signedArea, type Edge, type Ring } from './polygon'
import { CHORD_ERROR, GRID } from './tolerance'
import { withTrueArcs } from './true-arcs'

/** What a panel is cut to. */
export type PanelOutline =
  | { readonly shape: 'rectangle' }
  /** As wide as long. */
  | { readonly shape: 'circle' }
  | { readonly shape: 'ellipse' }
  /** Regular, standing on a side. */
  | { readonly shape: 'polygon'; readonly sides: number }
  /** A rectangle with an arc on top that rises by so much. */
  | { readonly shape: 'arch top'; readonly rise: number }
  | { readonly shape: 'drawn'; readonly corners: readonly Corner[] }

/** A corner, and how the edge from it to the next runs: 0 straight, else the tangent of a quarter of the arc's angle, positive where it bends clockwise as seen. */
export interface Corner {
  readonly at: Point<'panel'>
  readonly bulge: number
}

export interface OutlineEdge<S extends Space> {
  readonly side: Side
  /** Counted from 0 round the shape. */
  readonly source: number
  /** null where it is straight. */
  readonly curve: Curve<S> | null
}

/** `edges[i]` belongs to the edge from point i to the next. */
export interface Outline<S extends Space> {
  readonly ring: Ring<S>
  readonly edges: readonly OutlineEdge<S>[]
}

export interface PanelSize {
  readonly width: number
  readonly length: number
}

/** Whether all edges share one distance, the largest of the four. */
export const hasOneOverhang = ({ shape }: PanelOutline): boolean => shape !== 'rectangle' && shape !== 'arch top'

/** By how much the edges are really moved. */
export function movesOf(outline: PanelOutline, by: Edges): Edges {
  if (!hasOneOverhang(outline)) return by
  const most = Math.max(by.top, by.right, by.bottom, by.left)
  return { top: most, right: most, bottom: most, left: most }
}

/** The ring of a panel with its edges moved out. */
export function panelRing(outline: PanelOutline, size: PanelSize, by: Edges): Outline<'panel'> | null {
  const moves = movesOf(outline, by)
  switch (outline.shape) {
    case 'rectangle':
      return rectangleRing(size, moves)
    case 'circle':
    case 'ellipse':
      return ellipseRing(size, moves.top)
    case 'polygon':
      return regularRing(outline.sides, size.width, moves.top)
    case 'arch top':
      return archRing(size, outline.rise, moves)
    case 'drawn':
      return drawnRing(outline.corners, moves.top)
  }
}

const SIDES: readonly Side[] = ['top', 'right', 'bottom', 'left']

const boxOf = ({ width, length }: PanelSize): Box<'panel'> => ({
  min: point(-width / 2, -length / 2),
  max: point(width / 2, length / 2),
})

function rectangleRing(size: PanelSize, by: Edges): Outline<'panel'> | null {
  const box = boxGrown(boxOf(size), by)
  if (box.max.x <= box.min.x || box.max.y <= box.min.y) return null
  return { ring: boxRing(box), edges: SIDES.map((side, source) => ({ side, source, curve: null })) }
}

/** The side of the panel towards which an edge looks; the inside lies clockwise of it. */
function sideOf(a: Point<'panel'>, b: Point<'panel'>): Side {
  const [outX, outY] = [b.y - a.y, a.x - b.x]
  if (Math.abs(outX) > Math.abs(outY)) return outX > 0 ? 'right' : 'left'
  return outY > 0 ? 'bottom' : 'top'
}

/**
 * An ellipse moved out along its normals. A polygon of `n` sides round a circle has the circle's area when its corners
 * lie a little outside, at √(2π/n / sin(2π/n)) of the radius; stretching keeps that.
 */
function ellipseRing({ width, length }: PanelSize, by: number): Outline<'panel'> | null {
  const [rx, ry] = [width / 2, length / 2]
  const [long, short] = [Math.max(rx, ry), Math.min(rx, ry)]
  if (short + by <= 0 || (by < 0 && rx !== ry && -by >= (short * short) / long)) return null
  const isCircle = rx === ry
  const [wide, high] = isCircle ? [rx + by, ry + by] : [rx, ry]
  const beyond = isCircle ? 0 : by
  const reach = Math.max(wide, high) + Math.abs(beyond) * (long / short) ** 2
  const n = 4 * Math.max(2, Math.ceil((2 * Math.PI) / Math.sqrt((8 * CHORD_ERROR) / reach) / 4))
  const stretch = Math.sqrt((2 * Math.PI) / n / Math.sin((2 * Math.PI) / n))
  const ring = Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    const normal = Math.hypot(high * cos, wide * sin)
    return point<'panel'>(
      wide * stretch * cos + (beyond * stretch * high * cos) / normal,
      high * stretch * sin + (beyond * stretch * wide * sin) / normal,
    )
  })
  const curve: Curve<'panel'> = isCircle ? { shape: 'arc', centre: point(0, 0), radius: wide } : { shape: 'free' }
  return {
    ring,
    edges: ringEdges(ring).map(({ a, b }) => ({ side: sideOf(a, b), source: 0, curve })),
  }
}

/** Corners of a regular polygon about its own centre, standing on a side, on a circle of radius 1. */
const regularCorners = (sides: number): readonly Point<'panel'>[] =>
  Array.from({ length: sides }, (_, i) => {
    const angle = Math.PI / 2 + Math.PI / sides + (2 * Math.PI * i) / sides
    return point(Math.cos(angle), Math.sin(angle))
  })

/** How long a regular polygon is for each unit of its width. */
export function regularProportion(sides: number): number {
  const { min, max } = boxAround(regularCorners(sides))
  return (max.y - min.y) / (max.x - min.x)
}

/** The middle of a regular polygon, from the middle of the box round it: 0 for an even number of sides. */
export function regularCentre(sides: number, width: number): Point<'panel'> {
  const { min, max } = boxAround(regularCorners(sides))
  return point(0, (-(min.y + max.y) / 2) * (width / (max.x - min.x)))
}

function regularRing(sides: number, width: number, by: number): Outline<'panel'> | null {
  const corners = regularCorners(sides)
  const { min, max } = boxAround(corners)
  const radius = width / (max.x - min.x) + by / Math.cos(Math.PI / sides)
  if (radius <= 0) return null
  const middle = regularCentre(sides, width)
  const ring = corners.map(({ x, y }) => point<'panel'>(middle.x + x * radius, middle.y + y * radius))
  return { ring, edges: ringEdges(ring).map(({ a, b }, source) => ({ side: sideOf(a, b), source, curve: null })) }
}

/** Radius of the arc that rises by so much over a width. */
export const archRadius = (width: number, rise: number): number => (width * width) / 4 / (2 * rise) + rise / 2

/** Arc, right side, bottom, left side. The arc goes out far enough to reach the sides where they are moved out more. */
function archRing({ width, length }: PanelSize, rise: number, by: Edges): Outline<'panel'> | null {
  const radius = archRadius(width, rise)
  const centre = point<'panel'>(0, -length / 2 + radius)
  const [left, right, bottom] = [-width / 2 - by.left, width / 2 + by.right, length / 2 + by.bottom]
  const out = Math.max(radius + by.top, -left, right)
  const angleAt = (x: number) => Math.acos(Math.max(-1, Math.min(1, x / out)))
  const [from, to] = [-angleAt(left), -angleAt(right)]
  const arc = arcPoints(centre, out, from, to)
  // the ends exactly on the sides
  arc[0] = point(left, arc[0]!.y)
  arc[arc.length - 1] = point(right, arc[arc.length - 1]!.y)
  if (right <= left || bottom <= Math.max(arc[0]!.y, arc[arc.length - 1]!.y)) return null
  const curve: Curve<'panel'> = { shape: 'arc', centre, radius: out }
  return {
    ring: [...arc, point(right, bottom), point(left, bottom)],
    edges: [
      ...arc.slice(1).map((): OutlineEdge<'panel'> => ({ side: 'top', source: 0, curve })),
      { side: 'right', source: 1, curve: null },
      { side: 'bottom', source: 2, curve: null },
      { side: 'left', source: 3, curve: null },
    ],
  }
}

/** The middle of the box round a drawn shape, and its size. */
export function drawnBox(corners: readonly Corner[]): Box<'panel'> {
  return boxAround(flattened(corners).ring)
}

/** The corners without repeats, moved so that the box round the shape has its middle on the panel's centre. */
export function centredCorners(given: readonly Corner[]): readonly Corner[] {
  const distinct = given.filter(({ at }, i) => distance(at, given[(i + 1) % given.length]!.at) > GRID)
  const corners = distinct.length === given.length ? given : distinct
  if (corners.length < 2) return given
  const { min, max } = drawnBox(corners)
  const middle = point<'panel'>((min.x + max.x) / 2, (min.y + max.y) / 2)
  if (Math.abs(middle.x) < GRID && Math.abs(middle.y) < GRID) return corners
  return corners.map(({ at, bulge }) => ({ at: subtract(at, middle), bulge }))
}

/** A drawn shape as a ring running positively, its arcs as polygons. */
export function flattened(corners: readonly Corner[]): Outline<'panel'> {
  const ring: Point<'panel'>[] = []
  const edges: OutlineEdge<'panel'>[] = []
  corners.forEach(({ at, bulge }, source) => {
    const next = corners[(source + 1) % corners.length]!.at
    const arc = Math.abs(bulge) > 1e-9 && distance(at, next) > GRID ? bulgeArc(at, next, bulge) : null
    const points = arc ? arcPoints(arc.centre, arc.radius, arc.from, arc.to) : [at, next]
    const curve: Curve<'panel'> | null = arc && { shape: 'arc', centre: arc.centre, radius: arc.radius }
    points.slice(0, -1).forEach((p, i) => {
      ring.push(i === 0 ? at : p)
      edges.push({ side: 'top', source, curve })
    })
  })
  const positive = signedArea(ring) >= 0 ? { ring, edges } : backwards({ ring, edges })
  return {
    ring: positive.ring,
    edges: ringEdges(positive.ring).map(({ a, b }, i) => ({ ...positive.edges[i]!, side: sideOf(a, b) })),
  }
}

function backwards<S extends Space>({ ring, edges }: Outline<S>): Outline<S> {
  const last = ring.length - 1
  return {
    ring: [...ring].reverse(),
    edges: edges.map((_, j) => edges[(last - 1 - j + ring.length) % ring.length]!),
  }
}

/** The circle of an arc told by its ends and its bulge. */
function bulgeArc(a: Point<'panel'>, b: Point<'panel'>, bulge: number) {
  const angle = 4 * Math.atan(bulge)
  const chord = distance(a, b)
  const radius = chord / 2 / Math.abs(Math.sin(angle / 2))
  const along = subtract(b, a)
  // the middle of the chord, then towards the centre: clockwise of the chord for an arc that bends clockwise
  const away = chord / 2 / Math.tan(angle / 2)
  const centre = add(
    point<'panel'>((a.x + b.x) / 2, (a.y + b.y) / 2),
    point<'panel'>((-along.y / chord) * away, (along.x / chord) * away),
  )
  const from = Math.atan2(a.y - centre.y, a.x - centre.x)
  return { centre, radius, from, to: from + angle }
}

function drawnRing(corners: readonly Corner[], by: number): Outline<'panel'> | null {
  const plain = flattened(corners)
  if (by === 0) return plain
  const moved = movedSimpleWithSources(
    plain.ring,
    plain.ring.map(() => by),
  )
  if (!moved) return null
  const tags = ringEdges(moved.ring).map(({ a, b }, i): OutlineEdge<'panel'> => {
    const from = plain.edges[moved.sources[i]!]!
    return { ...from, side: sideOf(a, b), curve: movedCurve(from.curve, { a, b }, by) }
  })
  // where a moved arc meets a moved line lies on the arc, and not where its last chord would come
  const set = withTrueArcs<'panel', OutlineEdge<'panel'>>({ ring: moved.ring, tags })
  return { ring: set.ring, edges: set.tags }
}

/** A curve moved along its normals; an arc keeps its centre. */
function movedCurve(curve: Curve<'panel'> | null, { a, b }: Edge<'panel'>, by: number): Curve<'panel'> | null {
  if (curve?.shape !== 'arc') return curve
  const { centre, radius } = curve
  const seen = distance(centre, a)
  const moved = Math.abs(seen - radius - by) < Math.abs(seen - radius + by) ? radius + by : radius - by
  // a chord that was drawn out to a corner has left the arc
  const isOn = [a, between(a, b, 0.5), b].every((p) => Math.abs(distance(centre, p) - moved) < 2 * CHORD_ERROR)
  return isOn ? { ...curve, radius: moved } : null
}
