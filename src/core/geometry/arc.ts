/**
 * Circles and arcs as polygons.
 *
 * Input: a radius above 0, angles in radians from +x towards +y. Output: rings running positively (clockwise as seen)
 * whose distance from the true curve is at most the chord error. Failure: none.
 */
import { point, type Point, type Space } from './point'
import type { Ring } from './polygon'
import { CHORD_ERROR } from './tolerance'

const FEWEST_SIDES = 8

/** A circle by a polygon whose corners lie on it. */
export function circleOn<S extends Space>(centre: Point<S>, radius: number): Ring<S> {
  const sides = sidesFor(2 * Math.acos(Math.max(0, 1 - CHORD_ERROR / radius)))
  return regularRing(centre, radius, sides)
}

/** A circle by a polygon whose sides touch it from outside: it holds the whole circle. */
export function circleOutside<S extends Space>(centre: Point<S>, radius: number): Ring<S> {
  const sides = sidesFor(2 * Math.acos(radius / (radius + CHORD_ERROR)))
  return regularRing(centre, radius / Math.cos(Math.PI / sides), sides)
}

/** An arc from one angle to another (the larger: clockwise as seen), both ends counted in, corners on the arc. */
export function arcPoints<S extends Space>(centre: Point<S>, radius: number, from: number, to: number): Point<S>[] {
  const widest = 2 * Math.acos(Math.max(0, 1 - CHORD_ERROR / radius))
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / widest))
  return Array.from({ length: steps + 1 }, (_, i) => atAngle(centre, radius, from + ((to - from) * i) / steps))
}

// a multiple of four, so that the polygon is as wide and as high as the circle and looks the same from all sides
const sidesFor = (widestAngle: number): number => Math.max(FEWEST_SIDES, 4 * Math.ceil((2 * Math.PI) / widestAngle / 4))

const regularRing = <S extends Space>(centre: Point<S>, radius: number, sides: number): Ring<S> =>
  Array.from({ length: sides }, (_, i) => atAngle(centre, radius, ((2 * i + 1) * Math.PI) / sides))

const atAngle = <S extends Space>(centre: Point<S>, radius: number, angle: number): Point<S> =>
  point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle))
