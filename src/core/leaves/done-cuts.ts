import type { Ring } from '../geometry/polygon'
import type { CellId, PartId } from '../ids'
import type { DoneCut, Leaf } from './leaf'

/** Which piece of which part. */
export interface PieceRef {
  readonly part: PartId
  readonly cell: CellId
}

export const isCutFor = (cut: DoneCut, { part, cell }: PieceRef): boolean => cut.part === part && cut.cell === cell

/**
 * The leaf from which a piece has been cut, null when it has not been cut. A piece of a made-up leaf may be cut from
 * several: then the one that is wanted there, if it is one of them.
 */
export function leafCutFor(leaves: readonly Leaf[], piece: PieceRef, wanted: Leaf | null): Leaf | null {
  const isCutFrom = ({ cuts }: Leaf) => cuts.some((cut) => isCutFor(cut, piece))
  return wanted && isCutFrom(wanted) ? wanted : (leaves.find(isCutFrom) ?? null)
}

/** What has been cut from a leaf for other pieces than this one. */
export const cutForOthers = (leaf: Leaf, piece: PieceRef): readonly Ring<'leaf'>[] =>
  leaf.cuts.filter((cut) => !isCutFor(cut, piece)).map(({ outline }) => outline)
