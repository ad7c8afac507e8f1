import { boxCentre, regionBox } from '../geometry/box'
import { nearestInside } from '../geometry/pole'
import { point, type Point } from '../geometry/point'
import type { LaidFace } from './lay-face'

/** Places for the window at the ends and the sides of its play, and level with the middle of the flitch's leaves. */
export function positionsToTry({ play, position, flitch }: LaidFace): readonly Point<'leaf'>[] {
  if (play.region.length === 0) return []
  const { min, max } = regionBox(play.region)
  const middle = boxCentre(regionBox([[flitch.outline]]))
  const wished = [
    point<'leaf'>(position.x, min.y),
    point<'leaf'>(position.x, max.y),
    point<'leaf'>(min.x, position.y),
    point<'leaf'>(max.x, position.y),
    point<'leaf'>(middle.x, position.y),
    point<'leaf'>(middle.x, min.y),
    point<'leaf'>(middle.x, max.y),
  ]
  return wished.flatMap((wish) => nearestInside(play.region, wish) ?? [])
}
