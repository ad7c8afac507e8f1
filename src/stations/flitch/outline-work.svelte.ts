import { getContext, setContext } from 'svelte'
import { invariant } from '../../core/invariant'
import type { DefectKind } from '../../core/leaves/leaf'

/** What a pointer does on the drawing of a leaf. */
export type LeafTool = 'select' | 'outline' | 'spot' | 'split' | 'area'

/** How a leaf is being drawn on, and whether it is the common outline that is drawn: while a leaf is open, no longer. */
export class OutlineWork {
  tool: LeafTool = $state('select')
  /** The kind of a spot or an area that is drawn; a line is a split. */
  drawnKind: DefectKind = $state('knot')
  isCommon = $state(false)

  /** With the common outline there is nothing to draw but the outline. */
  openCommon(): void {
    this.isCommon = true
    this.tool = 'outline'
  }

  closeCommon(): void {
    this.isCommon = false
    this.tool = 'select'
  }
}

const KEY = Symbol('outline work')

export const provideOutlineWork = (): OutlineWork => setContext(KEY, new OutlineWork())

/** How the open leaf is drawn on; only on the flitch station, drawings within it included. */
export function useOutlineWork(): OutlineWork {
  const work = getContext<OutlineWork | undefined>(KEY)
  invariant(work, 'a drawing of a leaf stands outside the flitch station')
  return work
}
