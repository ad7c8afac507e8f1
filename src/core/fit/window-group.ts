import type { WindowGroup } from '../ids'

/** The one group of cells that share a window position. */
export const WINDOW: WindowGroup = 'window'
