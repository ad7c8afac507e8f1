import { BORDER, isBorderPiece } from '../faces/window-group'
import type { CellId, FlitchId } from '../ids'
import type { Part } from '../job/job'
import { borderFlitch } from '../job/part-flitches'

/** What was decided by hand about where pieces come from: by window, and by cell. */
type Places = Pick<Part, 'positions' | 'chosen' | 'nudges'>

/** That of the border's pieces alone. */
export const onlyOfBorder = (part: Places): Places => keptOf(part, (of) => of === BORDER || isBorderPiece(of))

/** That of the field's pieces alone. */
export const onlyOfField = (part: Places): Places => keptOf(part, (of) => of !== BORDER && !isBorderPiece(of))

function keptOf({ positions, chosen, nudges }: Places, isKept: (of: string) => boolean): Places {
  const kept = <T>(all: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(all).filter(([of]) => isKept(of)))
  return { positions: kept(positions), chosen: kept(chosen), nudges: kept(nudges) }
}

/** The flitch that a cell of a part is cut from. */
export const flitchOfCell = (part: Part, cell: CellId): FlitchId =>
  isBorderPiece(cell) ? borderFlitch(part) : part.flitch
