import type { Point } from '../../geometry/point'
import { ok, refused, type Result } from '../../result'
import type { Pixels } from '../log/leaf-pixels'
import { findPatches } from './patches'
import { meansRoom, square, weightedMeans, type Plane } from '../box-sums'
import { countOf, grown, inverted, logOpponent, overlap, shrunk } from './planes'
import { tableModel, type TableModel } from './table-model'

/** Why no outline is given: it could not be trusted. */
export type OutlineRefusal = 'no leaf' | 'touches the frame' | 'too little contrast' | 'wood-coloured table'

export interface Separated {
  /** 1 where the leaf lies. */
  readonly mask: Uint8Array
  /** Pixels unlike the table that are not the leaf, as a share of it. */
  readonly stray: number
  /** The table has the colour of wood, so that the two can hardly be told apart by colour. */
  readonly isWoodLike: boolean
}

/** Rounds of model, classify, regrow; and the size of the model's cells, mm. */
const ROUNDS = 4
const CELL = 24
/** Where a pixel is darker than the table it may lie in shadow: that counts only so much, up to the deepest shadow. */
const SHADOW = { counts: 0.1, deepest: 90 }
/** Where most of the leaf differs from the table so far in hue alone, in spreads, no shadow is too deep to be one. */
const OTHER_HUE = 6
const SHADOW_ON_OTHER_HUE = { counts: 0.03, deepest: Infinity }
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
  const raw = logOpponent(picture)
  const room = meansRoom(raw.length, width * height)
  const planes = weightedMeans(raw, everywhere, width, height, square(1), room)
  // the raw colours are not asked again: the model of the table takes their room
  const modelRoom = { planes: raw, gaps: room.across }
  const labels = new Int32Array(width * height)
  const free = freeOf(width, height, origin, mmPerPx, ignored)
  const border = Math.max(2, Math.round(BORDER / mmPerPx))
  let table = overlap(free, borderOf(width, height, border))
  let mask: Uint8Array = new Uint8Array(width * height)
  let stray = 0
  for (let round = 0; round < ROUNDS; round++) {
    const model = tableModel(planes, table, width, height, Math.round(CELL / mmPerPx), modelRoom)
    const shadow = isOtherHue(planes, model, mask) ? SHADOW_ON_OTHER_HUE : SHADOW
    const unlike = distances(planes, model, shadow, room.through)
    const hot = hotPixels(unlike, free, threshold(unlike, free))
    const largest = largestPatch(shrunk(grown(hot, width, height, 1), width, height, 1), width, height, labels)
    if (!largest) return refused('no leaf')
    const isSettled = countOf(mask) === countOf(largest) && countOf(overlap(mask, largest)) === countOf(largest)
    mask = largest
    stray = countOf(hot) / Math.max(1, countOf(mask)) - countOf(overlap(hot, mask)) / Math.max(1, countOf(mask))
    // the same leaf gives the same table, and that the same leaf
    if (isSettled) break
    const clear = Math.max(1, Math.round(CLEAR / mmPerPx))
    table = overlap(inverted(grown(mask, width, height, clear)), free)
  }
  mask = withoutHoles(opened(mask, width, height, Math.max(1, Math.round(2 / mmPerPx)), labels), width, height, labels)
  if (countOf(mask) * mmPerPx * mmPerPx < 2_000) return refused('no leaf')
  if (touchesFrame(mask, width, height)) return refused('touches the frame')
  return ok({ mask, stray: Math.max(0, stray), isWoodLike: isLikeWood(planes, table) })
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

/** The pixels nearer to the edge of the picture than `border`. */
function borderOf(width: number, height: number, border: number): Uint8Array {
  const out = new Uint8Array(width * height).fill(1)
  for (let y = border; y < height - border; y++) out.fill(0, y * width + border, (y + 1) * width - border)
  return out
}

/** How unlike the table each pixel is, in spreads of the table. */
function distances(planes: readonly Plane[], model: TableModel, { counts, deepest }: typeof SHADOW, out: Plane): Plane {
  const light = planes[0]!
  const tableLight = model.planes[0]!
  const spread = Math.max(model.spread[0]!, 3)
  for (let i = 0; i < out.length; i++) {
    const off = light[i]! - tableLight[i]!
    const shade = Math.min(Math.max(-off, 0), deepest)
    out[i] = Math.hypot((off + (1 - counts) * shade) / spread, hueDistance(planes, model, i))
  }
  return out
}

/** How far a pixel is from the table in hue alone, in spreads of the table. */
function hueDistance([, warm, green]: readonly Plane[], { planes, spread }: TableModel, i: number): number {
  const dw = (warm![i]! - planes[1]![i]!) / Math.max(spread[1]!, 2.2)
  const dg = (green![i]! - planes[2]![i]!) / Math.max(spread[2]!, 1.6)
  return Math.sqrt(dw * dw + dg * dg)
}

/** Whether seven tenths of the leaf, as far as it is told, can be told from the table by hue alone. */
function isOtherHue(planes: readonly Plane[], model: TableModel, mask: Uint8Array): boolean {
  let [far, count] = [0, 0]
  for (let i = 0; i < mask.length; i += 5) {
    if (!mask[i]) continue
    count++
    if (hueDistance(planes, model, i) > OTHER_HUE) far++
  }
  return far > 0.7 * count
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

function hotPixels(unlike: Plane, free: Uint8Array, limit: number): Uint8Array {
  const hot = new Uint8Array(unlike.length)
  for (let i = 0; i < hot.length; i++) if (free[i] && unlike[i]! > limit) hot[i] = 1
  return hot
}

function largestPatch(mask: Uint8Array, width: number, height: number, labels: Int32Array): Uint8Array | null {
  const { of, area, count, leftmost } = findPatches(mask, width, height, labels)
  let best = -1
  for (let p = 0; p < count; p++) if (mask[leftmost[p]!] && (best === -1 || area[p]! > area[best]!)) best = p
  if (best === -1) return null
  const largest = new Uint8Array(mask.length)
  for (let i = 0; i < largest.length; i++) if (of[i] === best) largest[i] = 1
  return withoutHoles(largest, width, height, labels)
}

/** What is not joined to the frame's border is inside. */
function withoutHoles(mask: Uint8Array, width: number, height: number, labels: Int32Array): Uint8Array {
  const { of, count, left, right, top, bottom } = findPatches(mask, width, height, labels)
  const isOutside = new Uint8Array(count)
  for (let p = 0; p < count; p++)
    if (left[p] === 0 || top[p] === 0 || right[p] === width - 1 || bottom[p] === height - 1) isOutside[p] = 1
  const filled = new Uint8Array(mask.length)
  for (let i = 0; i < filled.length; i++) if (mask[i] || !isOutside[of[i]!]) filled[i] = 1
  return filled
}

/** Without what is narrower than twice the reach. */
const opened = (mask: Uint8Array, width: number, height: number, reach: number, labels: Int32Array): Uint8Array => {
  const kept = grown(shrunk(mask, width, height, reach), width, height, reach)
  return largestPatch(kept, width, height, labels) ?? mask
}

const touchesFrame = (mask: Uint8Array, width: number, height: number): boolean =>
  countOf(overlap(mask, borderOf(width, height, 2))) > 0

/** A table warmer than this (logarithm of red over blue x 100) is wood, or as good as wood. */
const WARM = 25

/** On a table of the colour of wood, however light or dark, an outline is not to be trusted unseen. */
function isLikeWood([, warm]: readonly Plane[], table: Uint8Array): boolean {
  let sum = 0
  for (let i = 0; i < table.length; i++) if (table[i]) sum += warm![i]!
  return sum > WARM * countOf(table)
}
