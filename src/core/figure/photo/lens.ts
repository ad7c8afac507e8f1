import { point, type Point } from '../../geometry/point'

/**
 * How a lens bends straight lines, in the simplest model: a spot at distance r from the middle (half a diagonal is 1)
 * is seen at r·(1 + k1·r²). Negative: barrel.
 */
export interface Lens {
  readonly centre: Point<'photo'>
  /** Half the diagonal, in pixels. */
  readonly reach: number
  readonly k1: number
}

export const lensOf = (width: number, height: number, k1 = 0): Lens => ({
  centre: point(width / 2, height / 2),
  reach: Math.hypot(width, height) / 2,
  k1,
})

/** Where a spot of the straight-lined photograph is seen in the one taken. */
export function distorted({ centre, reach, k1 }: Lens, p: Point<'photo'>): Point<'photo'> {
  const [x, y] = [(p.x - centre.x) / reach, (p.y - centre.y) / reach]
  const by = 1 + k1 * (x * x + y * y)
  return point(centre.x + x * by * reach, centre.y + y * by * reach)
}

/** The way back, by repetition; good to a thousandth of a pixel for the lenses of cameras (|k1| below 0.15). */
export function undistorted(lens: Lens, p: Point<'photo'>): Point<'photo'> {
  let q = p
  for (let i = 0; i < 12; i++) {
    const seen = distorted(lens, q)
    q = point(q.x + p.x - seen.x, q.y + p.y - seen.y)
  }
  return q
}
