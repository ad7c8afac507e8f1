import type { WindowGroup } from '../ids'

/** The cells of the pattern, which share a window position. */
export const WINDOW: WindowGroup = 'window'

/** The pieces of the border, which share another. */
export const BORDER: WindowGroup = 'border'
