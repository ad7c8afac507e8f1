import type { CellId, WindowGroup } from '../ids'

/** The cells of the pattern, which share a window position. */
export const WINDOW: WindowGroup = 'window'

/** The pieces of the border, which share another. */
export const BORDER: WindowGroup = 'border'

/** How the name of a border's piece begins; no pattern names a cell so. */
export const BORDER_PIECE = 'X'

export const isBorderPiece = (cell: CellId): boolean => cell.startsWith(BORDER_PIECE)
