import { DEMO_LOG } from '../../src/core/figure/demo-flitch'
import { greyOf, type GreyPicture } from '../../src/core/figure/align/grey'
import { leafPixels } from '../../src/core/figure/log/leaf-pixels'
import { makeLog, type Log } from '../../src/core/figure/log/log'
import type { Slicing } from '../../src/core/figure/log/slicing'
import type { SpeciesName } from '../../src/core/figure/log/species'
import { point } from '../../src/core/geometry/point'

const quarter: Slicing = { cut: 'quarter', firstDepth: 12, innerEdge: 20 }
const cuts: Readonly<Record<SpeciesName, Slicing>> = {
  walnut: DEMO_LOG.slicing,
  maple: DEMO_LOG.slicing,
  oak: quarter,
  sapele: quarter,
}

export const SPECIES_TRIED: readonly SpeciesName[] = ['walnut', 'maple', 'oak', 'sapele']

/** A log of the species without a fault, as the species is usually cut. */
export const logOf = (species: SpeciesName, seed: number): Log =>
  makeLog({ ...DEMO_LOG, seed, species, slicing: cuts[species], knots: [], splits: [] })

/** A leaf that lies `dx`, `dy` off the frame which all leaves share. */
export function leafLying(
  log: Log,
  leaf: number,
  { dx, dy }: { readonly dx: number; readonly dy: number },
  { length, pxPerMm, from = 500 }: { readonly length: number; readonly pxPerMm: number; readonly from?: number },
): GreyPicture {
  const min = point<'leaf'>(6 - dx, from - dy)
  const box = { min, max: point<'leaf'>(min.x + Math.min(log.width - 12, 260), min.y + length) }
  return greyOf(leafPixels(log, leaf, { pxPerMm, box }), pxPerMm, point(0, 0))
}

/** The strip beside a cut at `x`, from the side of higher x; `y` is where it begins along the leaf. */
export function stripOf(log: Log, leaf: number, y: number, length: number, face: 'numbered' | 'other'): GreyPicture {
  const x = Math.round(log.width * 0.6)
  const box = { min: point<'leaf'>(x, y), max: point<'leaf'>(x + 16, y + length) }
  return greyOf(leafPixels(log, leaf, { pxPerMm: 1, box, face }), 1, point(0, 0))
}
