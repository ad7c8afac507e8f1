import type { GreyPicture } from './grey'

/** How far the mean that is taken off reaches, mm: along, and across the grain, which changes faster. */
const SLOW = { along: 90, across: 24 }

/** Pixels over which the finest grain is smoothed. */
const FINE = 3

/**
 * What of a figure can be recognised on the next leaf: slow changes of colour and light are taken off, the finest grain,
 * which is another one on each leaf, is smoothed. Only known pixels count; elsewhere the values are 0.
 */
export function bandPassed(picture: GreyPicture, fine = FINE): GreyPicture {
  const { width, height, pxPerMm, values, known } = picture
  const [across, along] = [SLOW.across, SLOW.along].map((mm) => Math.max(1, Math.round((mm * pxPerMm) / 2)))
  const slow = localMeans(picture, across!, along!)
  const quick = new Float32Array(width * height)
  for (let i = 0; i < quick.length; i++) if (known[i]) quick[i] = values[i]! - slow[i]!
  const half = Math.floor(fine / 2)
  return { ...picture, values: half > 0 ? localMeans({ ...picture, values: quick }, half, half) : quick }
}

/** For each known pixel the mean of the known ones in a box about it, by running sums. */
function localMeans(
  { width, height, values, known }: GreyPicture,
  halfAcross: number,
  halfAlong: number,
): Float32Array {
  const [sums, counts] = [summed(values, width, height), summed(known, width, height)]
  const means = new Float32Array(width * height)
  const stride = width + 1
  for (let j = 0; j < height; j++) {
    const top = Math.max(0, j - halfAlong) * stride
    const bottom = Math.min(height, j + halfAlong + 1) * stride
    for (let i = 0; i < width; i++) {
      if (known[j * width + i] === 0) continue
      const left = Math.max(0, i - halfAcross)
      const right = Math.min(width, i + halfAcross + 1)
      const count = counts[bottom + right]! - counts[bottom + left]! - counts[top + right]! + counts[top + left]!
      const sum = sums[bottom + right]! - sums[bottom + left]! - sums[top + right]! + sums[top + left]!
      means[j * width + i] = sum / count
    }
  }
  return means
}

/** Sums of everything above and left of each corner; one row and column more than the picture. Unknown values are 0. */
function summed(values: ArrayLike<number>, width: number, height: number): Float64Array {
  const stride = width + 1
  const sums = new Float64Array(stride * (height + 1))
  for (let j = 0; j < height; j++) {
    let row = 0
    for (let i = 0; i < width; i++) {
      row += values[j * width + i]!
      sums[(j + 1) * stride + i + 1] = sums[j * stride + i + 1]! + row
    }
  }
  return sums
}
