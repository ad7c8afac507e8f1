/**
 * The largest rectangle along the grain.
 *
 * Input: the whole border of a shape as edges in any order, so that any level line crosses them an even number of
 * times. Output: a rectangle inside, touching the border at most, and a bound that none can exceed. Tolerance: branch
 * and bound till the bound is within the precision, or the steps are used up; the bound given is true either way.
 * Failure: null where there is none.
 *
 * The way: between two rows the border blocks stretches across; the widest gap between them is the widest rectangle of
 * those rows. More rows never widen it, so the gap of the rows that every rectangle of a branch must cover bounds it.
 */
import type { Box } from '../geometry/box'
import { boxHeight, boxWidth } from '../geometry/box'
import { point, type Space } from '../geometry/point'
import { ringEdges, transformRegion, type Edge, type Region } from '../geometry/polygon'
import { ROUNDING } from '../geometry/tolerance'
import { rotation } from '../geometry/transform'

export interface Strip<S extends Space> {
  readonly box: Box<S>
  /** No rectangle exceeds this: its width for a strip of given length, else its area. */
  readonly bound: number
}

export const regionEdges = <S extends Space>(region: Region<S>): readonly Edge<S>[] =>
  region.flatMap((polygon) => polygon.flatMap(ringEdges))

interface Gap {
  readonly from: number
  readonly to: number
}

const gapWidth = (gap: Gap | null): number => (gap ? gap.to - gap.from : 0)

/** The widest stretch across that lies inside along all rows from `top` to `bottom`. */
export function widestGap<S extends Space>(edges: readonly Edge<S>[], top: number, bottom: number): Gap | null {
  const middle = (top + bottom) / 2
  const blocks = edges
    .filter(({ a, b }) => Math.max(a.y, b.y) > top + ROUNDING && Math.min(a.y, b.y) < bottom - ROUNDING)
    .map((edge) => blockedStretch(edge, top, bottom, middle))
    .sort((p, q) => p.from - q.from)
  let best: Gap | null = null
  let reach = -Infinity
  let inside = false
  for (const { from, to, crossesMiddle } of blocks) {
    if (inside && from - reach > gapWidth(best)) best = { from: reach, to: from }
    reach = Math.max(reach, to)
    if (crossesMiddle) inside = !inside
  }
  return best
}

function blockedStretch<S extends Space>({ a, b }: Edge<S>, top: number, bottom: number, middle: number) {
  const at = (y: number) => (a.y === b.y ? a.x : a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
  const clipped = (p: { x: number; y: number }) => (p.y < top ? at(top) : p.y > bottom ? at(bottom) : p.x)
  const [p, q] = [clipped(a), clipped(b)]
  return { from: Math.min(p, q), to: Math.max(p, q), crossesMiddle: a.y > middle !== b.y > middle }
}

const rows = <S extends Space>(edges: readonly Edge<S>[]) =>
  [...new Set(edges.map(({ a }) => a.y))].sort((p, q) => p - q)

/** Rows from `top` anywhere in one span to `bottom` anywhere in another. */
interface Branch {
  readonly top: readonly [number, number]
  readonly bottom: readonly [number, number]
  readonly bound: number
}

const MOST_BRANCHES = 3000

/** Explores branches, the most promising first, until none promises more than the precision above what is held. */
function explore<S extends Space>(
  first: Branch,
  precision: number,
  split: (branch: Branch) => readonly Branch[],
  tried: (branch: Branch) => Strip<S> | null,
): Strip<S> | null {
  let open = [first]
  let best: Strip<S> | null = null
  for (let n = 0; n < MOST_BRANCHES && open.length > 0; n++) {
    const at = open.reduce((top, branch, i) => (branch.bound > open[top]!.bound ? i : top), 0)
    const [branch] = open.splice(at, 1)
    for (const part of split(branch!)) {
      const strip = tried(part)
      if (strip && strip.bound > (best?.bound ?? 0)) best = strip
      open.push(part)
    }
    const goal = (best?.bound ?? 0) + precision
    open = open.filter(({ bound }) => bound > goal)
  }
  // whatever was dropped promised no more than the precision above the best of its time
  const bound = Math.max((best?.bound ?? 0) + precision, ...open.map((branch) => branch.bound))
  return best && { box: best.box, bound }
}

const halved = (span: readonly [number, number], at: number): [number, number][] => [
  [span[0], at],
  [at, span[1]],
]

/** The row of a corner nearest the middle of a span, else its middle: rectangles stop at corners. */
function splitRow(span: readonly [number, number], corners: readonly number[]): number {
  const middle = (span[0] + span[1]) / 2
  const within = corners.filter((y) => y > span[0] + ROUNDING && y < span[1] - ROUNDING)
  return within.reduce((best, y) => (Math.abs(y - middle) < Math.abs(best - middle) ? y : best), within[0] ?? middle)
}

const boxOf = <S extends Space>(gap: Gap, top: number, bottom: number): Box<S> => ({
  min: point(gap.from, top),
  max: point(gap.to, bottom),
})

/**
 * The rectangle of greatest area with its length along y; `bound` is an area. The precision is a share of the area
 * of the box round the shape.
 */
export function largestRectangle<S extends Space>(edges: readonly Edge<S>[], precision = 1e-4): Strip<S> | null {
  const corners = rows(edges)
  const [top, bottom] = [corners[0], corners[corners.length - 1]]
  if (top === undefined || bottom === undefined || bottom - top <= ROUNDING) return null
  const xs = edges.map(({ a }) => a.x)
  const whole = (bottom - top) * (Math.max(...xs) - Math.min(...xs))
  const boundOf = (t: readonly [number, number], b: readonly [number, number]) =>
    b[0] - t[1] > ROUNDING
      ? (b[1] - t[0]) * gapWidth(widestGap(edges, t[1], b[0]))
      : ((b[1] - t[0]) / (bottom - top)) * whole
  const branch = (t: readonly [number, number], b: readonly [number, number]): Branch[] =>
    b[1] - t[0] > ROUNDING ? [{ top: t, bottom: b, bound: boundOf(t, b) }] : []
  const split = ({ top: t, bottom: b }: Branch) =>
    t[1] - t[0] >= b[1] - b[0]
      ? halved(t, splitRow(t, corners)).flatMap((part) => branch(part, b))
      : halved(b, splitRow(b, corners)).flatMap((part) => branch(t, part))
  const tried = ({ top: t, bottom: b }: Branch) => {
    let best: Strip<S> | null = null
    for (const from of t)
      for (const to of b) {
        const gap = to - from > ROUNDING ? widestGap(edges, from, to) : null
        const area = gapWidth(gap) * (to - from)
        if (gap && area > (best?.bound ?? 0)) best = { box: boxOf(gap, from, to), bound: area }
      }
    return best
  }
  const span = [top, bottom] as const
  return explore({ top: span, bottom: span, bound: whole }, precision * whole, split, tried)
}

/** The widest rectangle of a given length along y; `bound` is a width, and so is the precision. */
export function widestRectangle<S extends Space>(
  edges: readonly Edge<S>[],
  length: number,
  precision = 0.01,
): Strip<S> | null {
  const corners = rows(edges)
  const [top, bottom] = [corners[0] ?? 0, corners[corners.length - 1] ?? 0]
  if (length <= 0 || length > bottom - top + ROUNDING) return null
  const starts = [...corners, ...corners.map((y) => y - length)].sort((p, q) => p - q)
  const last = Math.max(top, bottom - length)
  const branch = (from: number, to: number): Branch => {
    const rest = from + length - to
    const bound = rest > ROUNDING ? gapWidth(widestGap(edges, to, from + length)) : Infinity
    return { top: [from, to], bottom: [from + length, to + length], bound }
  }
  const split = ({ top: t }: Branch) => halved(t, splitRow(t, starts)).map(([from, to]) => branch(from, to))
  const tried = ({ top: t }: Branch) => {
    const strips = t.map((from): Strip<S> | null => {
      const gap = widestGap(edges, from, from + length)
      return gap && { box: boxOf(gap, from, from + length), bound: gapWidth(gap) }
    })
    return strips.reduce((best, strip) => ((strip?.bound ?? 0) > (best?.bound ?? 0) ? strip : best), null)
  }
  return explore(branch(top, last), precision, split, tried)
}

/** A rectangle in a leaf whose grain runs at an angle to y. */
export interface GrainStrip {
  /** In the leaf turned so that the grain runs along y. */
  readonly box: Box<'leaf'>
  readonly width: number
  readonly length: number
  readonly area: number
  /** No rectangle along the grain has a larger area. */
  readonly bound: number
}

/**
 * The largest rectangle along the grain in a region of a leaf. The angle is that of the grain from y, in radians, from
 * +x towards +y. null for a region without area.
 */
export function largestStrip(region: Region<'leaf'>, angle: number): GrainStrip | null {
  const upright = angle === 0 ? region : transformRegion(rotation<'leaf', 'leaf'>(-angle), region)
  const strip = largestRectangle(regionEdges(upright))
  if (!strip) return null
  const [width, length] = [boxWidth(strip.box), boxHeight(strip.box)]
  return { box: strip.box, width, length, area: width * length, bound: strip.bound }
}
