import type { Pixels } from '../log/leaf-pixels'
import { forEachStrip, type Photograph } from './photograph'

/** One number a pixel, row by row. */
export interface Grey {
  readonly width: number
  readonly height: number
  readonly values: Uint8Array
}

/** Lightness, averaged over squares of so many pixels as each of `steps` says: 0 black, 255 white. All in one reading. */
export function greysOf(photo: Photograph, steps: readonly number[]): readonly Grey[] {
  const greys = steps.map((step) => {
    const [width, height] = [Math.floor(photo.width / step), Math.floor(photo.height / step)]
    return { width, height, values: new Uint8Array(width * height) }
  })
  forEachStrip(photo, Math.max(...steps), (strip, top) =>
    greys.forEach(({ width, values }, i) => {
      const step = steps[i]!
      addGreyRows(strip, step, values.subarray((top / step) * width))
    }),
  )
  return greys
}

function addGreyRows({ width, height, rgba }: Pixels, step: number, values: Uint8Array): void {
  const [w, h] = [Math.floor(width / step), Math.floor(height / step)]
  const share = 1 / (256 * step * step)
  const sums = new Float64Array(w)
  for (let y = 0; y < h; y++) {
    sums.fill(0)
    for (let j = 0; j < step; j++) addLightness(rgba, (y * step + j) * width * 4, step, sums)
    for (let x = 0; x < w; x++) values[y * w + x] = sums[x]! * share
  }
}

function addLightness(rgba: Uint8ClampedArray, row: number, step: number, sums: Float64Array): void {
  for (let x = 0, at = row; x < sums.length; x++) {
    let sum = 0
    for (const end = at + 4 * step; at < end; at += 4) sum += 77 * rgba[at]! + 151 * rgba[at + 1]! + 28 * rgba[at + 2]!
    sums[x]! += sum
  }
}

/**
 * Where a picture is darker than its surroundings (1, else 0): by `below` against the mean of a square of `2·reach + 1`
 * pixels round it. A running sum for each column keeps it at one pass.
 */
export function darkerThanAround({ width, height, values }: Grey, reach: number, below: number): Uint8Array {
  const dark = new Uint8Array(width * height)
  const columns = new Float64Array(width)
  let rows = 0
  for (let y = 0; y < Math.min(reach, height); y++, rows++) addRow(columns, values, y * width, width, 1)
  for (let y = 0; y < height; y++) {
    if (y + reach < height) rows += addRow(columns, values, (y + reach) * width, width, 1)
    if (y - reach - 1 >= 0) rows -= addRow(columns, values, (y - reach - 1) * width, width, -1)
    let sum = 0
    for (let x = 0; x < Math.min(reach, width); x++) sum += columns[x]!
    for (let x = 0; x < width; x++) {
      if (x + reach < width) sum += columns[x + reach]!
      if (x - reach - 1 >= 0) sum -= columns[x - reach - 1]!
      const count = (Math.min(x + reach, width - 1) - Math.max(x - reach, 0) + 1) * rows
      if (values[y * width + x]! < sum / count - below) dark[y * width + x] = 1
    }
  }
  return dark
}

function addRow(columns: Float64Array, values: Uint8Array, from: number, width: number, sign: number): number {
  for (let x = 0; x < width; x++) columns[x]! += sign * values[from + x]!
  return 1
}
