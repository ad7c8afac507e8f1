import type { Drawing, Item } from './drawing'

/**
 * What is to be printed for one thing, before it is known on which paper: pages that are laid out to fit, and drawings
 * at full scale that are tiled if they must be.
 */
export interface SheetSet {
  readonly title: string
  readonly sheets: readonly Sheet[]
}

export type Sheet = (PageSheet | FullScaleSheet) & {
  /** Which of the set’s groups it is in, where it has any. */
  readonly group?: string
}

/** Drawn anew for the size of the paper; as many pages as it takes, each in mm from the top left corner of the page. */
export interface PageSheet {
  readonly kind: 'page'
  readonly title: string
  readonly draw: (page: PageSize) => readonly (readonly Item[])[]
}

/** Printed at its own size, whatever the paper. */
export interface FullScaleSheet {
  readonly kind: 'full scale'
  readonly title: string
  readonly drawing: Drawing
}

export interface PageSize {
  readonly width: number
  readonly height: number
}
