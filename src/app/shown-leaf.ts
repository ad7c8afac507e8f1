import type { DerivedPart } from '../core/derive'
import { flitchesOf } from '../core/fit/lay-face'
import type { LeafRef } from '../core/ids'
import type { Selected } from '../store/session.svelte'

/** The leaf to be shown below a face: the one picked, that of the cell picked, or the first of the run; null if it has none. */
export function shownLeaf(face: DerivedPart, selected: Selected | null): LeafRef | null {
  const { pieces, flitch } = face
  if (selected?.on === 'leaf') {
    const { leaf } = selected
    const its = flitchesOf(face).find(({ id }) => id === leaf.flitch)
    if (its?.leaves.some(({ number }) => number === leaf.leaf)) return leaf
  }
  const picked = selected?.on === 'cell' ? pieces.find(({ cell }) => cell.id === selected.cell) : undefined
  const inRun = [...pieces].sort((p, q) => p.cell.rank - q.cell.rank).find(({ leaf }) => leaf !== null)
  const shown = picked?.leaf ? picked : inRun
  if (shown?.leaf) return { flitch: shown.flitch.id, leaf: shown.leaf.number }
  return flitch.leaves[0] ? { flitch: flitch.id, leaf: flitch.leaves[0].number } : null
}
