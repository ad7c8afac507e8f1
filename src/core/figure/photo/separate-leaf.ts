import type { Point } from '../../geometry/point'
import { ok, refused, type Result } from '../../result'
import type { Pixels } from '../log/leaf-pixels'
import { findPatches } from './patches'
import { square, weightedMeans, type Plane } from '../box-sums'
import { grown, inverted, logOpponent, shrunk } from './planes'
import { tableModel, type TableModel } from './table-model'

/** Why no outline is given: it could not be trusted. */
export type OutlineRefusal = 'no leaf' | 'touches the frame' | 'too little contrast' | 'wood-coloured table'

export interface Separated {
  /** 1 where the leaf lies. */
  readonly mask: Uint8Array
  /** Pixels unlike the table that are not the leaf, as a share of it. */
  readonly stray: number
  /** The table has the colour of wood, so that the two can't be told apart by colour. */
  readonly isWoodLike: boolean
}

/** Rounds of model, classify, regrow; and the size of the model's cells, mm. */
const ROUNDS = 4
const CELL = 24
/** A difference in lightness counts only so much where the pixel is darker, which may be a shadow. */
const SHADOW_DISCOUNT = 0.3
/** How wide the border of the frame is that is taken for table at first, mm; and what is kept clear of the leaf. */
const BORDER = 14
const CLEAR = 5

/** Tells the leaf from the table roughly, to a millimetre or two, by colour against a model of the table. */
export function separateLeaf(
  picture: Pixels,
  { origin, mmPerPx }: { readonly origin: Point<'leaf'>; readonly mmPerPx: number },
  ignored: readonly { readonly centre: Point<'leaf'>; readonly radius: number }[],
): Result<Separated, OutlineRefusal> {
  const { width, height } = picture
  const everywhere = new Uint8Array(width * height).fill(1)
  const planes = weightedMeans(logOpponent(picture), everywhere, width, height, square(1))
  const free = freeOf(width, height, origin, mmPerPx, ignored)
  const border = Math.max(2, Math.round(BORDER / mmPerPx))
  let table = free.map((isFree, i) => (isFree && isAtBorder(i, width, height, border) ? 1 : 0)) as Uint8Array
  let mask: Uint8Array = new Uint8Array(width * height)
  let stray = 0
  let model: TableModel | null = null
  for (let round = 0; round < ROUNDS; round++) {
    model = tableModel(planes, table, width, height, Math.round(CELL / mmPerPx))
    const unlike = distances(planes, model)
    const hot = hotPixels(unlike, free, threshold(unlike, free))
    const largest = largestPatch(shrunk(grown(hot, width, height, 1), width, height, 1), width, height)
    if (!largest) return refused('no leaf')
    mask = largest
    stray = count(hot) / Math.max(1, count(mask)) - count(overlap(hot, mask)) / Math.max(1, count(mask))
    const clear = Math.max(1, Math.round(CLEAR / mmPerPx))
    table = overlap(inverted(grown(mask, width, height, clear)), free)
  }
  mask = withoutHoles(opened(mask, width, height, Math.max(1, Math.round(2 / mmPerPx))), width, height)
  if (count(mask) * mmPerPx * mmPerPx < 2_000) return refused('no leaf')
  if (touchesFrame(mask, width, height)) return refused('touches the frame')
  return ok({ mask, stray: Math.max(0, stray), isWoodLike: isLikeWood(planes, mask, table) })
}

function freeOf(
  width: number,
  height: number,
  origin: Point<'leaf'>,
  mmPerPx: number,
  ignored: readonly { readonly centre: Point<'leaf'>; readonly radius: number }[],
): Uint8Array {
  const free = new Uint8Array(width * height).fill(1)
  for (const { centre, radius } of ignored) {
    const [cx, cy, r] = [(centre.x - origin.x) / mmPerPx, (centre.y - origin.y) / mmPerPx, radius / mmPerPx]
    for (let y = Math.max(0, Math.floor(cy - r)); y < Math.min(height, cy + r); y++)
      for (let x = Math.max(0, Math.floor(cx - r)); x < Math.min(width, cx + r); x++) free[y * width + x] = 0
  }
  return free
}

const isAtBorder = (i: number, width: number, height: number, border: number): boolean => {
  const x = i % width
  const y = (i - x) / width
  return x < border || y < border || x >= width - border || y >= height - border
}

/** How unlike the table each pixel is, in spreads of the table. */
function distances([light, warm, green]: readonly Plane[], { planes, spread }: TableModel): Plane {
  const out = new Float32Array(light!.length)
  const [sl, sw, sg] = [Math.max(spread[0]!, 3), Math.max(spread[1]!, 2.2), Math.max(spread[2]!, 1.6)]
  for (let i = 0; i < out.length; i++) {
    const dl = (light![i]! - planes[0]![i]!) / sl
    const dw = (warm![i]! - planes[1]![i]!) / sw
    const dg = (green![i]! - planes[2]![i]!) / sg
    const lit = dl < 0 ? SHADOW_DISCOUNT * dl : dl
    out[i] = Math.sqrt(lit * lit + dw * dw + dg * dg)
  }
  return out
}

/** Where two heaps of distances part (Otsu's rule on their logarithms), within reason. */
function threshold(unlike: Plane, free: Uint8Array): number {
  const bins = new Float64Array(64)
  for (let i = 0; i < unlike.length; i += 2)
    if (free[i]) bins[Math.min(63, Math.max(0, Math.floor(Math.log(unlike[i]! + 0.5) * 12 + 9)))]!++
  const total = bins.reduce((sum, n) => sum + n, 0)
  const all = bins.reduce((sum, n, b) => sum + n * b, 0)
  let [below, sum, best, cut] = [0, 0, -1, 0]
  for (let b = 0; b < 63; b++) {
    below += bins[b]!
    sum += bins[b]! * b
    if (below === 0 || below === total) continue
    const between = below * (total - below) * (sum / below - (all - sum) / (total - below)) ** 2
    if (between > best) [best, cut] = [between, b + 1]
  }
  return Math.min(Math.max(Math.exp((cut - 9) / 12) - 0.5, 3), 9)
}

const hotPixels = (unlike: Plane, free: Uint8Array, limit: number): Uint8Array =>
  Uint8Array.from(unlike, (value, i) => (free[i] && value > limit ? 1 : 0))

function largestPatch(mask: Uint8Array, width: number, height: number): Uint8Array | null {
  const { of, area, count: patches } = findPatches(mask, width, height)
  const isHot = new Uint8Array(patches)
  for (let i = 0; i < of.length; i++) if (mask[i]) isHot[of[i]!] = 1
  let best = -1
  for (let p = 0; p < patches; p++) if (isHot[p] && (best === -1 || area[p]! > area[best]!)) best = p
  return best === -1
    ? null
    : withoutHoles(
        Uint8Array.from(of, (p) => (p === best ? 1 : 0)),
        width,
        height,
      )
}

/** What is not joined to the frame's border is inside. */
function withoutHoles(mask: Uint8Array, width: number, height: number): Uint8Array {
  const { of, left, right, top, bottom } = findPatches(mask, width, height)
  return Uint8Array.from(of, (p, i) => {
    if (mask[i]) return 1
    return left[p] === 0 || top[p] === 0 || right[p] === width - 1 || bottom[p] === height - 1 ? 0 : 1
  })
}

/** Without what is narrower than twice the reach. */
const opened = (mask: Uint8Array, width: number, height: number, reach: number): Uint8Array => {
  const kept = grown(shrunk(mask, width, height, reach), width, height, reach)
  return largestPatch(kept, width, height) ?? mask
}

const count = (mask: Uint8Array): number => mask.reduce((sum, value) => sum + value, 0)
const overlap = (a: Uint8Array, b: Uint8Array): Uint8Array => a.map((value, i) => value & b[i]!)

const touchesFrame = (mask: Uint8Array, width: number, height: number): boolean =>
  mask.some((value, i) => value === 1 && isAtBorder(i, width, height, 2))

/** Colours apart by less than this in logarithms x 100 are as near as one board is to another. */
const ALIKE = 26

function isLikeWood([, warm, green]: readonly Plane[], mask: Uint8Array, table: Uint8Array): boolean {
  const mean = (plane: Plane, where: Uint8Array) => {
    let [sum, n] = [0, 0]
    for (let i = 0; i < plane.length; i++) if (where[i]) [sum, n] = [sum + plane[i]!, n + 1]
    return sum / Math.max(1, n)
  }
  const tableWarmth = mean(warm!, table)
  const apart = Math.hypot(mean(warm!, mask) - tableWarmth, mean(green!, mask) - mean(green!, table))
  return tableWarmth > 25 && apart < ALIKE
}
