/** Some numbers a pixel, one plane each. */
export type Plane = Float32Array

/** How far a box reaches from its middle pixel to either side: it is `2·reach + 1` pixels wide and high. */
export interface BoxReach {
  readonly across: number
  readonly along: number
}

export const square = (reach: number): BoxReach => ({ across: reach, along: reach })

/** Means over boxes of what `weight` (1 or 0) lets through; where nothing is let through, NaN. */
export function weightedMeans(
  planes: readonly Plane[],
  weight: Uint8Array,
  width: number,
  height: number,
  reach: BoxReach,
): readonly Plane[] {
  const counts = boxSums((i) => weight[i]!, width, height, reach)
  return planes.map((plane) => {
    const sums = boxSums((i) => (weight[i] ? plane[i]! : 0), width, height, reach)
    for (let i = 0; i < sums.length; i++) sums[i] = counts[i]! > 0 ? sums[i]! / counts[i]! : NaN
    return sums
  })
}

/** Sums over boxes, cut off at the border. */
export function boxSums(value: (i: number) => number, width: number, height: number, reach: BoxReach): Plane {
  const across = new Float64Array(width * height)
  for (let y = 0; y < height; y++) {
    let sum = 0
    const row = y * width
    for (let x = -reach.across; x < width; x++) {
      if (x + reach.across < width) sum += value(row + x + reach.across)
      if (x - reach.across - 1 >= 0) sum -= value(row + x - reach.across - 1)
      if (x >= 0) across[row + x] = sum
    }
  }
  const out = new Float32Array(width * height)
  for (let x = 0; x < width; x++) {
    let sum = 0
    for (let y = -reach.along; y < height; y++) {
      if (y + reach.along < height) sum += across[(y + reach.along) * width + x]!
      if (y - reach.along - 1 >= 0) sum -= across[(y - reach.along - 1) * width + x]!
      if (y >= 0) out[y * width + x] = sum
    }
  }
  return out
}
