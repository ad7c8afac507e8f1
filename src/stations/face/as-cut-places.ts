import type { DerivedPart } from '../../core/derive'
import { GRID } from '../../core/geometry/tolerance'
import type { SheetMeasures } from '../../core/seams/as-cut'
import type { Shop } from '../../core/shop'

/** One place where the taped sheet is measured, with what it would be as planned. */
export interface MeasurePlace {
  readonly name: string
  readonly label: string
  readonly planned: number
}

/** The seams that a sheet can be laid by: on the centre, and running from edge to edge so that they can be measured. */
export interface CentreSeams {
  readonly upright: boolean
  readonly level: boolean
}

/** None for a sunburst: it is laid by where its seams cross, once it is pressed. */
export function centreSeams({ part, seams, sizes }: DerivedPart, { offCentre }: Shop): CentreSeams {
  if (part.recipe.pattern === 'radial') return { upright: false, level: false }
  const { min, max } = sizes.sheet
  const runs = (along: 'x' | 'y', off: 'x' | 'y') =>
    seams.some(({ edge: { a, b } }) => {
      const isOnCentre = Math.abs(a[off]) <= offCentre && Math.abs(a[off] - b[off]) < GRID
      return isOnCentre && a[along] <= min[along] + GRID && b[along] >= max[along] - GRID
    })
  return { upright: runs('y', 'x'), level: runs('x', 'y') }
}

export function measurePlaces({ across, along }: SheetMeasures): readonly MeasurePlace[] {
  const ends = (['top', 'bottom'] as const).flatMap((end) =>
    (['left', 'right'] as const).map((side) => ({
      name: `${end} ${side}`,
      label: `${end === 'top' ? 'Top' : 'Bottom'} end, ${side} of the seam`,
      planned: across[end][side],
    })),
  )
  if (!along) return ends
  const sides = (['left', 'right'] as const).flatMap((side) =>
    (['above', 'below'] as const).map((way) => ({
      name: `${side} ${way}`,
      label: `${side === 'left' ? 'Left' : 'Right'} side, ${way} the cross seam`,
      planned: along[side][way],
    })),
  )
  return [...ends, ...sides]
}
