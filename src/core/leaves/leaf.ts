import type { CellId, DefectId, PartId } from '../ids'
import type { Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'

/** Something in the wood that a face may have to go round. */
export type DefectKind = 'knot' | 'hole' | 'split' | 'stain' | 'sapwood' | 'tear'

export type DefectShape =
  | { readonly shape: 'spot'; readonly centre: Point<'leaf'>; readonly radius: number }
  | { readonly shape: 'area'; readonly ring: Ring<'leaf'> }
  | { readonly shape: 'line'; readonly from: Point<'leaf'>; readonly to: Point<'leaf'> }

export type Defect = DefectShape & {
  readonly id: DefectId
  readonly kind: DefectKind
  readonly note: string
  /** How a split goes through the thickness; left out: square. A slanted one rides over itself when pulled tight. */
  readonly through?: BreakThrough | undefined
}

export type BreakThrough = 'square' | 'slanted'

/** In use; kept back as a spare; or set aside, not to be used at all. */
export type LeafState = 'in use' | 'spare' | 'set aside'

/** A straightened picture of a leaf, which is kept beside the job under the hash of its content. */
export interface StoredPicture {
  /** The name of the file in `photos/`. */
  readonly hash: string
  /** In pixels. */
  readonly width: number
  readonly height: number
  readonly mmPerPx: number
  /** Where the outer corner of its first pixel lies on the leaf. */
  readonly origin: Point<'leaf'>
}

/** A piece that has been cut out of a leaf: fixed, whatever is decided afterwards. */
export interface DoneCut {
  readonly part: PartId
  readonly cell: CellId
  /** The rough piece as it was cut. */
  readonly outline: Ring<'leaf'>
}

/** One sheet of the flitch, in its own frame: x across, y from the numbered end, seen from the numbered side. */
export interface Leaf {
  /** As chalked on the leaf; unique in its flitch. Sequence is the order in the flitch, not this number. */
  readonly number: number
  /** null: the flitch's common outline. */
  readonly outline: Ring<'leaf'> | null
  readonly defects: readonly Defect[]
  readonly state: LeafState
  /** Where the spot at p on the flitch's first leaf lies on this one, minus p. */
  readonly drift: Point<'leaf'>
  readonly note: string
  /** Its own figure, true to scale; null where it has not been photographed. */
  readonly picture: StoredPicture | null
  /** In the order in which they were marked. */
  readonly cuts: readonly DoneCut[]
}
