/**
 * Where in the flitch lies the wood for a patch: from a spot on a finished face back to its leaf, and from there to the
 * same figure on the other leaves.
 *
 * Input: faces as laid, a spot in panel mm, the patch taken to be round. Output: spots in leaf mm, told as a rule finds
 * them with the number up. Tolerance: that of floating-point steps. Failure: null where no leaf lies under the spot.
 */
import { otherFlitch, type LaidFace } from '../fit/lay-face'
import { partAt, pieceParts } from '../fit/piece-parts'
import { add, subtract, type Point } from '../geometry/point'
import { regionCovers, ringCovers, ringEdges, type Region, type Ring } from '../geometry/polygon'
import { distanceToEdge, levelCrossings } from '../geometry/segment'
import { invert, transformPoint } from '../geometry/transform'
import type { CellId, FlitchId } from '../ids'
import type { Part } from '../job/job'
import { findLeaf, leafOutline, placeInSequence } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { defectArea, defectsToAvoid } from '../leaves/usable'
import type { Shop } from '../shop'

/** A spot on a leaf, numbered side up. */
export interface LeafSpot {
  readonly at: Point<'leaf'>
  /** Straight along the grain. */
  readonly fromNumberedEnd: number
  /** Square to the grain, from both wild edges. */
  readonly fromLeft: number
  readonly fromRight: number
}

export interface PatchPlace {
  readonly cell: CellId
  readonly flitch: FlitchId
  /** The name of the flitch where it is not that of the field; else null. */
  readonly ofFlitch: string | null
  readonly leaf: number
  /** The patch is laid as the leaf is: with its number down where the leaf is turned over. */
  readonly turnedOver: boolean
  /** null where the window reaches past the leaf. */
  readonly spot: LeafSpot | null
  /** The other leaves, the nearest in sequence first; of two as near a spare comes first. */
  readonly others: readonly PatchLeaf[]
}

/** The same figure on another leaf. */
export interface PatchLeaf {
  readonly leaf: number
  readonly state: Leaf['state']
  /** How many leaves on in the log, missing ones counted in; negative: back. */
  readonly steps: number
  readonly spot: LeafSpot | null
  /** Why the patch can't be had there; null when it can. */
  readonly trouble: PatchTrouble | null
}

export type PatchTrouble =
  | { readonly trouble: 'off the leaf' }
  | { readonly trouble: 'defect'; readonly kind: string }
  | { readonly trouble: 'taken'; readonly part: string }

/** What a patch needs and what it must keep clear of. */
export interface PatchWish {
  readonly at: Point<'panel'>
  readonly radius: number
  /** All faces of the job: what they take is not free. */
  readonly faces: readonly LaidFace[]
  readonly shop: Shop
}

export function findPatch(face: LaidFace, wish: PatchWish): PatchPlace | null {
  const piece = face.pieces.find(({ cell, leaf }) => leaf && ringCovers(cell.face.ring, wish.at))
  if (!piece?.leaf) return null
  const { cell, flitch } = piece
  const parts = pieceParts(piece)
  const under = partAt(parts, transformPoint(invert(piece.leafToPanel), wish.at)) ?? parts[0]
  const leaf = under && findLeaf(flitch, under.leaf)
  if (!leaf) return null
  const at = transformPoint(invert(under.leafToPanel), wish.at)
  const onLog = subtract(at, leaf.drift)
  const here = placeInSequence(flitch, leaf.number)
  const others = flitch.leaves
    .filter((other) => other.number !== leaf.number && other.state !== 'set aside')
    .map((other): PatchLeaf => {
      const there = add(onLog, other.drift)
      return {
        leaf: other.number,
        state: other.state,
        steps: placeInSequence(flitch, other.number) - here,
        spot: leafSpot(leafOutline(flitch, other), there),
        trouble: troubleAt(piece.flitch, face.part, other, there, wish),
      }
    })
  return {
    cell: cell.id,
    flitch: flitch.id,
    ofFlitch: otherFlitch(face, piece),
    leaf: leaf.number,
    turnedOver: cell.turn.turnedOver,
    spot: leafSpot(leafOutline(flitch, leaf), at),
    others: others.sort((p, q) => Math.abs(p.steps) - Math.abs(q.steps) || spareFirst(p, q) || q.steps - p.steps),
  }
}

const spareFirst = (p: PatchLeaf, q: PatchLeaf): number => Number(q.state === 'spare') - Number(p.state === 'spare')

/** null when the spot lies beside the leaf. */
export function leafSpot(outline: Ring<'leaf'>, at: Point<'leaf'>): LeafSpot | null {
  if (!ringCovers(outline, at)) return null
  const edges = ringEdges(outline)
  const across = levelCrossings(edges, 'y', at.y)
  return {
    at,
    fromNumberedEnd: at.y - Math.max(...levelCrossings(edges, 'x', at.x).filter((y) => y <= at.y)),
    fromLeft: at.x - Math.max(...across.filter((x) => x <= at.x)),
    fromRight: Math.min(...across.filter((x) => x >= at.x)) - at.x,
  }
}

function troubleAt(
  flitch: Flitch,
  { showClass }: Part,
  leaf: Leaf,
  at: Point<'leaf'>,
  wish: PatchWish,
): PatchTrouble | null {
  const { radius, shop, faces } = wish
  const outline = leafOutline(flitch, leaf)
  if (!ringCovers(outline, at) || reaches([[outline]], at, radius)) return { trouble: 'off the leaf' }
  const defect = defectsToAvoid(leaf, shop, showClass).find((one) => meets(defectArea(one, shop), at, radius))
  if (defect) return { trouble: 'defect', kind: defect.kind }
  const taker = faces.find((face) => takes(face, flitch, leaf, at, radius))
  return taker ? { trouble: 'taken', part: taker.part.name } : null
}

const takes = (face: LaidFace, flitch: Flitch, leaf: Leaf, at: Point<'leaf'>, radius: number): boolean =>
  face.pieces.some(
    (piece) =>
      piece.flitch.id === flitch.id &&
      pieceParts(piece).some((taken) => taken.leaf === leaf.number && meets(taken.rough, at, radius)),
  )

const meets = (region: Region<'leaf'>, at: Point<'leaf'>, radius: number): boolean =>
  regionCovers(region, at) || reaches(region, at, radius)

/** Whether a border comes nearer to the spot than the patch is wide to one side. */
const reaches = (region: Region<'leaf'>, at: Point<'leaf'>, radius: number): boolean =>
  region.flat().some((ring) => ringEdges(ring).some((edge) => distanceToEdge(edge, at) < radius))
