import { point, type Point } from '../../geometry/point'
import type { Pixels } from '../log/leaf-pixels'
import { applyHomography, type Homography } from './homography'
import { distorted, type Lens } from './lens'
import { forEachStrip, photographOf, type Photograph, type PixelBox } from './photograph'

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

/** Side of the squares of the straightened picture that are read from one part of the photograph each, in pixels. */
const TILE = 128

/**
 * The plane of the leaf seen from straight above, read from the photograph between its pixels, one tile after the other.
 * Where that would skip pixels the photograph is averaged over squares first. Off the photograph it is black and clear.
 */
export function straightened(photo: Photograph, view: View, frame: StraightFrame): Pixels {
  const { width, height } = frame
  const shrink = Math.max(1, Math.floor(shrinking(view, frame)))
  const source = shrink > 1 ? photographOf(averaged(photo, shrink)) : photo
  const rgba = new Uint8ClampedArray(width * height * 4)
  for (let top = 0; top < height; top += TILE)
    for (let left = 0; left < width; left += TILE) {
      const tile = { left, top, width: Math.min(TILE, width - left), height: Math.min(TILE, height - top) }
      straightenTile(source, 1 / shrink, view, frame, tile, rgba)
    }
  return { width, height, rgba }
}

function straightenTile(
  source: Photograph,
  scale: number,
  view: View,
  frame: StraightFrame,
  tile: PixelBox,
  rgba: Uint8ClampedArray,
): void {
  const seen = seenBy(tile, source, scale, view, frame)
  if (!seen) return
  const part: PartRead = { whole: source, left: seen.left, top: seen.top, pixels: source.part(seen) }
  for (let row = tile.top; row < tile.top + tile.height; row++)
    straightenRow(part, scale, view, frame, row, tile.left, tile.left + tile.width, rgba)
}

/** A part of a photograph, and where it lies in the whole. */
interface PartRead {
  readonly whole: { readonly width: number; readonly height: number }
  readonly left: number
  readonly top: number
  readonly pixels: Pixels
}

/**
 * The box of the photograph that a tile is read from, null where that lies off it. A lens and a slant of the camera keep
 * the border of a tile its border, so that alone is looked at.
 */
function seenBy(
  tile: PixelBox,
  { width, height }: { readonly width: number; readonly height: number },
  scale: number,
  { leafToPhoto, lens }: View,
  { origin, mmPerPx }: StraightFrame,
): PixelBox | null {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  const look = (i: number, row: number): void => {
    const at = applyHomography(leafToPhoto, point(origin.x + (i + 0.5) * mmPerPx, origin.y + (row + 0.5) * mmPerPx))
    const { x, y } = lens.k1 === 0 ? at : distorted(lens, at)
    left = Math.min(left, x * scale - 0.5)
    right = Math.max(right, x * scale - 0.5)
    top = Math.min(top, y * scale - 0.5)
    bottom = Math.max(bottom, y * scale - 0.5)
  }
  const [lastAcross, lastDown] = [tile.left + tile.width - 1, tile.top + tile.height - 1]
  for (let i = tile.left; i <= lastAcross; i++) for (const row of [tile.top, lastDown]) look(i, row)
  for (let row = tile.top; row <= lastDown; row++) for (const i of [tile.left, lastAcross]) look(i, row)
  if (right < -1 || bottom < -1 || left > width || top > height) return null
  // a pixel is read together with the one after it, and rounding may take one more
  const [fromX, fromY] = [within(Math.floor(left) - 1, width - 2), within(Math.floor(top) - 1, height - 2)]
  const [toX, toY] = [within(Math.ceil(right) + 2, width - 1), within(Math.ceil(bottom) + 2, height - 1)]
  return { left: fromX, top: fromY, width: toX - fromX + 1, height: toY - fromY + 1 }
}

const within = (value: number, most: number): number => Math.min(Math.max(value, 0), most)

/** Pixels of the photograph to one of the frame, in the frame's middle. */
function shrinking({ leafToPhoto }: View, { origin, width, height, mmPerPx }: StraightFrame): number {
  const middle = point<'leaf'>(origin.x + (width * mmPerPx) / 2, origin.y + (height * mmPerPx) / 2)
  const here = applyHomography(leafToPhoto, middle)
  const across = applyHomography(leafToPhoto, point(middle.x + mmPerPx, middle.y))
  const along = applyHomography(leafToPhoto, point(middle.x, middle.y + mmPerPx))
  return Math.min(Math.hypot(across.x - here.x, across.y - here.y), Math.hypot(along.x - here.x, along.y - here.y))
}

/** A piece of one row, the map carried along it by additions; written out by hand because it runs once a pixel. */
function straightenRow(
  part: PartRead,
  scale: number,
  { leafToPhoto: { m }, lens }: View,
  { origin, width, mmPerPx }: StraightFrame,
  row: number,
  from: number,
  to: number,
  rgba: Uint8ClampedArray,
): void {
  const [m0, m1, m2, m3, m4, m5, m6, m7, m8] = m as NineNumbers
  const y = origin.y + (row + 0.5) * mmPerPx
  for (let i = from; i < to; i++) {
    const x = origin.x + (i + 0.5) * mmPerPx
    const w = m6 * x + m7 * y + m8
    let u = (m0 * x + m1 * y + m2) / w
    let v = (m3 * x + m4 * y + m5) / w
    if (lens.k1 !== 0) ({ x: u, y: v } = distorted(lens, point(u, v)))
    sample(part, u * scale - 0.5, v * scale - 0.5, rgba, (row * width + i) * 4)
  }
}

type NineNumbers = readonly [number, number, number, number, number, number, number, number, number]

function sample({ whole, left, top, pixels }: PartRead, u: number, v: number, to: Uint8ClampedArray, at: number): void {
  if (!(u > -1 && v > -1 && u < whole.width && v < whole.height)) return
  const x = Math.min(Math.max(u, 0), whole.width - 1.001)
  const y = Math.min(Math.max(v, 0), whole.height - 1.001)
  const x0 = x | 0
  const y0 = y | 0
  const fx = x - x0
  const fy = y - y0
  const { width, rgba: from } = pixels
  const upper = ((y0 - top) * width + x0 - left) * 4
  const lower = upper + width * 4
  for (let c = 0; c < 3; c++) {
    const a = from[upper + c]! + (from[upper + 4 + c]! - from[upper + c]!) * fx
    const b = from[lower + c]! + (from[lower + 4 + c]! - from[lower + c]!) * fx
    to[at + c] = a + (b - a) * fy
  }
  to[at + 3] = 255
}

/** The picture at one part in `step` of its size, each pixel the mean of a square. */
function averaged(photo: Photograph, step: number): Pixels {
  const [width, height] = [Math.floor(photo.width / step), Math.floor(photo.height / step)]
  const rgba = new Uint8ClampedArray(width * height * 4)
  forEachStrip(photo, step, (strip, top) => addAveraged(strip, step, rgba.subarray((top / step) * width * 4)))
  return { width, height, rgba }
}

function addAveraged({ width, height, rgba }: Pixels, step: number, out: Uint8ClampedArray): void {
  const [w, h] = [Math.floor(width / step), Math.floor(height / step)]
  const sums = new Float64Array(4 * w)
  for (let y = 0; y < h; y++) {
    sums.fill(0)
    for (let j = 0; j < step; j++) addPixels(rgba, (y * step + j) * width * 4, step, sums)
    for (let i = 0; i < sums.length; i++) out[y * w * 4 + i] = sums[i]! / (step * step)
  }
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
