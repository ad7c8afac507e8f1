import type { Ring } from '../geometry/polygon'
import type { CellId, PartId } from '../ids'
import type { DoneCut, Leaf } from './leaf'

/** Which piece of which part. */
export interface PieceRef {
  readonly part: PartId
  readonly cell: CellId
}

export const isCutFor = (cut: DoneCut, { part, cell }: PieceRef): boolean => cut.part === part && cut.cell === cell

/** The leaf from which a piece has been cut, and the cut; null when it has not been cut. */
export function findCut(
  leaves: readonly Leaf[],
  piece: PieceRef,
): { readonly leaf: Leaf; readonly cut: DoneCut } | null {
  for (const leaf of leaves) {
    const cut = leaf.cuts.find((one) => isCutFor(one, piece))
    if (cut) return { leaf, cut }
  }
  return null
}

/** What has been cut from a leaf for other pieces than this one. */
export const cutForOthers = (leaf: Leaf, piece: PieceRef): readonly Ring<'leaf'>[] =>
  leaf.cuts.filter((cut) => !isCutFor(cut, piece)).map(({ outline }) => outline)
