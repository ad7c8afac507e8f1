/**
 * What the grain does at a seam, whatever the figure does.
 *
 * A seam at angle f sends grain at angle a to 2f − a. Input: the seam and the placements on its two sides. Output: by how
 * many degrees the grain on one side misses the mirror of the other, 0 to 90; grain has no direction. The grain law is
 * needed for a mirror of the figure, but it is not enough. Failure: none.
 */
import type { Edge } from '../geometry/polygon'
import type { Transform } from '../geometry/transform'

export function grainMiss(
  { a, b }: Edge<'panel'>,
  left: Transform<'leaf', 'panel'>,
  right: Transform<'leaf', 'panel'>,
): number {
  const seam = Math.atan2(b.y - a.y, b.x - a.x)
  const off = 2 * seam - grainAngle(left) - grainAngle(right)
  // grain has no direction: half a turn is none
  return (Math.abs(Math.atan2(Math.sin(2 * off), Math.cos(2 * off)) / 2) * 180) / Math.PI
}

const grainAngle = ({ c, d }: Transform<'leaf', 'panel'>): number => Math.atan2(d, c)

/** Grain that misses by less is laid as it should be; degrees. */
export const GRAIN_MEETS = 0.01

/** How far from the middle of a side the grain of a diamond arrives that starts at the middle of the next one. */
export interface DiamondMiss {
  readonly by: number
  /** Where it arrives: on a side, or on an end. */
  readonly on: 'side' | 'end'
}

/** By the angle between grain and width, degrees. Source: the slope of a straight line across a quarter of the panel. */
export function diamondMiss(size: { readonly width: number; readonly length: number }, angle: number): DiamondMiss {
  const [across, along] = [size.width / 2, size.length / 2]
  const slope = Math.tan((angle * Math.PI) / 180)
  const fall = across * slope
  return fall <= along ? { by: along - fall, on: 'side' } : { by: across - along / slope, on: 'end' }
}
