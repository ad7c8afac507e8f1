import type { Point, Space } from '../geometry/point'
import type { Limits } from './limits'
import { LIMITS } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

/** What is wrong with a number, or null. */
export function numberTrouble(value: number, limits: Limits, place: string): MeaningTrouble | null {
  const least = limits.above ? value > limits.least : value >= limits.least
  // written so that what is not a number fails too
  const within = least && value <= limits.most && (!limits.whole || Number.isInteger(value))
  return within ? null : { trouble: 'out of limits', place, value, limits }
}

/** What is wrong with the first of some fields that is wrong, or null. */
export function fieldsTrouble<K extends string>(
  held: Readonly<Record<NoInfer<K>, number>>,
  limits: Readonly<Record<K, Limits>>,
  owners: readonly string[],
  within: readonly string[] = [],
): MeaningTrouble | null {
  for (const key of Object.keys(limits) as K[]) {
    const trouble = numberTrouble(held[key], limits[key], inPlace(owners, [...within, key]))
    if (trouble) return trouble
  }
  return null
}

export const pointTrouble = <S extends Space>(
  p: Point<S>,
  owners: readonly string[],
  within: readonly string[],
): MeaningTrouble | null => fieldsTrouble(p, { x: LIMITS.coordinate, y: LIMITS.coordinate }, owners, within)

/** The first of some things that is given twice, or null. */
export function repeated<T>(things: Iterable<T>): T | null {
  const seen = new Set<T>()
  for (const thing of things) {
    if (seen.has(thing)) return thing
    seen.add(thing)
  }
  return null
}
