/**
 * What has to be mended in the leaves of a face, and what need not be, since it falls in the waste.
 *
 * Input: a face as laid, and the shop. Output: a repair for each defect in each piece, in working order, on whichever
 * leaf the wood of a made-up piece comes from; the defects of the face's leaves that lie in none of its pieces. What
 * only touches a piece counts as lying in it. Failure: none.
 *
 * The order is common practice: splits are taped while the leaf is whole, before the knife can make them run; then what
 * is torn is laid down and patches are let in, before the leaves are taped to each other.
 */
import { otherFlitch, type LaidFace, type Piece } from '../fit/lay-face'
import { pieceParts } from '../fit/piece-parts'
import { boxAround, boxCentre, boxHeight, boxWidth, regionBox } from '../geometry/box'
import { intersect } from '../geometry/clip'
import { grown } from '../geometry/offset'
import { distance, type Point } from '../geometry/point'
import { regionArea, ringEdges, type Region, type Ring } from '../geometry/polygon'
import { distanceToEdge } from '../geometry/segment'
import type { CellId, FlitchId } from '../ids'
import type { Flitch } from '../leaves/flitch'
import { findLeaf, leafOutline } from '../leaves/bundle'
import type { BreakThrough, Defect, DefectKind, Leaf } from '../leaves/leaf'
import { leafSpot, type LeafSpot } from '../seams/find-patch'
import type { Shop } from '../shop'

/** Where a split opens. */
export type Opening = 'numbered end' | 'far end' | 'inside'
export type TapedFace = 'numbered face' | 'other face'

export type Mending =
  | {
      readonly mend: 'tape'
      readonly through: BreakThrough
      readonly opens: Opening
      readonly length: number
      readonly side: Shop['splitTape']
      /** Which face of the leaf comes to be on that side, by how the leaf is turned. */
      readonly face: TapedFace
    }
  | { readonly mend: 'lay down' }
  /** The least patch, its length along the grain: the defect with the wood kept clear of it. */
  | { readonly mend: 'patch'; readonly width: number; readonly length: number }
  /** It may stay, but must not let glue through. */
  | { readonly mend: 'back'; readonly face: TapedFace }

export interface Repair {
  readonly flitch: FlitchId
  /** The name of the flitch where it is not that of the field; else null. */
  readonly ofFlitch: string | null
  readonly leaf: number
  readonly cell: CellId
  readonly defect: Defect
  /** Its middle, as it is found on the leaf; null beside the leaf. */
  readonly spot: LeafSpot | null
  readonly mending: Mending
}

/** A defect that needs no repair: it lies in no piece of the face. */
export interface Spared {
  readonly flitch: FlitchId
  /** The name of the flitch where it is not that of the field; else null. */
  readonly ofFlitch: string | null
  readonly leaf: number
  readonly defect: Defect
  readonly spot: LeafSpot | null
}

export interface RepairPlan {
  readonly repairs: readonly Repair[]
  readonly spared: readonly Spared[]
}

const ORDER: readonly Mending['mend'][] = ['tape', 'lay down', 'back', 'patch']

export function planRepairs(face: LaidFace, shop: Shop): RepairPlan {
  const inRun = [...face.pieces].sort((p, q) => p.cell.rank - q.cell.rank).map(withWood)
  const repairs = inRun.flatMap((taken) => repairsIn(face, taken, shop))
  return {
    // sorting keeps the order of the run within each kind of work
    repairs: repairs.sort((p, q) => ORDER.indexOf(p.mending.mend) - ORDER.indexOf(q.mending.mend)),
    spared: sparedIn(face, inRun),
  }
}

/** A piece, and what it takes of each leaf: one that is made up takes of every leaf that its parts come from. */
interface Taken {
  readonly piece: Piece
  readonly wood: ReadonlyMap<number, Region<'leaf'>>
}

function withWood(piece: Piece): Taken {
  const wood = new Map<number, Region<'leaf'>>()
  for (const { leaf, rough } of pieceParts(piece)) wood.set(leaf, [...(wood.get(leaf) ?? []), ...rough])
  return { piece, wood }
}

function repairsIn(face: LaidFace, { piece, wood }: Taken, shop: Shop): readonly Repair[] {
  return [...wood].flatMap(([number, taken]) => {
    const { flitch } = piece
    const leaf = findLeaf(flitch, number)
    if (!leaf) return []
    return leaf.defects
      .filter((defect) => liesIn(defect, taken))
      .flatMap((defect): readonly Repair[] => {
        const mending = mendingOf(defect, piece, leafOutline(flitch, leaf), shop, face.part.showClass)
        if (!mending) return []
        const spot = spotOf(flitch, leaf, defect)
        const ofFlitch = otherFlitch(face, piece)
        return [{ flitch: flitch.id, ofFlitch, leaf: number, cell: piece.cell.id, defect, spot, mending }]
      })
  })
}

/** Of the leaves that lie in the cells; what is wrong with a leaf that only gives a strip is its own affair. */
function sparedIn(face: LaidFace, pieces: readonly Taken[]): readonly Spared[] {
  const leaves = new Map(pieces.flatMap(({ piece }) => (piece.leaf ? [[piece.leaf, piece.flitch] as const] : [])))
  return [...leaves].flatMap(([leaf, flitch]) => {
    const fromFlitch = pieces.filter(({ piece }) => piece.flitch.id === flitch.id)
    const wood = fromFlitch.flatMap((taken) => taken.wood.get(leaf.number) ?? [])
    return leaf.defects
      .filter((defect) => isMendable(defect.kind) && !liesIn(defect, wood))
      .map((defect) => ({
        flitch: flitch.id,
        ofFlitch: otherFlitch(face, { flitch }),
        leaf: leaf.number,
        defect,
        spot: spotOf(flitch, leaf, defect),
      }))
  })
}

/** Colour can't be mended. */
const isMendable = (kind: DefectKind): boolean => kind !== 'stain' && kind !== 'sapwood'

/** What is done about a defect, or null where nothing can be or need be. */
function mendingOf(
  defect: Defect,
  { cell }: Piece,
  outline: Ring<'leaf'>,
  shop: Shop,
  showClass: keyof Shop['tolerates'],
): Mending | null {
  const stays = shop.tolerates[showClass].includes(defect.kind)
  switch (defect.kind) {
    case 'split': {
      const { through = 'square' } = defect
      const side = shop.splitTape
      const [length, opens] = [splitLength(defect), openingOf(defect, outline)]
      return { mend: 'tape', through, opens, length, side, face: faceOnSide(side, cell.turn.turnedOver) }
    }
    case 'tear':
      return { mend: 'lay down' }
    case 'hole':
      return stays ? { mend: 'back', face: faceOnSide('show side', cell.turn.turnedOver) } : patchFor(defect, shop)
    case 'knot':
      return stays ? null : patchFor(defect, shop)
    default:
      return null
  }
}

/** Number up, the numbered face is on the show side; turned over, it is on the glue side. */
const faceOnSide = (side: Shop['splitTape'], turnedOver: boolean): TapedFace =>
  (side === 'show side') === turnedOver ? 'other face' : 'numbered face'

function patchFor(defect: Defect, shop: Shop): Mending {
  const box = regionBox(grown(defect, shop.clearance[defect.kind]))
  return { mend: 'patch', width: boxWidth(box), length: boxHeight(box) }
}

const splitLength = (defect: Defect): number =>
  defect.shape === 'line' ? distance(defect.from, defect.to) : boxHeight(regionBox(defectShape(defect)))

// a split whose tip is nearer than this to the border of the leaf opens there
const AT_END = 3

function openingOf(defect: Defect, outline: Ring<'leaf'>): Opening {
  const tips: readonly Point<'leaf'>[] =
    defect.shape === 'line' ? [defect.from, defect.to] : defectShape(defect).flatMap(([ring]) => ring)
  const edges = ringEdges(outline)
  const open = tips.find((tip) => edges.some((edge) => distanceToEdge(edge, tip) < AT_END))
  if (!open) return 'inside'
  return open.y < boxCentre(boxAround(outline)).y ? 'numbered end' : 'far end'
}

// a line has no area: half a millimetre of wood along it goes with it
const defectShape = (defect: Defect) => grown(defect, defect.shape === 'line' ? 0.25 : 0)

const liesIn = (defect: Defect, wood: Region<'leaf'>): boolean =>
  wood.some((polygon) => regionArea(intersect<'leaf'>(defectShape(defect), [polygon])) > 0.01)

const spotOf = (flitch: Flitch, leaf: Leaf, defect: Defect): LeafSpot | null =>
  leafSpot(leafOutline(flitch, leaf), boxCentre(regionBox(defectShape(defect))))
