/**
 * The sides of a panel as a border runs along them.
 *
 * Input: the outline of the finished panel and the line at which the border ends inside. Output: for each edge of the
 * shape a side that can be asked for the place and the direction at any distance along it; `from` and `to` are what of it
 * has wood straight inside, as far as the neighbours' bands leave it. A closed curve is one side without corners.
 * Tolerance: on ellipses places go by the polygon's length, to 0.02 mm. Failure: none.
 */
import { sidesOf } from '../geometry/inner-outline'
import type { Outline, OutlineEdge, PanelSize } from '../geometry/panel-outline'
import { add, cross, distance, dot, point, scale, subtract, type Point } from '../geometry/point'
import type { Edge } from '../geometry/polygon'
import { present } from '../invariant'

/** A place on the finished edge, and the way along it with the wood on the right hand. */
export interface EdgePlace {
  readonly at: Point<'panel'>
  readonly along: Point<'panel'>
}

export interface BandSide {
  readonly source: number
  readonly edge: OutlineEdge<'panel'>
  readonly length: number
  readonly isStraight: boolean
  /** How far it turns, radians. */
  readonly turns: number
  readonly placeAt: (way: number) => EdgePlace
  /** Where its band begins and ends inside, told along it. */
  readonly from: number
  readonly to: number
}

/** Where two sides meet: on the finished edge, and the corner of the inside that goes with it, by its number. */
export interface BandCorner {
  readonly outside: Point<'panel'>
  readonly inside: number
}

export interface BandRound {
  readonly sides: readonly BandSide[]
  /** `corners[i]` lies before side i; none on a closed curve. */
  readonly corners: readonly BandCorner[]
}

export function bandRound(finished: Outline<'panel'>, inside: Outline<'panel'>, size: PanelSize): BandRound {
  const sources = sidesOf(finished)
  if (sources.length === 0) return { sides: [closedSide(finished, size)], corners: [] }
  const corners = sources.map((source, i) => {
    const before = sources[(i + sources.length - 1) % sources.length]!
    return { outside: finished.ring[beginOf(finished, before, source)]!, inside: beginOf(inside, before, source) }
  })
  const sides = sources.map((source, i) => {
    const [here, next] = [corners[i]!, corners[(i + 1) % corners.length]!]
    const edge = present(
      finished.edges.find((one) => one.source === source),
      `no edge ${source}`,
    )
    const inner = { a: inside.ring[here.inside]!, b: inside.ring[next.inside]! }
    const first = beginOf(finished, sources[(i + sources.length - 1) % sources.length]!, source)
    return edge.curve?.shape === 'arc'
      ? arcSide(edge, edge.curve, { a: here.outside, b: next.outside }, inner, finished.ring[first + 1]!)
      : straightSide(edge, { a: here.outside, b: next.outside }, inner)
  })
  return { sides, corners }
}

/** The point at which an edge of the shape begins, behind the one before it. */
function beginOf({ edges }: Outline<'panel'>, before: number, source: number): number {
  const count = edges.length
  return edges.findIndex((edge, i) => edge.source === source && edges[(i + count - 1) % count]!.source === before)
}

function straightSide(edge: OutlineEdge<'panel'>, { a, b }: Edge<'panel'>, inner: Edge<'panel'>): BandSide {
  const length = distance(a, b)
  const along = scale(subtract(b, a), 1 / length)
  const reach = (p: Point<'panel'>) => dot(subtract(p, a), along)
  return {
    source: edge.source,
    edge,
    length,
    isStraight: true,
    turns: 0,
    placeAt: (way) => ({ at: add(a, scale(along, way)), along }),
    from: Math.max(0, reach(inner.a)),
    to: Math.min(length, reach(inner.b)),
  }
}

type Arc = Extract<OutlineEdge<'panel'>['curve'], { shape: 'arc' }>

function arcSide(
  edge: OutlineEdge<'panel'>,
  { centre, radius }: Arc,
  { a, b }: Edge<'panel'>,
  inner: Edge<'panel'>,
  next: Point<'panel'>,
): BandSide {
  const angleOf = (p: Point<'panel'>) => Math.atan2(p.y - centre.y, p.x - centre.x)
  const turn = cross(subtract(a, centre), subtract(next, centre)) > 0 ? 1 : -1
  // from the beginning on, the way the outline runs; a little before it counts as before
  const swept = (p: Point<'panel'>) => {
    const angle = (turn * (angleOf(p) - angleOf(a)) + 4 * Math.PI) % (2 * Math.PI)
    return angle > 2 * Math.PI - 1e-3 ? angle - 2 * Math.PI : angle
  }
  const sweep = swept(b)
  // what lies past the end is nearer to it than to the beginning
  const nearSweep = (p: Point<'panel'>) => {
    const angle = swept(p)
    return angle > sweep + (2 * Math.PI - sweep) / 2 ? angle - 2 * Math.PI : angle
  }
  return {
    source: edge.source,
    edge,
    length: radius * sweep,
    isStraight: false,
    turns: sweep,
    placeAt: (way) => {
      const angle = angleOf(a) + (turn * way) / radius
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      return {
        at: point(centre.x + radius * cos, centre.y + radius * sin),
        along: point(-turn * sin, turn * cos),
      }
    },
    from: Math.max(0, nearSweep(inner.a) * radius),
    to: Math.min(radius * sweep, nearSweep(inner.b) * radius),
  }
}

/** A circle or an ellipse, from its uppermost point clockwise. */
function closedSide(finished: Outline<'panel'>, { width, length }: PanelSize): BandSide {
  const edge = finished.edges[0]!
  const [rx, ry] = [width / 2, length / 2]
  const angleAt = edge.curve?.shape === 'arc' ? (way: number) => way / rx : byLength(finished)
  const total = edge.curve?.shape === 'arc' ? 2 * Math.PI * rx : ringLength(finished)
  return {
    source: edge.source,
    edge,
    length: total,
    isStraight: false,
    turns: 2 * Math.PI,
    placeAt: (way) => {
      const angle = angleAt(way) - Math.PI / 2
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      const slope = Math.hypot(rx * sin, ry * cos)
      return { at: point(rx * cos, ry * sin), along: point((-rx * sin) / slope, (ry * cos) / slope) }
    },
    from: 0,
    to: total,
  }
}

const ringLength = ({ ring }: Outline<'panel'>): number =>
  ring.reduce((sum, p, i) => sum + distance(p, ring[(i + 1) % ring.length]!), 0)

/** The parameter of an ellipse, from its top on, by how far along its polygon a place lies. */
function byLength({ ring }: Outline<'panel'>): (way: number) => number {
  const count = ring.length
  // the ring begins at the right; its top lies three quarters round
  const from = (3 * count) / 4
  const reached = [0]
  for (let i = 0; i < count; i++)
    reached.push(reached[i]! + distance(ring[(from + i) % count]!, ring[(from + i + 1) % count]!))
  return (way) => {
    const step = Math.max(0, reached.findIndex((length) => length > way) - 1)
    const share = (way - reached[step]!) / (reached[step + 1]! - reached[step]!)
    return ((step + share) * 2 * Math.PI) / count
  }
}
