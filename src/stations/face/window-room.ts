import type { DerivedPart } from '../../core/derive'
import { boxAround, regionBox } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import { ringEdges } from '../../core/geometry/polygon'

/** How far the window can go from where it is: towards both ends and to both sides of the leaf. */
export interface Room {
  readonly numberedEnd: number
  readonly farEnd: number
  readonly left: number
  readonly right: number
}

/** Straight along and straight across from the window's position to the border of the play; null when it lies outside. */
export function roomToMove({ play, position }: DerivedPart): Room | null {
  if (play.region.length === 0) return null
  const along = crossings(play.region.flat().flatMap(ringEdges), position, 'x', 'y')
  const across = crossings(play.region.flat().flatMap(ringEdges), position, 'y', 'x')
  const [up, down] = nearest(along, position.y)
  const [left, right] = nearest(across, position.x)
  if (play.exact) return { numberedEnd: up ?? 0, farEnd: down ?? 0, left: left ?? 0, right: right ?? 0 }
  if (up === null || down === null || left === null || right === null) return null
  return { numberedEnd: up, farEnd: down, left, right }
}

type Axis = 'x' | 'y'

/** Where the border crosses the line through p along the axis `along`. */
function crossings(
  edges: readonly { a: Point<'leaf'>; b: Point<'leaf'> }[],
  p: Point<'leaf'>,
  across: Axis,
  along: Axis,
): readonly number[] {
  return edges.flatMap(({ a, b }) => {
    if (a[across] > p[across] === b[across] > p[across]) return []
    return [a[along] + ((b[along] - a[along]) * (p[across] - a[across])) / (b[across] - a[across])]
  })
}

/** Distances to the nearest crossing before and after; both null unless the place lies between an odd number on each side. */
function nearest(places: readonly number[], at: number): readonly [number | null, number | null] {
  const before = places.filter((place) => place <= at)
  const after = places.filter((place) => place > at)
  if (before.length % 2 === 0 || after.length % 2 === 0) return [null, null]
  return [at - Math.max(...before), Math.min(...after) - at]
}

/** Where the piece begins, from the numbered end of the first leaf, as a rule would measure it. */
export function fromNumberedEnd({ pieces, flitch }: DerivedPart): number | null {
  const first = [...pieces].filter(({ leaf }) => leaf).sort((p, q) => p.cell.rank - q.cell.rank)[0]
  if (!first?.leaf) return null
  const outline = first.leaf.outline ?? flitch.outline
  return boxAround(first.roughOnLeaf).min.y - boxAround(outline).min.y
}

/** The middle of what is free. */
export const middleOfPlay = ({ play }: DerivedPart): Point<'leaf'> | null => {
  if (play.region.length === 0) return null
  const { min, max } = regionBox(play.region)
  return point((min.x + max.x) / 2, (min.y + max.y) / 2)
}
