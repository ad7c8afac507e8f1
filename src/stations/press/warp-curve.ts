import type { SeasonWarp, Warp } from '../../core/press/warp'
import { showWarp } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'

/** The two directions over which a panel bows. */
export type Over = 'acrossWidth' | 'alongLength'

/** Half the height of the little drawing, in its own units, and its width. */
export const CURVE = { width: 300, half: 46 }

/** A bow of so many mm fills the drawing; smaller ones stay as small beside it, larger ones are fitted in. */
const FILLS = 2

/** Units of the drawing for a mm, the same for both seasons and directions. */
export function bowScale(warps: readonly Warp[]): number {
  const worst = Math.max(FILLS, ...warps.flatMap((warp) => [Math.abs(warp.acrossWidth), Math.abs(warp.alongLength)]))
  return (CURVE.half - 8) / worst
}

/** The bowed line as the path of an SVG, its ends on the straightedge: hollow on the show face hangs down. */
export function bowPath(bow: number, scale: number): string {
  const { width, half } = CURVE
  // the curve reaches half as deep as its handle
  return `M 0 ${half} Q ${width / 2} ${(half + 2 * bow * scale).toFixed(2)} ${width} ${half}`
}

/** A bow in a few words: `about ½ mm at most, hollow on the show face`. */
export function bowWords(bow: number, unit: LengthUnit): string {
  return bow === 0 ? 'flat' : `${showWarp(bow, unit)}, ${bow > 0 ? 'hollow' : 'round'} on the show face`
}

/** The worst that any season does, in a few words for the foot of a fold. */
export function worstWords(seasons: readonly SeasonWarp[], unit: LengthUnit): string {
  const bows = seasons.flatMap(({ warp }) => Object.values(warp) as number[])
  const worst = bows.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0)
  return worst === 0 ? 'flat all year' : `bows ${showWarp(worst, unit)}`
}
