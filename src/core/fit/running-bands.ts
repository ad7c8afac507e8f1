import { regionBox } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import type { Region } from '../geometry/polygon'
import type { Band } from '../patterns/columns'
import type { StripRecipe } from '../patterns/recipe'
import { spunInRun } from '../patterns/strips'
import { clearBand } from './clear-band'

/** What a running match asks of its leaves. */
export interface RunningDemand {
  /** Width of the taped sheet. */
  readonly width: number
  /** From the window's origin to the sheet's ends, along the grain. */
  readonly above: number
  readonly below: number
  /** Lost on each long edge. */
  readonly allowance: number
}

/** A leaf of the run: where it is sound, and how its window is shifted against the others. */
export interface RunningLeaf {
  readonly usable: Region<'leaf'>
  readonly shift: Point<'leaf'>
}

export interface RunningBands {
  readonly position: Point<'leaf'>
  /** In the frame of the window. */
  readonly bands: readonly Band[]
  /** Width of the sheet for which there is no wood. */
  readonly bare: number
}

/**
 * The bands of a running match with the window at a height along the leaf: every leaf is as wide as it goes, and in a
 * book match two neighbours are cut at the same line of the log along their seam, so that it stays a mirror. When no
 * height is given, the one is taken that needs the fewest leaves and among those leaves the widest last one.
 */
export function runningBands(
  recipe: StripRecipe,
  demand: RunningDemand,
  leaves: readonly RunningLeaf[],
  height: number | null,
): RunningBands | null {
  if (height !== null) return bandsAt(recipe, demand, leaves, height)
  let best: RunningBands | null = null
  for (const candidate of heights(demand, leaves)) {
    const found = bandsAt(recipe, demand, leaves, candidate)
    if (found && (!best || isBetter(found, best))) best = found
  }
  return best
}

const HEIGHTS = 41

/** Heights to try, spread over the part of the first leaf where the sheet's length could lie. */
function heights({ above, below }: RunningDemand, leaves: readonly RunningLeaf[]): readonly number[] {
  const first = leaves[0]
  if (!first || first.usable.length === 0) return []
  const { min, max } = regionBox(first.usable)
  const [low, high] = [min.y + above - first.shift.y, max.y - below - first.shift.y]
  if (high < low) return []
  return Array.from({ length: HEIGHTS }, (_, i) => low + ((high - low) * i) / (HEIGHTS - 1))
}

const isBetter = (p: RunningBands, q: RunningBands): boolean =>
  p.bare !== q.bare
    ? p.bare < q.bare
    : p.bands.length !== q.bands.length
      ? p.bands.length < q.bands.length
      : leastWidth(p.bands) > leastWidth(q.bands) + 0.01

const leastWidth = (bands: readonly Band[]): number => Math.min(...bands.map(({ low, high }) => high - low))

function bandsAt(
  recipe: StripRecipe,
  demand: RunningDemand,
  leaves: readonly RunningLeaf[],
  height: number,
): RunningBands | null {
  const clear = leaves.map(({ usable, shift }, i) => clearOf(usable, shift, demandOf(recipe, i, demand), height))
  const taken: Band[] = []
  let left = demand.width
  for (let i = 0; i < clear.length && left > 1e-6; i++) {
    const here = clear[i]
    if (!here) break
    const before = taken[i - 1]
    const seam = recipe.match === 'book' && before ? sharedLine(recipe, i, before) : null
    const alone = seam === null ? here : cutAt(here, sideOfSeam(recipe, i), seam)
    const next = clear[i + 1]
    const isLast = alone.high - alone.low >= left - 1e-6 || !next
    const band = isLast || recipe.match !== 'book' ? alone : meeting(alone, next, sideOfSeam(recipe, i + 1))
    if (band.high - band.low <= 0) break
    taken.push(isLast && alone.high - alone.low >= left ? lastOf(recipe, i, band, left) : band)
    left -= band.high - band.low
  }
  const first = taken[0]
  if (!first) return null
  const origin = (first.low + first.high) / 2
  return {
    position: point(origin, height),
    bands: taken.map(({ low, high }) => ({ low: low - origin, high: high - origin })),
    bare: Math.max(0, left),
  }
}

/** A spun leaf has its far end where the others have their numbered one, and what stands over there with it. */
function demandOf(recipe: StripRecipe, i: number, demand: RunningDemand): RunningDemand {
  const isSpun = recipe.match === 'reverse slip' && spunInRun(i)
  return isSpun ? { ...demand, above: demand.below, below: demand.above } : demand
}

/** The clear strip of a leaf in the frame that all leaves share, less what jointing takes. */
function clearOf(
  usable: Region<'leaf'>,
  shift: Point<'leaf'>,
  { above, below, allowance }: RunningDemand,
  height: number,
): Band | null {
  const band = clearBand(usable, height + shift.y - above, height + shift.y + below)
  if (!band) return null
  const [low, high] = [band.low - shift.x + allowance, band.high - shift.x - allowance]
  return high > low ? { low, high } : null
}

/** On which edge of the leaf lies its seam with the one before it. The first pair opens on the spine. */
const sideOfSeam = ({ spine }: StripRecipe, i: number): 'left' | 'right' =>
  (i % 2 === 1) === (spine === 'right') ? 'right' : 'left'

const sharedLine = (recipe: StripRecipe, i: number, before: Band): number =>
  sideOfSeam(recipe, i) === 'right' ? before.high : before.low

const cutAt = ({ low, high }: Band, side: 'left' | 'right', line: number): Band =>
  side === 'right' ? { low, high: line } : { low: line, high }

const meeting = (band: Band, next: Band, side: 'left' | 'right'): Band =>
  side === 'right'
    ? { low: band.low, high: Math.min(band.high, next.high) }
    : { low: Math.max(band.low, next.low), high: band.high }

/** The last leaf is cut off where the sheet ends: away from its seam, in a slip match away from the edge that meets. */
function lastOf(recipe: StripRecipe, i: number, { low, high }: Band, width: number): Band {
  if (recipe.match !== 'book') {
    const isReversed = (recipe.sideUp === 'other') !== (recipe.match === 'reverse slip' && spunInRun(i))
    const meetsLeft = (recipe.startAt === 'left') !== isReversed
    return meetsLeft ? { low, high: low + width } : { low: high - width, high }
  }
  const seamSide = i === 0 ? otherSide(sideOfSeam(recipe, 1)) : sideOfSeam(recipe, i)
  return seamSide === 'right' ? { low: high - width, high } : { low, high: low + width }
}

const otherSide = (side: 'left' | 'right') => (side === 'left' ? 'right' : 'left')
