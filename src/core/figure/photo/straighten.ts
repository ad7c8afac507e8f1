import { point, type Point } from '../../geometry/point'
import type { Pixels } from '../log/leaf-pixels'
import { applyHomography, type Homography } from './homography'
import { distorted, type Lens } from './lens'

/** A true-to-scale picture that is wanted: its first pixel's outer corner on the leaf, its size, and its scale. */
export interface StraightFrame {
  readonly origin: Point<'leaf'>
  readonly width: number
  readonly height: number
  readonly mmPerPx: number
}

/** How a photograph was taken: the map from the plane of the leaf to the straight-lined photograph, and the lens. */
export interface View {
  readonly leafToPhoto: Homography<'leaf', 'photo'>
  readonly lens: Lens
}

/**
 * The plane of the leaf seen from straight above, read from the photograph between its pixels. Where that would skip
 * pixels the photograph is averaged over squares first. Off the photograph it is black and clear.
 */
export function straightened(photo: Pixels, view: View, frame: StraightFrame): Pixels {
  const shrink = Math.max(1, Math.floor(shrinking(view, frame)))
  const source = shrink > 1 ? averaged(photo, shrink) : photo
  const rgba = new Uint8ClampedArray(frame.width * frame.height * 4)
  for (let row = 0; row < frame.height; row++) straightenRow(source, 1 / shrink, view, frame, row, rgba)
  return { width: frame.width, height: frame.height, rgba }
}

/** Pixels of the photograph to one of the frame, in the frame's middle. */
function shrinking({ leafToPhoto }: View, { origin, width, height, mmPerPx }: StraightFrame): number {
  const middle = point<'leaf'>(origin.x + (width * mmPerPx) / 2, origin.y + (height * mmPerPx) / 2)
  const here = applyHomography(leafToPhoto, middle)
  const across = applyHomography(leafToPhoto, point(middle.x + mmPerPx, middle.y))
  const along = applyHomography(leafToPhoto, point(middle.x, middle.y + mmPerPx))
  return Math.min(Math.hypot(across.x - here.x, across.y - here.y), Math.hypot(along.x - here.x, along.y - here.y))
}

/** One row, the map carried along it by additions; written out by hand because it runs once a pixel. */
function straightenRow(
  source: Pixels,
  scale: number,
  { leafToPhoto: { m }, lens }: View,
  { origin, width, mmPerPx }: StraightFrame,
  row: number,
  rgba: Uint8ClampedArray,
): void {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = m as NineNumbers
  const y = origin.y + (row + 0.5) * mmPerPx
  for (let i = 0; i < width; i++) {
    const x = origin.x + (i + 0.5) * mmPerPx
    const w = m6 * x + m7 * y + m8
    let u = (m0 * x + m1 * y + m2) / w
    let v = (m3 * x + m4 * y + m5) / w
    if (lens.k1 !== 0) ({ x: u, y: v } = distorted(lens, point(u, v)))
    sample(source, u * scale - 0.5, v * scale - 0.5, rgba, (row * width + i) * 4)
  }
}

type NineNumbers = readonly [number, number, number, number, number, number, number, number, number]

function sample({ width, height, rgba: from }: Pixels, u: number, v: number, to: Uint8ClampedArray, at: number): void {
  if (!(u > -1 && v > -1 && u < width && v < height)) return
  const x = Math.min(Math.max(u, 0), width - 1.001)
  const y = Math.min(Math.max(v, 0), height - 1.001)
  const x0 = x | 0
  const y0 = y | 0
  const fx = x - x0
  const fy = y - y0
  const top = (y0 * width + x0) * 4
  const bottom = top + width * 4
  for (let c = 0; c < 3; c++) {
    const a = from[top + c]! + (from[top + 4 + c]! - from[top + c]!) * fx
    const b = from[bottom + c]! + (from[bottom + 4 + c]! - from[bottom + c]!) * fx
    to[at + c] = a + (b - a) * fy
  }
  to[at + 3] = 255
}

/** The picture at one part in `step` of its size, each pixel the mean of a square. */
function averaged({ width, height, rgba }: Pixels, step: number): Pixels {
  const [w, h] = [Math.floor(width / step), Math.floor(height / step)]
  const out = new Uint8ClampedArray(w * h * 4)
  const sums = new Float64Array(4 * w)
  for (let y = 0; y < h; y++) {
    sums.fill(0)
    for (let j = 0; j < step; j++) addPixels(rgba, (y * step + j) * width * 4, step, sums)
    for (let i = 0; i < sums.length; i++) out[y * w * 4 + i] = sums[i]! / (step * step)
  }
  return { width: w, height: h, rgba: out }
}

/** Adds a row's colours, `step` pixels to each place. */
function addPixels(rgba: Uint8ClampedArray, row: number, step: number, sums: Float64Array): void {
  for (let x = 0, at = row; x < sums.length; x += 4)
    for (let i = 0; i < step; i++, at += 4) {
      sums[x]! += rgba[at]!
      sums[x + 1]! += rgba[at + 1]!
      sums[x + 2]! += rgba[at + 2]!
      sums[x + 3]! += rgba[at + 3]!
    }
}
