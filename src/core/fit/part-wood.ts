import type { Region } from '../geometry/polygon'
import type { Part } from '../job/job'
import { WHOLE_RUN } from '../job/make-up'
import { leafOutline, runOfLeaves } from '../leaves/bundle'
import type { PieceRef } from '../leaves/done-cuts'
import type { Flitch } from '../leaves/flitch'
import type { Leaf } from '../leaves/leaf'
import { rawWoodFor, usableArea, woodFor } from '../leaves/usable'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { madeUpLeaves } from './make-up-run'

export type PartWood = ReturnType<typeof woodOf>

/** The sound wood of the leaves of a flitch that is left for one part; for a piece that has been cut, that piece alone. */
export function woodOf(part: Part, flitch: Flitch, shop: Shop, answers: Answers) {
  const usableOf = (leaf: Leaf): Region<'leaf'> =>
    answers(
      'usable area',
      [leafOutline(flitch, leaf), leaf.defects, shop, part.showClass, flitch.sideMargin, flitch.endMargin],
      () => usableArea(flitch, leaf, shop, part.showClass),
    )
  const leftFor = (leaf: Leaf, piece: PieceRef): Region<'leaf'> =>
    leaf.cuts.length === 0
      ? usableOf(leaf)
      : answers('wood left', [usableOf(leaf), leaf.cuts, piece.part, piece.cell, shop], () =>
          woodFor(usableOf(leaf), leaf, piece, shop),
        )
  // a leaf that was cut for a cell of a running match goes on giving what was cut
  const ownCell = (leaf: Leaf) => leaf.cuts.find((cut) => cut.part === part.id)?.cell ?? ''
  // a leaf is made up of all its wood: what was cut from it so made is fixed by the decisions, not by the wood
  const rawFor = (leaf: Leaf, piece: PieceRef): Region<'leaf'> =>
    leaf.cuts.length === 0
      ? usableOf(leaf)
      : answers('raw wood left', [usableOf(leaf), leaf.cuts, piece.part, piece.cell, shop], () =>
          rawWoodFor(usableOf(leaf), leaf, piece, shop),
        )
  const madeOf = madeUpLeaves(part, flitch, (leaf, cell) => rawFor(leaf, { part: part.id, cell }), answers)
  const run = () =>
    runOfLeaves(flitch, part.recipe.firstLeaf, flitch.leaves.length).map((leaf) => ({
      usable:
        madeOf(WHOLE_RUN, leaf, ownCell(leaf)).made?.usable ?? leftFor(leaf, { part: part.id, cell: ownCell(leaf) }),
      shift: leaf.drift,
    }))
  return { leftFor, madeOf, run }
}
