import type { Box } from '../geometry/box'
import { boxesOverlap } from '../geometry/box'
import { distance, point, type Point } from '../geometry/point'
import { itemBox, pictureCorners, pointOnArc } from './item-box'
import type { Arc, Fill, Item, Line, Picture } from './drawing'

/**
 * What of some items lies in a box. Strokes and fills are cut exactly: a point where a straight line leaves has
 * the coordinate of that edge, and points inside are left untouched, so two boxes that overlap give the same
 * points where they do. Text is kept whole where any of its room is inside, and pictures keep their map and get
 * a smaller clip: a writer clips both by a path as well. What only touches the box from outside is dropped; a
 * line that runs along its edge is kept.
 */
export function clippedItems(items: readonly Item[], box: Box<'sheet'>): Item[] {
  return items.flatMap((item) => clippedItem(item, box))
}

function clippedItem(item: Item, box: Box<'sheet'>): Item[] {
  switch (item.kind) {
    case 'line':
      return clippedLine(item, box)
    case 'fill':
      return clippedFill(item, box)
    case 'arc':
      return clippedArc(item, box)
    case 'text':
      return boxesOverlap(itemBox(item), box) ? [item] : []
    case 'picture':
      return clippedPicture(item, box)
  }
}

/** The pieces of a line that lie inside; its last piece is joined to its first where a closed line begins inside. */
function clippedLine(line: Line, box: Box<'sheet'>): Line[] {
  if (line.points.every((p) => covers(box, p))) return [line]
  const pieces = openPieces(line, box)
  const [first, last] = [pieces[0], pieces.at(-1)]
  if (line.closed && first && last && first !== last && same(last.points.at(-1)!, first.points[0]!)) {
    const joined = { ...last, points: [...last.points, ...first.points.slice(1)] }
    return [joined, ...pieces.slice(1, -1)]
  }
  return pieces
}

function openPieces(line: Line, box: Box<'sheet'>): Line[] {
  const ring = line.closed ? [...line.points, line.points[0]!] : line.points
  const pieces: { readonly from: number; readonly points: Point<'sheet'>[] }[] = []
  let run = line.dashFrom ?? 0
  let open = false
  for (let i = 0; i + 1 < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[i + 1]!]
    const cut = clippedSegment(a, b, box)
    if (cut) {
      // a piece goes on only through a corner of the line that itself lies inside
      if (open && same(cut[0], a)) pieces.at(-1)!.points.push(cut[1])
      else pieces.push({ from: run + distance(a, cut[0]), points: [cut[0], cut[1]] })
    }
    open = cut !== null && same(cut[1], b)
    run += distance(a, b)
  }
  return pieces.map(({ from, points }) => ({
    ...line,
    points,
    closed: false,
    ...(line.dash ? { dashFrom: from } : {}),
  }))
}

/** The part of a straight line inside a box; null if that is nothing or a single point. */
export function clippedSegment(
  a: Point<'sheet'>,
  b: Point<'sheet'>,
  { min, max }: Box<'sheet'>,
): readonly [Point<'sheet'>, Point<'sheet'>] | null {
  let enter: Crossing = { t: 0, at: a }
  let leave: Crossing = { t: 1, at: b }
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const edges = [
    { outside: min.x - a.x, way: dx, at: (t: number) => point<'sheet'>(min.x, a.y + t * dy) },
    { outside: a.x - max.x, way: -dx, at: (t: number) => point<'sheet'>(max.x, a.y + t * dy) },
    { outside: min.y - a.y, way: dy, at: (t: number) => point<'sheet'>(a.x + t * dx, min.y) },
    { outside: a.y - max.y, way: -dy, at: (t: number) => point<'sheet'>(a.x + t * dx, max.y) },
  ]
  for (const { outside, way, at } of edges) {
    if (way === 0) {
      if (outside > 0) return null
      continue
    }
    const t = outside / way
    if (way > 0 && t > enter.t) enter = { t, at: at(t) }
    if (way < 0 && t < leave.t) leave = { t, at: at(t) }
  }
  return enter.t < leave.t ? [enter.at, leave.at] : null
}

interface Crossing {
  readonly t: number
  readonly at: Point<'sheet'>
}

/** A fill cut against one edge after the other; a waist cut through leaves two parts joined by a line of no width. */
function clippedFill(fill: Fill, box: Box<'sheet'>): Fill[] {
  const points = clippedRing(fill.points, box)
  return points.length >= 3 ? [{ ...fill, points }] : []
}

/** The part of a ring inside a box; empty if there is none. */
export function clippedRing(ring: readonly Point<'sheet'>[], { min, max }: Box<'sheet'>): readonly Point<'sheet'>[] {
  let kept = ring
  kept = keptSide(kept, (p) => p.x - min.x, 'x', min.x)
  kept = keptSide(kept, (p) => max.x - p.x, 'x', max.x)
  kept = keptSide(kept, (p) => p.y - min.y, 'y', min.y)
  kept = keptSide(kept, (p) => max.y - p.y, 'y', max.y)
  return kept
}

function keptSide(
  ring: readonly Point<'sheet'>[],
  inside: (p: Point<'sheet'>) => number,
  axis: 'x' | 'y',
  edge: number,
): readonly Point<'sheet'>[] {
  if (ring.every((p) => inside(p) >= 0)) return ring
  if (ring.every((p) => inside(p) <= 0)) return []
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!
    const [da, db] = [inside(a), inside(b)]
    const crossing = da > 0 !== db > 0 && da !== 0 && db !== 0
    const t = da / (da - db)
    const along = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y), [axis]: edge } as Point<'sheet'>
    return [...(da >= 0 ? [a] : []), ...(crossing ? [along] : [])]
  })
}

/** The pieces of an arc inside: cut where its circle crosses the edges, each piece judged by its middle. */
function clippedArc(arc: Arc, box: Box<'sheet'>): Arc[] {
  const cuts = edgeAngles(arc, box).flatMap((angle) => anglesWithin(angle, arc))
  const ends = [arc.from, ...cuts.sort((p, q) => p - q), arc.to]
  const pieces: Arc[] = []
  for (let i = 0; i + 1 < ends.length; i++) {
    const [from, to] = [ends[i]!, ends[i + 1]!]
    if (to - from <= 1e-12 || !covers(box, pointOnArc(arc, (from + to) / 2))) continue
    const before = pieces.at(-1)
    if (before?.to === from) pieces[pieces.length - 1] = { ...before, to }
    else pieces.push({ ...arc, from, to })
  }
  return pieces
}

function edgeAngles({ centre, radius }: Arc, { min, max }: Box<'sheet'>): number[] {
  const upright = [min.x, max.x].map((x) => (x - centre.x) / radius).filter((cos) => Math.abs(cos) < 1)
  const level = [min.y, max.y].map((y) => (y - centre.y) / radius).filter((sin) => Math.abs(sin) < 1)
  return [
    ...upright.flatMap((cos) => [Math.acos(cos), -Math.acos(cos)]),
    ...level.flatMap((sin) => [Math.asin(sin), Math.PI - Math.asin(sin)]),
  ]
}

/** The angle, moved by whole turns to where the arc passes it: none, or one (two on a whole turn). */
function anglesWithin(angle: number, { from, to }: Arc): number[] {
  const turn = 2 * Math.PI
  const first = angle + Math.ceil((from - angle) / turn) * turn
  return [first, first + turn].filter((a) => a > from && a < to)
}

function clippedPicture(picture: Picture, box: Box<'sheet'>): Picture[] {
  const clip = clippedRing(picture.clip ?? pictureCorners(picture), box)
  return clip.length >= 3 ? [{ ...picture, clip }] : []
}

const covers = ({ min, max }: Box<'sheet'>, p: Point<'sheet'>): boolean =>
  p.x >= min.x && p.x <= max.x && p.y >= min.y && p.y <= max.y

const same = (p: Point<'sheet'>, q: Point<'sheet'>): boolean => p.x === q.x && p.y === q.y
