import { distance, point, type Point } from '../../geometry/point'
import { ok, refused, type Result } from '../../result'
import { applyHomography, fitHomography, invertHomography, type Homography } from './homography'
import { lensOf, undistorted, type Lens } from './lens'
import { RING_MARK, type FoundMark } from './ring-marks'
import type { View } from './straighten'

/** The rectangle that the marks (or the tapped corners) make, as measured on the bench. */
export interface MarkRectangle {
  /** From mark to mark across the leaf and along it. */
  readonly across: number
  readonly along: number
  /** From the first corner to the opposite one; null where it was not measured. */
  readonly diagonal: number | null
}

/** How the leaves lie in all photographs of a set. */
export interface HowTheyLie {
  readonly sideUp: 'numbered' | 'other'
  /** At which end the dotted mark (the first tapped corner) lies: on the left there, as one looks with that end away. */
  readonly dotAt: 'numbered end' | 'far end'
}

export interface PhotoView {
  readonly view: View
  /** What is left of error in the sizes, judged from the marks and the diagonal, mm. */
  readonly error: number
  /** By how much the measured diagonal differs from that of a rectangle; null where it was not measured. */
  readonly diagonalOff: number | null
}

export type ViewTrouble =
  | { readonly trouble: 'too few marks'; readonly found: number }
  | { readonly trouble: 'no dot' }
  | { readonly trouble: 'corners in a line' }
  /** Seen so, the leaf would come out mirrored. */
  | { readonly trouble: 'corners against the clock' }
  | { readonly trouble: 'ring size'; readonly measured: number; readonly expected: number }

/** By how much the rings may seem larger or smaller than they are printed before the sides are doubted. */
const RING_SLACK = 0.12

/** Marks are found to about a fifth of a pixel, corners are tapped to about two. */
const MARK_ERROR_PX = 0.2
const TAP_ERROR_PX = 2

/** The view from four ring marks or more: more than four are taken to lie on the lines of the long sides. */
export function viewFromMarks(
  marks: readonly FoundMark[],
  size: { readonly width: number; readonly height: number },
  rectangle: MarkRectangle,
  lie: HowTheyLie,
): Result<PhotoView, ViewTrouble> {
  if (marks.length < 4) return refused({ trouble: 'too few marks', found: marks.length })
  const corners = cornerMarks(marks)
  const dotted = corners.findIndex(({ isDotted }) => isDotted)
  if (dotted === -1) return refused({ trouble: 'no dot' })
  const inOrder = [0, 1, 2, 3].map((i) => corners[(dotted + i) % 4]!)
  const places = inOrder.map(({ centre }) => centre)
  const others = marks.filter((mark) => !inOrder.includes(mark)).map(({ centre }) => centre)
  const between = others.filter((p) => isNearASide(p, places))
  const lens = lensOf(size.width, size.height, bestLens(places, between, size, rectangle))
  const viewed = viewOf(places, lens, rectangle, lie, MARK_ERROR_PX)
  if (!viewed.ok) return viewed
  const seen = ringSize(inOrder, viewed.value.view.leafToPhoto, rectangleCorners(rectangle, lie))
  const expected = 2 * RING_MARK.ring
  const isAsPrinted = Math.abs(seen / expected - 1) < RING_SLACK
  return isAsPrinted ? viewed : refused({ trouble: 'ring size', measured: seen, expected })
}

/**
 * How wide the rings would be if the sides were right, mm: in that direction of the photograph in which they are farther
 * from what is printed. A side that was measured or typed wrongly makes them too large or too small.
 */
function ringSize(
  marks: readonly FoundMark[],
  leafToPhoto: Homography<'leaf', 'photo'>,
  places: readonly Point<'leaf'>[],
): number {
  const widths = marks.map(({ width, height }, i) => {
    const at = places[i]!
    const from = applyHomography(leafToPhoto, at)
    const [u, v] = [point<'leaf'>(at.x + 1, at.y), point<'leaf'>(at.x, at.y + 1)].map((p) => {
      const to = applyHomography(leafToPhoto, p)
      return { x: to.x - from.x, y: to.y - from.y }
    }) as [{ x: number; y: number }, { x: number; y: number }]
    return { across: width / Math.hypot(u.x, v.x), down: height / Math.hypot(u.y, v.y) }
  })
  const mean = (way: 'across' | 'down') => widths.reduce((sum, one) => sum + one[way], 0) / widths.length
  const off = (size: number) => Math.abs(Math.log(size / (2 * RING_MARK.ring)))
  return off(mean('across')) > off(mean('down')) ? mean('across') : mean('down')
}

/** The view from four corners tapped in turn, clockwise as seen from the first. */
export const viewFromCorners = (
  corners: readonly Point<'photo'>[],
  size: { readonly width: number; readonly height: number },
  rectangle: MarkRectangle,
  lie: HowTheyLie,
): Result<PhotoView, ViewTrouble> =>
  corners.length < 4
    ? refused({ trouble: 'too few marks', found: corners.length })
    : viewOf(corners, lensOf(size.width, size.height), rectangle, lie, TAP_ERROR_PX)

function viewOf(
  places: readonly Point<'photo'>[],
  lens: Lens,
  rectangle: MarkRectangle,
  lie: HowTheyLie,
  errorPx: number,
): Result<PhotoView, ViewTrouble> {
  const straight = places.map((p) => undistorted(lens, p))
  const leafToPhoto = fitHomography<'leaf', 'photo'>(rectangleCorners(rectangle, lie), straight)
  const round = wayRound(straight)
  if (!leafToPhoto || !round) return refused({ trouble: 'corners in a line' })
  if (round === 'against the clock') return refused({ trouble: 'corners against the clock' })
  const { across, along, diagonal } = rectangle
  const diagonalOff = diagonal === null ? null : diagonal - Math.hypot(across, along)
  const mmPerPx = coarsest(leafToPhoto, rectangle)
  // two places, each off by so much; a rectangle out of square shows half its diagonal's fault on either side
  const error = Math.SQRT2 * errorPx * mmPerPx + Math.abs(diagonalOff ?? 0) / 2
  return ok({ view: { leafToPhoto, lens }, error, diagonalOff })
}

/**
 * Where the corners lie on the leaf, the dotted one first and then clockwise as seen in the photograph: a frame from 0
 * across and along, seen from the numbered side. With the other side up the photograph shows the leaf mirrored.
 */
export function rectangleCorners({ across, along }: MarkRectangle, lie: HowTheyLie): readonly Point<'leaf'>[] {
  const seen = [point<'leaf'>(0, 0), point<'leaf'>(across, 0), point<'leaf'>(across, along), point<'leaf'>(0, along)]
  const turned = lie.dotAt === 'numbered end' ? seen : seen.map(({ x, y }) => point<'leaf'>(across - x, along - y))
  return lie.sideUp === 'numbered' ? turned : turned.map(({ x, y }) => point<'leaf'>(across - x, y))
}

/** The four marks farthest out, clockwise as seen. */
function cornerMarks(marks: readonly FoundMark[]): readonly FoundMark[] {
  const x = marks.reduce((sum, { centre }) => sum + centre.x, 0) / marks.length
  const y = marks.reduce((sum, { centre }) => sum + centre.y, 0) / marks.length
  const clockwise = [...marks].sort(
    (a, b) => Math.atan2(a.centre.y - y, a.centre.x - x) - Math.atan2(b.centre.y - y, b.centre.x - x),
  )
  if (clockwise.length === 4) return clockwise
  return fourLargest(clockwise)
}

/** Of marks in order round the middle, the four that enclose most. */
function fourLargest(marks: readonly FoundMark[]): readonly FoundMark[] {
  let best: readonly FoundMark[] = marks.slice(0, 4)
  let most = -1
  const n = marks.length
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n; b++)
      for (let c = b + 1; c < n; c++)
        for (let d = c + 1; d < n; d++) {
          const four = [a, b, c, d].map((i) => marks[i]!)
          const area = Math.abs(crossed(four[0]!.centre, four[2]!.centre, four[1]!.centre, four[3]!.centre))
          if (area > most) [most, best] = [area, four]
        }
  return best
}

const crossed = <S extends 'photo'>(a: Point<S>, b: Point<S>, c: Point<S>, d: Point<S>): number =>
  (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)

/** The lens that brings the marks between the corners nearest to the lines of the sides; none between: no lens. */
function bestLens(
  corners: readonly Point<'photo'>[],
  between: readonly Point<'photo'>[],
  { width, height }: { readonly width: number; readonly height: number },
  rectangle: MarkRectangle,
): number {
  if (between.length < 2) return 0
  const target = rectangleCorners(rectangle, { sideUp: 'numbered', dotAt: 'numbered end' })
  const miss = (k1: number): number => {
    const lens = lensOf(width, height, k1)
    const map = fitHomography<'photo', 'leaf'>(
      corners.map((p) => undistorted(lens, p)),
      target,
    )
    if (!map) return Infinity
    return between.reduce((sum, p) => sum + offTheSides(applyHomography(map, undistorted(lens, p)), rectangle) ** 2, 0)
  }
  return leastOf(miss, -0.15, 0.15)
}

const offTheSides = ({ x, y }: Point<'leaf'>, { across, along }: MarkRectangle): number =>
  Math.min(Math.abs(x), Math.abs(x - across), Math.abs(y), Math.abs(y - along))

/** A lens bends a side by a few hundredths of its length; what lies farther off is no mark on it. */
function isNearASide(p: Point<'photo'>, corners: readonly Point<'photo'>[]): boolean {
  return corners.some((a, i) => {
    const b = corners[(i + 1) % 4]!
    const length = distance(a, b)
    const off = Math.abs(crossed(a, b, a, p)) / length
    const along = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length ** 2
    return off < 0.04 * length && along > 0.1 && along < 0.9
  })
}

/** Where a function with one valley is least: coarse steps, then halving. */
function leastOf(f: (x: number) => number, from: number, to: number): number {
  let [at, step] = [0, (to - from) / 20]
  let best = f(0)
  for (let x = from; x <= to; x += step) {
    const value = f(x)
    if (value < best) [best, at] = [value, x]
  }
  for (; step > 1e-6; step /= 2)
    for (const x of [at - step, at + step]) {
      const value = f(x)
      if (value < best) [best, at] = [value, x]
    }
  return at
}

/** Which way round four corners go as the photograph shows them; null where they don't go round one place. */
function wayRound(corners: readonly Point<'photo'>[]): 'clockwise' | 'against the clock' | null {
  const turns = corners.slice(0, 4).map((a, i) => {
    const [b, c] = [corners[(i + 1) % 4]!, corners[(i + 2) % 4]!]
    return crossed(a, b, b, c)
  })
  if (turns.every((turn) => turn > 1)) return 'clockwise'
  return turns.every((turn) => turn < -1) ? 'against the clock' : null
}

/** Millimetres to a pixel of the photograph where it shows least, at the corners. */
function coarsest(leafToPhoto: Homography<'leaf', 'photo'>, { across, along }: MarkRectangle): number {
  const places = [point<'leaf'>(0, 0), point<'leaf'>(across, 0), point<'leaf'>(across, along), point<'leaf'>(0, along)]
  return Math.max(...places.map((p) => mmPerPixelAt(leafToPhoto, p)))
}

export function mmPerPixelAt(leafToPhoto: Homography<'leaf', 'photo'>, p: Point<'leaf'>): number {
  const here = applyHomography(leafToPhoto, p)
  const px = Math.min(
    distance(here, applyHomography(leafToPhoto, point(p.x + 1, p.y))),
    distance(here, applyHomography(leafToPhoto, point(p.x, p.y + 1))),
  )
  return 1 / Math.max(px, 1e-6)
}

/** Where a spot of the photograph lies on the leaf. */
export const photoToLeaf = ({ leafToPhoto, lens }: View, p: Point<'photo'>): Point<'leaf'> =>
  applyHomography(invertHomography(leafToPhoto), undistorted(lens, p))
