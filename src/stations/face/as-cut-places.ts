import type { DerivedPart } from '../../core/derive'
import type { SheetMeasures } from '../../core/seams/as-cut'
import type { Shop } from '../../core/shop'

/** One place where the taped sheet is measured, with what it would be as planned. */
export interface MeasurePlace {
  readonly name: string
  readonly label: string
  readonly planned: number
}

/** Whether a seam was meant for the centre: off it, there is no centre seam to lay by. */
export const hasSeamOnCentre = (off: number | null, { offCentre }: Shop): boolean =>
  off !== null && Math.abs(off) <= offCentre

/** Faces laid by a centre seam. A sunburst is laid by where its seams cross, once it is pressed. */
export const isLaidBySeam = ({ part, centre }: DerivedPart, shop: Shop): boolean =>
  part.recipe.pattern !== 'radial' && hasSeamOnCentre(centre.x, shop)

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
