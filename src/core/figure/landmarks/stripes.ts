/**
 * The dark stripes that stand out most where the figure runs over an end of a window.
 *
 * Input: a picture of a leaf and the ring of a window on it. Output: places on the border of the window, to about half a
 * millimetre across. Steep sides count as no end, so that the sides of a wedge are left out. Failure: fewer stripes, or
 * none, where nothing stands out or no wood is known.
 */
import { boxAround, boxWidth } from '../../geometry/box'
import { point, type Point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import { levelCrossings } from '../../geometry/segment'
import { ringEdges } from '../../geometry/polygon'
import { bandPassed } from '../align/band-pass'
import type { GreyPicture } from '../align/grey'
import type { Landmark, LeafEnd } from './landmark'

type Stripe = Extract<Landmark, { kind: 'stripe' }>

/** A stripe is looked at so far before and behind the end, mm along the grain. */
const ALONG = 8
/** How far to each side the wood must be lighter, mm, and by how much (logarithm of light). */
const BESIDE = 9
const LEAST = 0.05
/** Kept between two stripes, mm and as a share of the window's width, and from the corners of the window. */
const APART = { least: 24, share: 0.25 }
const CORNER = 7
/** A border that falls more steeply than this is a side, not an end. */
const STEEP = 1.7

/** The most distinct stripes over one end of a window, the best first. */
export function stripesOver(picture: GreyPicture, window: Ring<'leaf'>, end: LeafEnd, most: number): readonly Stripe[] {
  const border = endBorder(window, end, 1 / picture.pxPerMm)
  // a shadow across the leaf makes no stripe darker
  const even = bandPassed(picture, 1)
  const light = border.map((p) => lightAt(even, p))
  const found = border
    .map((at, i) => ({ at, dark: distinctness(light, i, Math.round(BESIDE * picture.pxPerMm)), i }))
    .filter(({ dark, i }) => dark > LEAST && light[i]! <= Math.min(light[i - 1] ?? Infinity, light[i + 1] ?? Infinity))
    .sort((p, q) => q.dark - p.dark)
  const box = boxAround(window)
  const apart = Math.max(APART.least, APART.share * boxWidth(box))
  const kept: Stripe[] = []
  for (const { at } of found)
    if (kept.length < most && kept.every((stripe) => Math.abs(stripe.at.x - at.x) >= apart))
      kept.push({ kind: 'stripe', at, end })
  return kept
}

/** Places along the end of a window, a step apart, clear of its corners. */
function endBorder(window: Ring<'leaf'>, end: LeafEnd, step: number): readonly Point<'leaf'>[] {
  const { min, max } = boxAround(window)
  const edges = ringEdges(window).filter(({ a, b }) => Math.abs(b.y - a.y) <= STEEP * Math.abs(b.x - a.x))
  const places: Point<'leaf'>[] = []
  for (let x = min.x + CORNER; x <= max.x - CORNER; x += step) {
    const all = levelCrossings(ringEdges(window), 'x', x)
    const y = end === 'near' ? Math.min(...all) : Math.max(...all)
    if (levelCrossings(edges, 'x', x).some((of) => Math.abs(of - y) < 0.01)) places.push(point(x, y))
  }
  return places
}

/** The mean light along the grain over a short way; NaN where wood is not known. */
function lightAt({ width, height, pxPerMm, origin, values, known }: GreyPicture, at: Point<'leaf'>): number {
  const x = (at.x - origin.x) * pxPerMm - 0.5
  const i = Math.floor(x)
  const [from, to] = [at.y - ALONG, at.y + ALONG].map((y) => Math.round((y - origin.y) * pxPerMm)) as [number, number]
  if (i < 0 || i + 1 >= width || from < 0 || to > height) return NaN
  let sum = 0
  for (let j = from; j < to; j++) {
    const p = j * width + i
    sum += known[p] && known[p + 1] ? values[p]! + (values[p + 1]! - values[p]!) * (x - i) : NaN
  }
  return sum / (to - from)
}

/** How much lighter the wood becomes to both sides of a place: the lesser of the two. */
function distinctness(light: readonly number[], i: number, reach: number): number {
  const most = (from: number, to: number) => Math.max(...light.slice(Math.max(0, from), Math.max(0, to)))
  return Math.min(most(i - reach, i), most(i + 1, i + 1 + reach)) - light[i]!
}
