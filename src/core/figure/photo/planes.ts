import { boxSums, square, type Plane } from '../box-sums'
import type { Pixels } from '../log/leaf-pixels'

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

/** A mask grown (or, with the mask turned round, shrunk) by a square of `2·reach + 1` pixels. */
export function grown(mask: Uint8Array, width: number, height: number, reach: number): Uint8Array {
  const sums = boxSums((i) => mask[i]!, width, height, square(reach))
  return Uint8Array.from(sums, (sum) => (sum > 0.5 ? 1 : 0))
}

export const inverted = (mask: Uint8Array): Uint8Array => mask.map((value) => 1 - value)

export const shrunk = (mask: Uint8Array, width: number, height: number, reach: number): Uint8Array =>
  inverted(grown(inverted(mask), width, height, reach))
