import { toGridPolygons, toGridRing, type GridRing } from '../geometry/clip-grid'
import { woundRegion } from '../geometry/clip'
import { isConvex } from '../geometry/convex'
import { touchingPath, touchingPaths } from '../geometry/inner-fit-path'
import type { Point } from '../geometry/point'
import { regionCovers, ringEdges, type Region, type Ring } from '../geometry/polygon'
import { levelCrossings } from '../geometry/segment'

/** How far the window can go, straight on from where it lies, in each direction of the leaf. */
export interface Room {
  readonly toNumberedEnd: number
  readonly toFarEnd: number
  /** The side of smaller x: on the left when the numbered end is up. */
  readonly toLeft: number
  readonly toRight: number
}

const NO_ROOM: Room = { toNumberedEnd: 0, toFarEnd: 0, toLeft: 0, toRight: 0 }

/**
 * How far the window's origin can go within its play, straight on from a position in each direction. Nothing where the
 * position lies outside. Measured from the position to the first border of the play on its way.
 */
export function roomToMove(play: Region<'leaf'>, at: Point<'leaf'>): Room {
  if (!regionCovers(play, at)) return NO_ROOM
  const borders = play.flat().flatMap(ringEdges)
  const along = levelCrossings(borders, 'x', at.x)
  const across = levelCrossings(borders, 'y', at.y)
  const before = (places: readonly number[], here: number) =>
    Math.min(...places.filter((place) => place <= here).map((place) => here - place), Infinity)
  const after = (places: readonly number[], here: number) =>
    Math.min(...places.filter((place) => place >= here).map((place) => place - here), Infinity)
  return {
    toNumberedEnd: before(along, at.y),
    toFarEnd: after(along, at.y),
    toLeft: before(across, at.x),
    toRight: after(across, at.x),
  }
}

/** Everything a piece, convex or not, can cover while its origin moves within its play. */
export const reach = (play: Region<'leaf'>, piece: Ring<'window'>): Region<'leaf'> =>
  woundRegion(toGridPolygons(play).flatMap((rings) => rings.flatMap((ring) => touching(ring, piece))))

const touching = (ring: GridRing, piece: Ring<'window'>): GridRing[] =>
  isConvex(piece) ? [touchingPath(ring, toGridRing(piece))] : touchingPaths(ring, toGridRing(piece))
