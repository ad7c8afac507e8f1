import { square, weightedMeans, type BoxReach } from '../box-sums'
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
  const { pxPerMm, values } = picture
  const half = (mm: number) => Math.max(1, Math.round((mm * pxPerMm) / 2))
  const slow = localMeans(picture, { across: half(SLOW.across), along: half(SLOW.along) })
  const quick = values.map((value, i) => value - slow[i]!)
  const smooth = Math.floor(fine / 2)
  return { ...picture, values: smooth > 0 ? localMeans({ ...picture, values: quick }, square(smooth)) : quick }
}

/** For each known pixel the mean of the known ones in a box about it; 0 elsewhere. */
function localMeans({ width, height, values, known }: GreyPicture, reach: BoxReach): Float32Array {
  const means = weightedMeans([values], known, width, height, reach)[0]!
  return means.map((mean, i) => (known[i] ? mean : 0))
}
