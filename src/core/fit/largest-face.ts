import type { Part } from '../job/job'
import type { PartFlitches } from '../job/part-flitches'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { wouldHavePlace } from './lay-face'

/** Finished, mm. */
export interface FaceSize {
  readonly width: number
  readonly length: number
}

/** Sizes are told apart to this many millimetres of the longer side. */
const PRECISION = 1

/**
 * The largest face of the part's shape, width to length as they are, that the leaves give with recipe and overhang as
 * they are: found by halving, so a still larger one that fits where a smaller does not would be missed. Rounded down
 * to whole millimetres; null where none fits.
 */
export function largestFace(part: Part, flitches: PartFlitches, shop: Shop, answers: Answers): FaceSize | null {
  const longer = Math.max(part.width, part.length)
  const sized = (size: number): Part => ({
    ...part,
    positions: {},
    width: (part.width * size) / longer,
    length: (part.length * size) / longer,
  })
  const fits = (size: number) => wouldHavePlace(sized(size), flitches, shop, answers)
  let [works, fails] = fits(longer) ? [longer, longer * 2] : [0, longer]
  while (works > 0 && works < MOST && fits(fails)) [works, fails] = [fails, fails * 2]
  while (fails - works > PRECISION) {
    const middle = (works + fails) / 2
    if (fits(middle)) works = middle
    else fails = middle
  }
  const size = Math.floor(works)
  if (size < LEAST) return null
  const { width, length } = sized(size)
  return { width: Math.floor(width + 1e-6), length: Math.floor(length + 1e-6) }
}

const LEAST = 20
const MOST = 10_000
