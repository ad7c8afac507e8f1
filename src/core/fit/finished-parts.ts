import { bandPieces } from '../faces/border-cells'
import { asCut, cutCell, taggedField, taggedSheet, type Cell, type TaggedRing } from '../faces/cells'
import { fieldOf, isBordered } from '../faces/field'
import { BORDER } from '../faces/window-group'
import type { LaidFace } from './lay-face'

/** What of the finished panel lies within the bounds that a piece is cut to: one part, or several where the panel is cut so. */
export function finishedParts({ part, plan, sizes }: LaidFace, cell: Cell): readonly TaggedRing<'panel'>[] {
  const { finished } = sizes.outlines
  if (isBordered(part) && cell.group === BORDER)
    return bandPieces(part, finished).flatMap(({ id, face }) => (id === cell.id ? [face] : []))
  const { id: name } = cell.sheet ?? cell
  const planned = plan.cells.find(({ id }) => name === id || name.startsWith(`${id}.`))
  const sheet = isBordered(part) ? taggedField(fieldOf(part).outline) : taggedSheet(finished, plan)
  if (!planned) return []
  const strip = planned.strips?.find((one) => cell.id.startsWith(`${name}${one.name}`))
  const parts = cutCell(asCut(planned), sheet)
  return strip ? parts.flatMap((part) => cutCell(strip, part)) : parts
}
