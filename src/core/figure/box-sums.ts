/** Some numbers a pixel, one plane each. */
export type Plane = Float32Array

/** How far a box reaches from its middle pixel to either side: it is `2·reach + 1` pixels wide and high. */
export interface BoxReach {
  readonly across: number
  readonly along: number
}

export const square = (reach: number): BoxReach => ({ across: reach, along: reach })

/**
 * Room for means over boxes in pictures of one size, to be used again and again: what is taken anew each time lies about
 * until it is collected, and grows to several times what is in use.
 */
export interface MeansRoom {
  readonly across: Float64Array
  readonly counts: Plane
  readonly through: Plane
  /** Where the means come to lie, one plane for each that is asked for. */
  readonly means: readonly Plane[]
}

export const meansRoom = (planes: number, pixels: number): MeansRoom => ({
  across: new Float64Array(pixels),
  counts: new Float32Array(pixels),
  through: new Float32Array(pixels),
  means: blankPlanes(planes, pixels),
})

export const blankPlanes = (count: number, pixels: number): readonly Plane[] =>
  Array.from({ length: count }, () => new Float32Array(pixels))

/** Means over boxes of what `weight` (1 or 0) lets through; where nothing is let through, NaN. They lie in the room given. */
export function weightedMeans(
  planes: readonly Plane[],
  weight: Uint8Array,
  width: number,
  height: number,
  reach: BoxReach,
  { across, counts, through, means }: MeansRoom = meansRoom(planes.length, width * height),
): readonly Plane[] {
  boxSums(weight, width, height, reach, across, counts)
  return planes.map((plane, i) => {
    letThrough(plane, weight, through)
    return divided(boxSums(through, width, height, reach, across, means[i]), counts)
  })
}

function letThrough(plane: Plane, weight: Uint8Array, into: Plane): void {
  for (let i = 0; i < into.length; i++) into[i] = weight[i] ? plane[i]! : 0
}

function divided(sums: Plane, counts: Plane): Plane {
  for (let i = 0; i < sums.length; i++) sums[i] = counts[i]! > 0 ? sums[i]! / counts[i]! : NaN
  return sums
}

/** Sums over boxes, cut off at the border, written to `out`. `across` is room to work in, of one number a pixel. */
function boxSums(
  values: Plane | Uint8Array,
  width: number,
  height: number,
  reach: BoxReach,
  across: Float64Array,
  out: Plane = new Float32Array(width * height),
): Plane {
  for (let y = 0; y < height; y++) sumRow(values, y * width, width, reach.across, across)
  return columnSums(across, width, height, reach.along, out)
}

/** Running sums along one row. */
function sumRow(values: Plane | Uint8Array, row: number, width: number, reach: number, across: Float64Array): void {
  let sum = 0
  for (let x = 0; x < Math.min(reach, width); x++) sum += values[row + x]!
  for (let x = 0; x < width; x++) {
    if (x + reach < width) sum += values[row + x + reach]!
    if (x > reach) sum -= values[row + x - reach - 1]!
    across[row + x] = sum
  }
}

/** Running sums down all columns at once, so that memory is read in the order in which it lies. */
function columnSums(across: Float64Array, width: number, height: number, reach: number, out: Plane): Plane {
  const sums = new Float64Array(width)
  for (let y = 0; y < Math.min(reach, height); y++) for (let x = 0; x < width; x++) sums[x]! += across[y * width + x]!
  for (let y = 0; y < height; y++) {
    const row = y * width
    if (y + reach < height) for (let x = 0, at = row + reach * width; x < width; x++, at++) sums[x]! += across[at]!
    if (y > reach) for (let x = 0, at = row - (reach + 1) * width; x < width; x++, at++) sums[x]! -= across[at]!
    for (let x = 0; x < width; x++) out[row + x] = sums[x]!
  }
  return out
}
