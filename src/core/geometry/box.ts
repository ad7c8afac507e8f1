import { point, type Point, type Space } from './point'
import type { Region, Ring } from './polygon'

/** An upright rectangle. */
export interface Box<S extends Space> {
  readonly min: Point<S>
  readonly max: Point<S>
}

/** The smallest box round some points; at least one is needed. */
export function boxAround<S extends Space>(points: readonly Point<S>[]): Box<S> {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const { x, y } of points) {
    if (x < minX) minX = x
    if (x > maxX) maxX = x
    if (y < minY) minY = y
    if (y > maxY) maxY = y
  }
  return { min: point(minX, minY), max: point(maxX, maxY) }
}

export const regionBox = <S extends Space>(region: Region<S>): Box<S> => boxAround(region.flatMap(([outer]) => outer))

export const boxWidth = <S extends Space>({ min, max }: Box<S>): number => max.x - min.x

export const boxHeight = <S extends Space>({ min, max }: Box<S>): number => max.y - min.y

export const boxCentre = <S extends Space>({ min, max }: Box<S>): Point<S> =>
  point((min.x + max.x) / 2, (min.y + max.y) / 2)

export const boxesOverlap = <S extends Space>(p: Box<S>, q: Box<S>): boolean =>
  p.min.x < q.max.x && q.min.x < p.max.x && p.min.y < q.max.y && q.min.y < p.max.y

/** The four corners from the top left, clockwise as seen. */
export const boxRing = <S extends Space>({ min, max }: Box<S>): Ring<S> => [
  min,
  point(max.x, min.y),
  max,
  point(min.x, max.y),
]

/** The box with each edge moved out by its own distance. */
export const boxGrown = <S extends Space>(box: Box<S>, by: Edges): Box<S> => ({
  min: point(box.min.x - by.left, box.min.y - by.top),
  max: point(box.max.x + by.right, box.max.y + by.bottom),
})

/** One number for each of the four edges of an upright rectangle. */
export interface Edges {
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly left: number
}

export type Side = keyof Edges
