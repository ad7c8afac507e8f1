import type { Flitch } from '../leaves/flitch'
import type { Recipe } from '../patterns/recipe'
import { pressingFrom } from '../press/follow-flitch'
import type { EdgeWork, Layer, Pressing } from '../press/pressing'
import { ACROSS, USUAL_BOARD } from '../press/usual-pressing'

/** What a part of the demonstration is pressed on, and what is done to its edges. */
export type Core = Pick<Pressing, 'edges'> & { readonly core: Layer }

const BARE: EdgeWork = { edge: 'bare' }
const LIPPED: EdgeWork = { edge: 'lipped before', thickness: 8 }
const VENEERED: EdgeWork = { edge: 'edge veneer first', thickness: 0.6 }

/** Outer plies across, so that the face crosses them. */
const plywood = (board: 'birch plywood' | 'light plywood', thickness: number): Layer => ({
  ...USUAL_BOARD,
  board,
  thickness,
  grain: ACROSS,
})

/** Doors with veneered edges. */
export const DOOR: Core = {
  core: USUAL_BOARD,
  edges: { top: VENEERED, right: VENEERED, bottom: VENEERED, left: VENEERED },
}

/** The top lies lengthwise: its front edge is the right one of the panel, its back edge the left. */
export const TOP: Core = { core: USUAL_BOARD, edges: { top: LIPPED, right: LIPPED, bottom: LIPPED, left: BARE } }

export const END: Core = {
  core: plywood('birch plywood', 18),
  edges: { top: BARE, right: LIPPED, bottom: BARE, left: BARE },
}

export const LAMP_TABLE: Core = DOOR

export const HIDDEN: Core = {
  core: plywood('light plywood', 12),
  edges: { top: BARE, right: BARE, bottom: BARE, left: BARE },
}

/** Face and backer from the flitch in front of and behind this core. */
export function pressedOn(flitch: Flitch, pattern: Recipe['pattern'], { core, edges }: Core): Pressing {
  const usual = pressingFrom(flitch, pattern)
  return { ...usual, edges, layers: usual.layers.map((layer) => (layer.kind === 'board' ? core : layer)) }
}
