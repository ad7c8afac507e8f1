import type { Plane } from '../box-sums'
import type { Pixels } from '../log/leaf-pixels'

/**
 * Lightness and two differences of colour, in logarithms: a shadow, which takes the same share of all three, is a shift
 * of the first alone. Scaled by 100.
 */
export function logOpponent({ rgba }: Pixels): readonly [Plane, Plane, Plane] {
  const count = rgba.length / 4
  const [light, warm, green] = [new Float32Array(count), new Float32Array(count), new Float32Array(count)]
  const logs = logTable()
  for (let i = 0, at = 0; i < count; i++, at += 4) {
    const r = logs[rgba[at]!]!
    const g = logs[rgba[at + 1]!]!
    const b = logs[rgba[at + 2]!]!
    light[i] = (r + g + b) / 3
    warm[i] = r - b
    green[i] = g - (r + b) / 2
  }
  return [light, warm, green]
}

/** The lightness alone. */
export function logLightness({ rgba }: Pixels): Plane {
  const light = new Float32Array(rgba.length / 4)
  const logs = logTable()
  for (let i = 0, at = 0; i < light.length; i++, at += 4)
    light[i] = (logs[rgba[at]!]! + logs[rgba[at + 1]!]! + logs[rgba[at + 2]!]!) / 3
  return light
}

function logTable(): Float32Array {
  return Float32Array.from({ length: 256 }, (_, v) => 100 * Math.log(v + 8))
}

/** A mask grown (or, with the mask turned round, shrunk) by a square of `2·reach + 1` pixels. */
export const grown = (mask: Uint8Array, width: number, height: number, reach: number): Uint8Array =>
  spread(mask, width, height, reach, 1)

export const shrunk = (mask: Uint8Array, width: number, height: number, reach: number): Uint8Array =>
  spread(mask, width, height, reach, 0)

export function inverted(mask: Uint8Array): Uint8Array {
  const out = new Uint8Array(mask.length)
  for (let i = 0; i < out.length; i++) out[i] = mask[i] ? 0 : 1
  return out
}

/** Of masks of one size, what lies in both. */
export function overlap(a: Uint8Array, b: Uint8Array): Uint8Array {
  const out = new Uint8Array(a.length)
  for (let i = 0; i < out.length; i++) out[i] = a[i]! & b[i]!
  return out
}

export function countOf(mask: Uint8Array): number {
  let count = 0
  for (let i = 0; i < mask.length; i++) count += mask[i]!
  return count
}

/** A mask whose pixels of one value (1 or 0) spread by `reach` to all sides, first along rows, then along columns. */
function spread(mask: Uint8Array, width: number, height: number, reach: number, value: 0 | 1): Uint8Array {
  const rows = new Uint8Array(mask.length).fill(1 - value)
  for (let y = 0; y < height; y++) {
    // pixels up to here are written already
    let done = y * width
    const end = done + width
    for (let at = y * width; at < end; at++) {
      if (mask[at] !== value) continue
      const to = Math.min(at + reach + 1, end)
      for (let i = Math.max(done, at - reach, y * width); i < to; i++) rows[i] = value
      done = to
    }
  }
  return spreadDown(rows, width, height, reach, value)
}

function spreadDown(rows: Uint8Array, width: number, height: number, reach: number, value: 0 | 1): Uint8Array {
  const out = new Uint8Array(rows.length).fill(1 - value)
  // how many rows within reach of this one have the value, column by column
  const near = new Uint16Array(width)
  for (let y = -reach; y < height; y++) {
    if (y + reach < height)
      for (let x = 0, at = (y + reach) * width; x < width; x++, at++) if (rows[at] === value) near[x]!++
    if (y > reach)
      for (let x = 0, at = (y - reach - 1) * width; x < width; x++, at++) if (rows[at] === value) near[x]!--
    if (y >= 0) for (let x = 0, at = y * width; x < width; x++, at++) if (near[x]! > 0) out[at] = value
  }
  return out
}
