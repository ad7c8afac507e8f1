import { showWarp } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { layerName } from './layer-words'
import type { Layer, PressRoom } from './pressing'
import { facedOnce, facedTwice, thickestOf, warpOverYear, worstBow, type PanelSize, type SeasonWarp } from './warp'

/** Stands once under any bow that is told. */
export const UPPER_BOUND = 'Wood gives way with time, so it will be less than this.'

/** What a season does. */
export function warpSentences(
  season: 'driest' | 'dampest',
  found: SeasonWarp,
  layers: readonly Layer[],
  unit: LengthUnit,
): string[] {
  const { warp, driver } = found
  const when = `In the ${season} season (wood at ${found.moisture.toFixed(1)} %)`
  if (worstBow([warp]) === 0) return [`${when} the panel stays flat.`]
  const side = (bow: number): string => `${bow > 0 ? 'hollow' : 'round'} on the show face`
  const parts = [
    warp.acrossWidth !== 0 && `${showWarp(warp.acrossWidth, unit)} over its width, ${side(warp.acrossWidth)}`,
    warp.alongLength !== 0 && `${showWarp(warp.alongLength, unit)} over its length, ${side(warp.alongLength)}`,
    warp.twist !== 0 && `one corner ${showWarp(warp.twist, unit)} out of the plane of the other three`,
  ].filter((part) => part !== false)
  return [`${when} it may bow: ${parts.join('; ')}.`, ...(driver === null ? [] : [driverSentence(layers, driver)])]
}

function driverSentence(layers: readonly Layer[], driver: number): string {
  const core = thickestOf(layers)
  if (driver === core) return `Most of it comes from ${layerName(layers, core)} itself.`
  return `Most of it comes from ${layerName(layers, driver)}, which moves otherwise than ${layerName(layers, core)}.`
}

/** One face against two. */
export function backerSentence(
  layers: readonly Layer[],
  size: PanelSize,
  room: Pick<PressRoom, 'gluing' | 'driest' | 'dampest'>,
  unit: LengthUnit,
): string {
  const bow = (build: readonly Layer[]): string => {
    const { driest, dampest } = warpOverYear(build, size, room)
    const worst = worstBow([driest.warp, dampest.warp])
    return worst === 0 ? 'no bow' : showWarp(worst, unit)
  }
  return `Faced on one side only: ${bow(facedOnce(layers))}; with the same on the back: ${bow(facedTwice(layers))}.`
}
