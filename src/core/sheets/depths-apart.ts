import type { SeamReport } from '../seams/seam-report'
import { bareLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/**
 * How far apart in the log the faces lie that meet along a seam, without the unit: where that differs along it, both
 * numbers from its start on, or the least and the most. A dash where it is not known.
 */
export function depthsApart(sides: SeamReport['sides'], unit: LengthUnit): string {
  const depths = sides.map(({ depthOffset }) => depthOffset)
  if (depths.length === 0 || depths.some((depth) => depth === null)) return '–'
  const deep = (by: number) => bareLength(by, unit, 'depth')
  const told = [...new Set(depths.map((depth) => deep(depth!)))]
  if (told.length < 3) return told.join(' and ')
  return [Math.min, Math.max].map((of) => deep(of(...depths.map((depth) => depth!)))).join(' to ')
}
