import { solve } from '../photo/homography'

/** A weight below this no longer counts, and a spread is never taken as smaller than this, mm. */
const LEAST_SPREAD = 0.3

/**
 * What of a row of values grows evenly: a smooth curve through them that single values which jump do not bend. The curve is
 * a straight line for few values and bends once or twice for many; fitted by least squares, weighed again and again (Tukey's
 * biweight). `places` rise. The values of the curve at the places.
 */
export function evenGrowth(places: readonly number[], values: readonly number[]): readonly number[] {
  const [first, last] = [places[0] ?? 0, places.at(-1) ?? 0]
  const t = places.map((place) => (last > first ? (2 * (place - first)) / (last - first) - 1 : 0))
  const degree = degreeFor(places.length)
  let weights = values.map(() => 1)
  let curve = fitted(t, values, weights, degree)
  for (let round = 0; round < 12; round++) {
    const off = values.map((value, i) => Math.abs(value - curve[i]!))
    const spread = Math.max(LEAST_SPREAD, 1.4826 * middle(off))
    // first by plain distance, which no jump outweighs, then those that lie far off not at all
    weights = off.map((far) => (round < 5 ? 1 / Math.max(far, LEAST_SPREAD) : biweight(far / (4.685 * spread))))
    curve = fitted(t, values, weights, degree)
  }
  return curve
}

/** The number of bends that so many values can bear. */
const degreeFor = (count: number): number => (count < 2 ? 0 : count < 8 ? 1 : count < 14 ? 2 : 3)

const biweight = (far: number): number => (far < 1 ? (1 - far * far) ** 2 : 0)

function fitted(
  t: readonly number[],
  values: readonly number[],
  weights: readonly number[],
  degree: number,
): readonly number[] {
  const powers = t.map((at) => Array.from({ length: degree + 1 }, (_, p) => at ** p))
  const normal = Array.from({ length: degree + 1 }, (_, p) => [
    ...Array.from({ length: degree + 1 }, (_, q) => sum(powers, (row, i) => weights[i]! * row[p]! * row[q]!)),
    sum(powers, (row, i) => weights[i]! * row[p]! * values[i]!),
  ])
  const factors = solve(normal)
  return factors ? powers.map((row) => row.reduce((total, power, p) => total + power * factors[p]!, 0)) : [...values]
}

const sum = <T>(list: readonly T[], of: (one: T, i: number) => number): number =>
  list.reduce((total, one, i) => total + of(one, i), 0)

const middle = (values: readonly number[]): number =>
  [...values].sort((p, q) => p - q)[Math.floor(values.length / 2)] ?? 0
