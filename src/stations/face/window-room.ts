import { boxAround } from '../../core/geometry/box'
import type { LaidGroup } from '../../core/fit/lay-face'
import { leafOutline } from '../../core/leaves/bundle'

/** Where the piece begins, from the numbered end of the first leaf of its own, as a rule would measure it. */
export function fromNumberedEnd({ flitch, pieces }: LaidGroup): number | null {
  const first = [...pieces].filter(({ leaf }) => leaf).sort((p, q) => p.cell.rank - q.cell.rank)[0]
  if (!first?.leaf) return null
  return boxAround(first.roughOnLeaf).min.y - boxAround(leafOutline(flitch, first.leaf)).min.y
}
