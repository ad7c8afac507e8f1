import type { Cut } from '../leaves/flitch'
import { boardFigures } from './boards'
import type { Climate, Layer } from './pressing'
import { memory } from './provenance'
import { acrossFigure, findWood, type Wood } from './woods'

/**
 * The moisture, %, that wood comes to in air of this temperature and humidity, by the two-hydrate formula of Hailwood
 * and Horrobin as fitted in the Wood Handbook, chapter 4 (FPL-RN-0268). Humidity is held to 0–1.
 */
export function woodMoisture({ temperature: t, humidity }: Climate): number {
  const w = 349 + 1.29 * t + 0.0135 * t * t
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t
  const kh = k * Math.min(1, Math.max(0, humidity))
  const second = k1 * kh + 2 * k1 * k2 * kh * kh
  return (1800 / w) * (kh / (1 - kh) + second / (1 + k1 * kh + k1 * k2 * kh * kh))
}

/** Fibre saturation, %: above it wood does not move. */
export const FIBRE_SATURATION = 30

/** Change per 1 % of moisture about 10 %, from the shrinkage green to ovendry in %; Wood Handbook, chapter 13. */
export const coefficientFromShrinkage = (shrinkage: number): number => 1 / (3000 / shrinkage - 20)

/** Lengthwise: 0.1–0.2 % from green to ovendry in normal wood, from memory; the middle, per 1 %. */
export const LENGTHWISE = memory(0.0015 / FIBRE_SATURATION)

/** A hardwood of which nothing is known moves like this, %, green to ovendry: about the middle of the table. */
export const AVERAGE_SHRINKAGE = { radial: memory(4.8), tangential: memory(8.2) }

/** Change across the grain per 1 % of moisture, by the cut; null stands for a wood that is not in the table. */
export function acrossCoefficient(wood: Wood | null, cut: Cut): number {
  const { shrinkage, coefficient } = wood ?? { shrinkage: AVERAGE_SHRINKAGE, coefficient: null }
  const of = (direction: 'radial' | 'tangential'): number =>
    coefficient ? coefficient[direction].value : coefficientFromShrinkage(shrinkage[direction].value)
  return acrossFigure(cut, of('radial'), of('tangential'))
}

/** Free change along and across a layer's grain per 1 % of the wood's moisture. */
export function layerMovement(layer: Exclude<Layer, { kind: 'glue line' }>): { along: number; across: number } {
  if (layer.kind === 'board') {
    const { value } = boardFigures(layer.board).movement
    return { along: value, across: value }
  }
  return { along: LENGTHWISE.value, across: acrossCoefficient(findWood(layer.species), layer.cut) }
}

/** How much a width changes: positive when it grows. Holds between 6 and 14 %. */
export const movement = (width: number, coefficient: number, from: number, to: number): number =>
  width * coefficient * (to - from)

/** The same from the shrinkage table; good from the ovendry state to fibre saturation. */
export function movementByShrinkage(width: number, shrinkage: number, from: number, to: number): number {
  const capped = Math.min(to, FIBRE_SATURATION)
  return (width * (capped - from)) / (3000 / shrinkage - FIBRE_SATURATION + from)
}
