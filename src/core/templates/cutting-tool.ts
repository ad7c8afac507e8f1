import { movedSimple } from '../geometry/moved-simple'
import type { Ring } from '../geometry/polygon'

/** What follows the line: it says by how much the path stands off the edge that is wanted. */
export type CuttingTool =
  /** A knife along the template, or a cutter whose bearing runs on it: the line itself. */
  | { readonly kind: 'on the line' }
  /** A beam or a cutter that a machine leads: `width` is what it takes away. */
  | { readonly kind: 'beam'; readonly width: number; readonly keeps: KeptSide }
  /** A router in a guide bush that runs along a template: both are diameters. */
  | { readonly kind: 'guide bush'; readonly bush: number; readonly cutter: number; readonly keeps: KeptSide }

/** What is to have its full size: the piece within the line, or the opening in what lies round it. */
export type KeptSide = 'piece' | 'opening'

export const ON_THE_LINE: CuttingTool = { kind: 'on the line' }

/**
 * How far the path, or the edge of the template, lies outside the edge that is wanted, mm; less than 0 inside it. A beam
 * goes round a piece by half its width. A bush keeps its template half the difference of bush and cutter away from the
 * cut: a template for a piece is smaller by that, one with an opening has a larger opening.
 */
export function toolOffset(tool: CuttingTool): number {
  switch (tool.kind) {
    case 'on the line':
      return 0
    case 'beam':
      return outwards(tool.keeps) * (tool.width / 2)
    case 'guide bush':
      return -outwards(tool.keeps) * ((tool.bush - tool.cutter) / 2)
  }
}

const outwards = (keeps: KeptSide): number => (keeps === 'piece' ? 1 : -1)

/** The path of the tool round a ring, corners mitred; null when nothing is left of it. */
export const toolPath = (ring: Ring<'window'>, tool: CuttingTool): Ring<'window'> | null =>
  movedSimple(
    ring,
    ring.map(() => toolOffset(tool)),
  )
