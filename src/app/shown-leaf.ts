import type { DerivedPart } from '../core/derive'
import type { Selected } from '../store/session.svelte'

/** The leaf to be shown below a face: the one picked, that of the cell picked, or the first of the run; null if it has none. */
export function shownLeaf({ pieces, flitch }: DerivedPart, selected: Selected | null): number | null {
  if (selected?.on === 'leaf' && flitch.leaves.some(({ number }) => number === selected.leaf.leaf))
    return selected.leaf.leaf
  if (selected?.on === 'cell') {
    const picked = pieces.find(({ cell }) => cell.id === selected.cell)
    if (picked?.leaf) return picked.leaf.number
  }
  const inRun = [...pieces].sort((p, q) => p.cell.rank - q.cell.rank).find(({ leaf }) => leaf !== null)
  return inRun?.leaf?.number ?? flitch.leaves[0]?.number ?? null
}
