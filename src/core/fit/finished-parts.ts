import { cutCell, taggedSheet, type Cell, type TaggedRing } from '../faces/cells'
import type { LaidFace } from './lay-face'

/** What of the finished panel lies within the bounds of a cell: one part, or several where the panel is cut so. */
export function finishedParts({ plan, sizes }: LaidFace, cell: Cell): readonly TaggedRing<'panel'>[] {
  const planned = plan.cells.find(({ id }) => cell.id === id || cell.id.startsWith(`${id}.`))
  return planned ? cutCell(planned, taggedSheet(sizes.outlines.finished, plan)) : []
}
