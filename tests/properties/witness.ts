/**
 * A witness for what the core says of faces: containment, distance and area worked out here again from their
 * definitions, without the core's geometry.
 */
import type { DefectShape } from '../../src/core/leaves/leaf'

export interface Place {
  readonly x: number
  readonly y: number
}
export type Line = readonly Place[]

/** The corners of a closed line with the ones that follow them. */
export const sides = (ring: Line): readonly (readonly [Place, Place])[] =>
  ring.map((p, i) => [p, ring[(i + 1) % ring.length]!])

/** Twice the triangle p q r; positive when they are met clockwise (y down). */
const twice = (p: Place, q: Place, r: Place): number => (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)

export const areaOf = (ring: Line): number =>
  Math.abs(sides(ring).reduce((sum, [p, q]) => sum + twice(ring[0]!, p, q), 0)) / 2

export const perimeterOf = (ring: Line): number =>
  sides(ring).reduce((sum, [p, q]) => sum + Math.hypot(p.x - q.x, p.y - q.y), 0)

/** By the winding number: the border may fall either way. */
export function isIn(ring: Line, p: Place): boolean {
  let winds = 0
  for (const [a, b] of sides(ring)) {
    if (a.y <= p.y && b.y > p.y && twice(a, b, p) > 0) winds++
    if (a.y > p.y && b.y <= p.y && twice(a, b, p) < 0) winds--
  }
  return winds !== 0
}

export const isInAny = (rings: readonly (readonly Line[])[], p: Place): boolean =>
  rings.some(([outer, ...holes]) => isIn(outer!, p) && !holes.some((hole) => isIn(hole, p)))

/** How far p lies from the line through a and b, positive on the inside of a ring that runs clockwise. */
export const depth = ([a, b]: readonly [Place, Place], p: Place): number =>
  twice(a, b, p) / Math.hypot(b.x - a.x, b.y - a.y)

export function awayFromSide([a, b]: readonly [Place, Place], p: Place): number {
  const [x, y] = [b.x - a.x, b.y - a.y]
  const t = x === 0 && y === 0 ? 0 : ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y)
  const s = Math.min(1, Math.max(0, t))
  return Math.hypot(a.x + s * x - p.x, a.y + s * y - p.y)
}

const cross = (e: readonly [Place, Place], f: readonly [Place, Place]): boolean =>
  twice(e[0], e[1], f[0]) > 0 !== twice(e[0], e[1], f[1]) > 0 &&
  twice(f[0], f[1], e[0]) > 0 !== twice(f[0], f[1], e[1]) > 0

/** The distance between two closed lines, 0 where they cross; whether one lies in the other is not asked. */
export function awayFromRing(ring: Line, other: Line): number {
  let least = Infinity
  for (const e of sides(ring))
    for (const f of sides(other)) {
      if (cross(e, f)) return 0
      least = Math.min(
        least,
        awayFromSide(e, f[0]),
        awayFromSide(e, f[1]),
        awayFromSide(f, e[0]),
        awayFromSide(f, e[1]),
      )
    }
  return least
}

/** How far a piece keeps inside an outline; negative where it does not lie in it, by at most that much. */
export function keepsInside(outline: Line, piece: Line): number {
  const [left, right] = [Math.min(...piece.map(({ x }) => x)), Math.max(...piece.map(({ x }) => x))]
  const [top, bottom] = [Math.min(...piece.map(({ y }) => y)), Math.max(...piece.map(({ y }) => y))]
  let out = 0
  for (const p of piece) if (!isIn(outline, p)) out = Math.max(out, ...[awayFromBorder(outline, p)])
  for (const p of outline) {
    const near = p.x > left && p.x < right && p.y > top && p.y < bottom
    if (near && isIn(piece, p)) out = Math.max(out, awayFromBorder(piece, p))
  }
  return out > 0 ? -out : awayFromRing(outline, piece)
}

const awayFromBorder = (ring: Line, p: Place): number => Math.min(...sides(ring).map((side) => awayFromSide(side, p)))

/** How far a piece keeps from a defect; 0 where it touches it. */
export function keepsClear(piece: Line, defect: DefectShape): number {
  switch (defect.shape) {
    case 'spot':
      return isIn(piece, defect.centre) ? 0 : Math.max(0, awayFromBorder(piece, defect.centre) - defect.radius)
    case 'line':
      return isIn(piece, defect.from) ? 0 : awayFromRing(piece, [defect.from, defect.to])
    case 'area':
      return isIn(piece, defect.ring[0]!) || isIn(defect.ring, piece[0]!) ? 0 : awayFromRing(piece, defect.ring)
  }
}

/** A convex piece with the box [±across] x [±along] swept round it: the hull of its moved corners. */
export function sweptByBox(piece: Line, across: number, along: number): Line {
  const corners = piece.flatMap(({ x, y }) =>
    [-1, 1].flatMap((i) => [-1, 1].map((j) => ({ x: x + i * across, y: y + j * along }))),
  )
  return hull(corners)
}

/** Gift wrapping, clockwise as seen. */
export function hull(points: Line): Line {
  const start = points.reduce((best, p) => (p.x < best.x || (p.x === best.x && p.y < best.y) ? p : best))
  const ring: Place[] = []
  let at = start
  do {
    ring.push(at)
    let next = points.find((p) => p.x !== at.x || p.y !== at.y)!
    for (const p of points) {
      const t = twice(at, next, p)
      const further = Math.hypot(p.x - at.x, p.y - at.y) > Math.hypot(next.x - at.x, next.y - at.y)
      if (t < -1e-9 || (Math.abs(t) <= 1e-9 && further)) next = p
    }
    at = next
  } while ((at.x !== start.x || at.y !== start.y) && ring.length <= points.length)
  return ring
}

/** p mirrored in the line through a and b: the foot of its plumb line, and as far again. */
export function mirrored({ a, b }: { readonly a: Place; readonly b: Place }, p: Place): Place {
  const [x, y] = [b.x - a.x, b.y - a.y]
  const t = ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y)
  return { x: 2 * (a.x + t * x) - p.x, y: 2 * (a.y + t * y) - p.y }
}
