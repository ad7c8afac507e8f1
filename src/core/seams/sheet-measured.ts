/**
 * A taped sheet as it was measured on the bench, and what follows for laying it.
 *
 * Input: a judged face, with what was measured kept in its part; what was not is taken to be as planned. Output: the
 * places to measure, and the answer of `centreAsCut`. Failure: null where no seam lies on the centre.
 */
import type { ThreeSizes } from '../faces/face'
import { GRID } from '../geometry/tolerance'
import type { MeasuredAt, Part } from '../job/job'
import type { Shop } from '../shop'
import { centreAsCut, plannedMeasures, type AsCut, type SheetMeasures } from './as-cut'
import type { SeamReport } from './seam-report'

/** What of a face decides by which seams its sheet is laid. */
export interface SeamedFace {
  readonly part: Part
  readonly seams: readonly SeamReport[]
  readonly sizes: ThreeSizes
}

/** One place where the taped sheet is measured, with what it would be as planned. */
export interface MeasurePlace {
  readonly at: MeasuredAt
  readonly label: string
  readonly planned: number
  /** As planned where nobody has measured. */
  readonly length: number
}

/** The seams that a sheet can be laid by: on the centre, and running from edge to edge so that they can be measured. */
export interface CentreSeams {
  readonly upright: boolean
  readonly level: boolean
}

/** None for a sunburst: it is laid by where its seams cross, once it is pressed. */
export function centreSeams({ part, seams, sizes }: SeamedFace, { offCentre }: Shop): CentreSeams {
  if (part.recipe.pattern === 'radial') return { upright: false, level: false }
  const { min, max } = sizes.sheet
  const runs = (along: 'x' | 'y', off: 'x' | 'y') =>
    seams.some(({ edge: { a, b } }) => {
      const isOnCentre = Math.abs(a[off]) <= offCentre && Math.abs(a[off] - b[off]) < GRID
      return isOnCentre && a[along] <= min[along] + GRID && b[along] >= max[along] - GRID
    })
  return { upright: runs('y', 'x'), level: runs('x', 'y') }
}

/** How a sheet is to be laid, and from which measures that follows. */
export interface SheetAnswer {
  readonly places: readonly MeasurePlace[]
  readonly hasCross: boolean
  readonly answer: AsCut
}

/** Lays the sheet of a face as it was measured; null where it has no seam on its centre to be laid by. */
export function answerAsCut(face: SeamedFace, shop: Shop): SheetAnswer | null {
  const { upright, level: hasCross } = centreSeams(face, shop)
  if (!upright) return null
  const { sizes, part } = face
  const measured = sheetMeasures(part.asCut, plannedMeasures(sizes, hasCross))
  return {
    places: measurePlaces(part.asCut, plannedMeasures(sizes, hasCross)),
    hasCross,
    answer: centreAsCut(measured, sizes, shop.leastOverhang),
  }
}

/** The measures as planned, with those taken on the sheet in their place. */
function sheetMeasures(taken: Part['asCut'], { across, along }: SheetMeasures): SheetMeasures {
  const end = (at: 'top' | 'bottom') => ({
    left: taken[`${at} left`] ?? across[at].left,
    right: taken[`${at} right`] ?? across[at].right,
  })
  const side = (at: 'left' | 'right', planned: { readonly above: number; readonly below: number }) => ({
    above: taken[`${at} above`] ?? planned.above,
    below: taken[`${at} below`] ?? planned.below,
  })
  return {
    across: { top: end('top'), bottom: end('bottom') },
    along: along && { left: side('left', along.left), right: side('right', along.right) },
  }
}

/** Where a sheet is measured: at both ends, and with a cross seam at both sides too. */
export function measurePlaces(taken: Part['asCut'], { across, along }: SheetMeasures): readonly MeasurePlace[] {
  const place = (at: MeasuredAt, label: string, planned: number): MeasurePlace => ({
    at,
    label,
    planned,
    length: taken[at] ?? planned,
  })
  const ends = (['top', 'bottom'] as const).flatMap((end) =>
    (['left', 'right'] as const).map((side) =>
      place(`${end} ${side}`, `${end === 'top' ? 'Top' : 'Bottom'} end, ${side} of the seam`, across[end][side]),
    ),
  )
  if (!along) return ends
  const sides = (['left', 'right'] as const).flatMap((side) =>
    (['above', 'below'] as const).map((way) =>
      place(`${side} ${way}`, `${side === 'left' ? 'Left' : 'Right'} side, ${way} the cross seam`, along[side][way]),
    ),
  )
  return [...ends, ...sides]
}
