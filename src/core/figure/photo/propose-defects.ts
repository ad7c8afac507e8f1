import { boxAround } from '../../geometry/box'
import { point, type Point } from '../../geometry/point'
import type { Ring } from '../../geometry/polygon'
import type { Defect } from '../../leaves/leaf'
import type { Pixels } from '../log/leaf-pixels'
import { croppedTo, pixelsRound } from './cropped'
import { findPatches } from './patches'
import { square, weightedMeans } from '../box-sums'
import { logLightness } from './planes'
import type { StraightFrame } from './straighten'

/** Darker than the wood round about by so much (logarithm x 100) is worth a question. */
const DARK = 30
/** Sizes of what is taken for a knot, mm across; how far from an end a split may begin; its least length. */
const KNOT = { least: 5, most: 70, fullness: 0.42, slender: 2.6 }
const SPLIT = { fromEnd: 14, length: 18, slender: 5 }
/** Kept clear of the edge: the shadow there is no defect. */
const CLEAR = 4
const MOST = 12

/** Dark spots taken for knots and dark cracks at the ends taken for splits, the largest first. Ids count from 1. */
export function proposeDefects(whole: Pixels, all: StraightFrame, outline: Ring<'leaf'>): readonly Defect[] {
  const { picture, frame } = croppedTo(whole, all, pixelsRound(boxAround(outline), all, 1))
  const { width, height } = picture
  const inside = coverOf(outline, frame)
  const light = logLightness(picture)
  const reach = Math.round(28 / frame.mmPerPx)
  const around = weightedMeans([light], inside, width, height, square(reach))[0]!
  const dark = new Uint8Array(inside.length)
  for (let i = 0; i < dark.length; i++) if (inside[i] && light[i]! < around[i]! - DARK) dark[i] = 1
  const patches = findPatches(dark, width, height)
  const box = boxAround(outline)
  const found: { size: number; defect: Defect }[] = []
  for (let p = 0; p < patches.count; p++) {
    if (!dark[patches.leftmost[p]!]) continue
    const px = frame.mmPerPx
    const [w, h] = [(patches.right[p]! - patches.left[p]! + 1) * px, (patches.bottom[p]! - patches.top[p]! + 1) * px]
    const at = (x: number, y: number): Point<'leaf'> =>
      point(Math.round((frame.origin.x + x * px) * 10) / 10, Math.round((frame.origin.y + y * px) * 10) / 10)
    const centre = at((patches.left[p]! + patches.right[p]! + 1) / 2, (patches.top[p]! + patches.bottom[p]! + 1) / 2)
    const [top, bottom] = [at(0, patches.top[p]!).y, at(0, patches.bottom[p]! + 1).y]
    if (isKnot(w, h, patches.area[p]! * px * px))
      found.push({
        size: w * h,
        defect: {
          id: '',
          kind: 'knot',
          note: '',
          shape: 'spot',
          centre,
          radius: Math.round(5 * Math.hypot(w, h)) / 10,
        },
      })
    else if (
      h >= SPLIT.length &&
      h > SPLIT.slender * w &&
      (top - box.min.y < SPLIT.fromEnd || box.max.y - bottom < SPLIT.fromEnd)
    ) {
      const atStart = top - box.min.y < box.max.y - bottom
      const [from, to] = atStart ? [box.min.y, bottom] : [box.max.y, top]
      found.push({
        size: h * 4,
        defect: {
          id: '',
          kind: 'split',
          note: '',
          shape: 'line',
          from: point(centre.x, from),
          to: point(centre.x, to),
        },
      })
    }
  }
  return found
    .sort((a, b) => b.size - a.size)
    .slice(0, MOST)
    .map(({ defect }, i) => ({ ...defect, id: `proposed-${i + 1}` }))
}

function isKnot(w: number, h: number, area: number): boolean {
  if (Math.min(w, h) < KNOT.least || Math.max(w, h) > KNOT.most) return false
  return area / (w * h) > KNOT.fullness && Math.max(w, h) < KNOT.slender * Math.min(w, h)
}

/** The pixels well inside an outline. */
function coverOf(outline: Ring<'leaf'>, { origin, width, height, mmPerPx }: StraightFrame): Uint8Array {
  const cover = new Uint8Array(width * height)
  for (let row = 0; row < height; row++) {
    const y = origin.y + (row + 0.5) * mmPerPx
    const xs = crossings(outline, y)
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const from = Math.max(0, Math.ceil((xs[k]! + CLEAR - origin.x) / mmPerPx))
      const to = Math.min(width, Math.floor((xs[k + 1]! - CLEAR - origin.x) / mmPerPx))
      for (let x = from; x < to; x++) cover[row * width + x] = 1
    }
  }
  return cover
}

function crossings(ring: Ring<'leaf'>, y: number): number[] {
  const xs: number[] = []
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!]
    if (a.y > y !== b.y > y) xs.push(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
  }
  return xs.sort((p, q) => p - q)
}
