/**
 * The tip of the crown that stands out most in a picture.
 *
 * Crowns are nested curves, each the next one moved along the grain. So a curve of the right bend, moved along the right
 * axis, meets everywhere the same wood in its left arm, at its tip and in its right arm; where stripes run straight through,
 * no bend does that. The tip is where what it meets changes most. Lengths in mm, values as in `GreyPicture`.
 * Failure: null where no bend fits or nothing changes enough.
 */
import { point } from '../../geometry/point'
import { shrunk, type GreyPicture } from '../align/grey'
import type { Landmark, LeafEnd } from './landmark'

/** Bends that are tried: how far an arm falls back along the grain, mm, for each square mm to the side. */
const BENDS = [0.06, 0.11, 0.2, 0.33]

/** The tip reaches so far to each side of the axis, the arms go on to `ARMS`. */
const TIP = 4
const ARMS = 16

/** How far about a tip the lines beside it are looked at, mm: they say to which end it points. */
const BESIDE = { from: 5, to: 30, along: 70 }

/** Arms and tip must agree over this length along the grain, by this correlation. */
const STRETCH = 110
const AGREE = 0.5

/** The change is taken between means over this length before and after it; less than `LEAST` is no landmark. */
const STEP = 14
const LEAST = 0.035

/** Crowns are looked for at this scale; the tip is then found in the picture itself. */
const COARSE = 0.5

/** One bend on one axis, seen from the end to which the tip points. */
interface Curve {
  readonly column: number
  readonly bend: number
  readonly end: LeafEnd
}

interface Found {
  readonly curve: Curve
  readonly row: number
  readonly score: number
}

/** The tip of the most distinct crown of a picture, at least `clear` mm inside its known part along and across; null for none. */
export function crownTip(picture: GreyPicture, clear = ARMS): Extract<Landmark, { kind: 'crown tip' }> | null {
  const by = Math.max(1, Math.round(picture.pxPerMm / COARSE))
  const coarse = by > 1 ? shrunk(picture, by) : picture
  const margin = Math.ceil(clear * coarse.pxPerMm)
  let best: Found | null = null
  for (let column = margin; column < coarse.width - margin; column++) best = better(best, bestOnAxis(coarse, column))
  if (!best) return null
  const fine = by > 1 ? refined(picture, best, by) : best
  const at = (pixel: number, from: number) => from + (pixel + 0.5) / picture.pxPerMm
  return {
    kind: 'crown tip',
    at: point(at(fine.curve.column, picture.origin.x), fine.row / picture.pxPerMm + picture.origin.y),
    end: endOf(picture, fine),
  }
}

const better = (one: Found | null, other: Found | null): Found | null =>
  other && (!one || other.score > one.score) ? other : one

function bestOnAxis(picture: GreyPicture, column: number): Found | null {
  let best: Found | null = null
  for (const end of ['near', 'far'] as const)
    for (const bend of BENDS) {
      const curve = { column, bend, end }
      best = better(best, bestOnCurve(profilesOf(picture, curve), curve, picture.pxPerMm))
    }
  return best
}

/** What a curve meets as it is moved along its axis: means by row of its tip; NaN where a pixel is not known. */
interface Profiles {
  readonly left: Float32Array
  readonly tip: Float32Array
  readonly right: Float32Array
}

function profilesOf(picture: GreyPicture, curve: Curve): Profiles {
  const [tip, arms] = [Math.round(TIP * picture.pxPerMm), Math.round(ARMS * picture.pxPerMm)]
  return {
    left: profile(picture, curve, -arms, -tip - 1),
    tip: profile(picture, curve, -tip, tip),
    right: profile(picture, curve, tip + 1, arms),
  }
}

function profile(picture: GreyPicture, { column, bend, end }: Curve, from: number, to: number): Float32Array {
  const { width, height, values, known, pxPerMm } = picture
  const sums = new Float32Array(height)
  const back = end === 'far' ? -1 : 1
  for (let off = from; off <= to; off++) {
    const fall = back * Math.round((bend * off * off) / pxPerMm)
    const i = column + off
    for (let row = 0; row < height; row++) {
      const at = (row + fall) * width + i
      sums[row]! += i >= 0 && i < width && row + fall >= 0 && row + fall < height && known[at] ? values[at]! : NaN
    }
  }
  return sums.map((sum) => sum / (to - from + 1))
}

function bestOnCurve({ left, tip, right }: Profiles, curve: Curve, pxPerMm: number): Found | null {
  const half = Math.round((STRETCH * pxPerMm) / 2)
  const whole = left.map((value, row) => (value + tip[row]! + right[row]!) / 3)
  const change = changes(whole, Math.round(STEP * pxPerMm))
  let best: Found | null = null
  for (let row = half; row < whole.length - half; row++) {
    const step = Math.abs(change[row]!)
    // the sums of a correlation cost most: only where there is something to gain
    if (!(step > LEAST) || (best && step <= best.score) || step < Math.abs(change[row - 1]!)) continue
    if (step < Math.abs(change[row + 1]!)) continue
    const agree = agreement({ left, tip, right }, row - half, row + half)
    if (agree > AGREE) best = better(best, { curve, row, score: step * agree * agree })
  }
  return best
}

/** By row, the mean of the `reach` rows from it on less that of the rows before it. */
function changes(values: Float32Array, reach: number): Float32Array {
  return values.map((_, row) => {
    if (row < reach || row + reach > values.length) return NaN
    let sum = 0
    for (let k = 0; k < reach; k++) sum += values[row + k]! - values[row - 1 - k]!
    return sum / reach
  })
}

/** How well the arms and the tip agree from one row to before another: the least of their correlations. */
const agreement = ({ left, tip, right }: Profiles, from: number, to: number): number =>
  Math.min(correlation(left, tip, from, to), correlation(right, tip, from, to), correlation(left, right, from, to))

/** The end to which a tip points. Short arms fit a blunt curve both ways; the lines beside it close towards that end. */
function endOf(picture: GreyPicture, { curve: { column }, row }: Found): LeafEnd {
  const [from, to, along] = [BESIDE.from, BESIDE.to, BESIDE.along].map((mm) => Math.round(mm * picture.pxPerMm)) as [
    number,
    number,
    number,
  ]
  let closing = 0
  for (let j = Math.max(1, row - along); j < Math.min(picture.height - 1, row + along); j++)
    for (let off = from; off <= to; off++)
      closing += leaning(picture, column - off, j) - leaning(picture, column + off, j)
  return closing > 0 ? 'far' : 'near'
}

/** Above 0 where the line through a pixel runs to higher x on its way to the far end. */
function leaning({ width, values, known }: GreyPicture, i: number, j: number): number {
  const at = j * width + i
  if (i < 1 || i >= width - 1 || !known[at - 1] || !known[at + 1] || !known[at - width] || !known[at + width]) return 0
  return -(values[at + 1]! - values[at - 1]!) * (values[at + width]! - values[at - width]!)
}

/** The correlation of two profiles from one row to before another. */
function correlation(one: Float32Array, other: Float32Array, from: number, to: number): number {
  let [a, b, aa, bb, ab] = [0, 0, 0, 0, 0]
  for (let row = from; row < to; row++) {
    const [x, y] = [one[row]!, other[row]!]
    a += x
    b += y
    aa += x * x
    bb += y * y
    ab += x * y
  }
  const n = to - from
  const spread = Math.sqrt((aa - (a * a) / n) * (bb - (b * b) / n))
  return spread > 1e-9 * n ? (ab - (a * b) / n) / spread : 0
}

/** The same tip in a picture that is `by` times as fine. */
function refined(picture: GreyPicture, { curve, row }: Found, by: number): Found {
  const reach = Math.round(STEP * picture.pxPerMm)
  let best: Found = { curve: { ...curve, column: curve.column * by }, row: row * by, score: 0 }
  const middle = best.curve.column + Math.floor(by / 2)
  for (let column = middle - 2 * by; column <= middle + 2 * by; column++) {
    const fine = { ...curve, column }
    const { left, tip, right } = profilesOf(picture, fine)
    const change = changes(
      left.map((value, i) => (value + tip[i]! + right[i]!) / 3),
      reach,
    )
    for (let i = Math.max(0, (row - 4) * by); i <= Math.min(change.length - 1, (row + 4) * by); i++)
      if (Math.abs(change[i]!) > best.score) best = { curve: fine, row: i, score: Math.abs(change[i]!) }
  }
  return best
}
