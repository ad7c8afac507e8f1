import type { Pixels } from '../log/leaf-pixels'

/** Some numbers a pixel, one plane each. */
export type Plane = Float32Array

/**
 * Lightness and two differences of colour, in logarithms: a shadow, which takes the same share of all three, is a shift
 * of the first alone. Scaled by 100.
 */
export function logOpponent({ rgba }: Pixels): readonly [Plane, Plane, Plane] {
  const count = rgba.length / 4
  const [light, warm, green] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)]
  const logs = Float32Array.from({ length: 256 }, (_, v) => 100 * Math.log(v + 8))
  for (let i = 0; i < count; i++) {
    const [r, g, b] = [logs[rgba[4 * i]!]!, logs[rgba[4 * i + 1]!]!, logs[rgba[4 * i + 2]!]!]
    light[i] = (r + g + b) / 3
    warm[i] = r - b
    green[i] = g - (r + b) / 2
  }
  return [light, warm, green]
}

/** Means over squares of `2·reach + 1` pixels of what `weight` lets through; where nothing is let through, NaN. */
export function weightedMeans(
  planes: readonly Plane[],
  weight: Uint8Array,
  width: number,
  height: number,
  reach: number,
): readonly Plane[] {
  const counts = boxSums((i) => weight[i]!, width, height, reach)
  return planes.map((plane) => {
    const sums = boxSums((i) => (weight[i] ? plane[i]! : 0), width, height, reach)
    for (let i = 0; i < sums.length; i++) sums[i] = counts[i]! > 0 ? sums[i]! / counts[i]! : NaN
    return sums
  })
}

/** Sums over squares, cut off at the border. */
export function boxSums(value: (i: number) => number, width: number, height: number, reach: number): Plane {
  const across = new Float64Array(width * height)
  for (let y = 0; y < height; y++) {
    let sum = 0
    const row = y * width
    for (let x = -reach; x < width; x++) {
      if (x + reach < width) sum += value(row + x + reach)
      if (x - reach - 1 >= 0) sum -= value(row + x - reach - 1)
      if (x >= 0) across[row + x] = sum
    }
  }
  const out = new Float32Array(width * height)
  for (let x = 0; x < width; x++) {
    let sum = 0
    for (let y = -reach; y < height; y++) {
      if (y + reach < height) sum += across[(y + reach) * width + x]!
      if (y - reach - 1 >= 0) sum -= across[(y - reach - 1) * width + x]!
      if (y >= 0) out[y * width + x] = sum
    }
  }
  return out
}

/** A mask grown (or, with the mask turned round, shrunk) by a square of `2·reach + 1` pixels. */
export function grown(mask: Uint8Array, width: number, height: number, reach: number): Uint8Array {
  const sums = boxSums((i) => mask[i]!, width, height, reach)
  return Uint8Array.from(sums, (sum) => (sum > 0.5 ? 1 : 0))
}

export const inverted = (mask: Uint8Array): Uint8Array => mask.map((value) => 1 - value)

export const shrunk = (mask: Uint8Array, width: number, height: number, reach: number): Uint8Array =>
  inverted(grown(inverted(mask), width, height, reach))
