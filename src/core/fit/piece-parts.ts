import { boxesOverlap, regionBox } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { edgeWithin } from '../geometry/convex'
import type { Point } from '../geometry/point'
import { regionCovers, transformRegion, type Region, type Ring } from '../geometry/polygon'
import { compose, identity, invert, transformPoint, translation, type Transform } from '../geometry/transform'
import type { MadePart, MadeSeam } from '../scarf/made-up-leaf'
import type { Piece } from './lay-face'

/** A part of a piece, as it is cut from one leaf. A leaf as it is gives one part. */
export interface PiecePart {
  readonly leaf: number
  /** What of that leaf goes into the piece, rough; where it really lies. */
  readonly rough: Region<'leaf'>
  readonly leafToPanel: Transform<'leaf', 'panel'>
  /** As `leafToPanel`, drift taken off. */
  readonly logToPanel: Transform<'leaf', 'panel'>
  /** From the leaf to where the part comes to lie in the made-up leaf. */
  readonly toMade: Transform<'leaf', 'leaf'>
  /** All wood of the part on its leaf; null where it is the whole leaf. */
  readonly wood: Region<'leaf'> | null
}

/** The parts of a piece with a leaf, those that its rough window does not reach left out. */
export function pieceParts(piece: Piece): readonly PiecePart[] {
  const { leaf, made, leafToPanel, logToPanel, roughOnLeaf } = piece
  if (!leaf) return []
  if (!made) {
    const toMade = identity<'leaf'>()
    return [{ leaf: leaf.number, rough: [[roughOnLeaf]], leafToPanel, logToPanel, toMade, wood: null }]
  }
  return made.parts
    .map((part) => ({
      leaf: part.leaf,
      rough: backOnLeaf([[roughOnLeaf]], part),
      leafToPanel: compose(leafToPanel, part.toMade),
      logToPanel: compose(leafToPanel, compose(part.toMade, translation<'leaf'>(part.drift.x, part.drift.y))),
      toMade: part.toMade,
      wood: part.wood,
    }))
    .filter(({ rough }) => rough.length > 0)
}

/** What of a region in the frame of a made-up leaf is a part's, where it lies on the leaf the part is cut from. */
export function backOnLeaf(region: Region<'leaf'>, { wood, toMade }: MadePart): Region<'leaf'> {
  const moved = transformRegion(invert(toMade), region)
  return wood.length > 0 && moved.length > 0 && boxesOverlap(regionBox(moved), regionBox(wood))
    ? intersect(moved, wood)
    : []
}

/** A place in the frame of a made-up leaf as a place on the leaf that it is cut from; as it is on a leaf as it is. */
export function placeOnLeaf(piece: Piece, at: Point<'leaf'>): Point<'leaf'> {
  const part = partAt(piece.made?.parts ?? [], at)
  return part ? transformPoint(invert(part.toMade), at) : at
}

/** The part that has the wood at a place in the frame of the made-up leaf. */
export const partAt = <P extends Pick<MadePart, 'toMade'> & { readonly wood: Region<'leaf'> | null }>(
  parts: readonly P[],
  at: Point<'leaf'>,
): P | null =>
  parts.find(({ wood, toMade }) => wood !== null && regionCovers(wood, transformPoint(invert(toMade), at))) ?? null

/** The joints within a piece, cut to a convex ring in the frame of the made-up leaf. */
export const jointsWithin = ({ made }: Piece, ring: Ring<'leaf'>): readonly MadeSeam[] =>
  made
    ? made.seams.flatMap((seam) => {
        const edge = edgeWithin(seam.edge, ring)
        return edge ? [{ ...seam, edge }] : []
      })
    : []
