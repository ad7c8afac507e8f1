import type { FlitchId } from '../ids'
import type { LeafCount } from './recipe'

/** A crossbanding: what lies round the field of a face. */
export interface Border {
  /** From the edge of the finished panel inwards. */
  readonly width: number
  /** Across the band, square to the panel's edge, or along it. */
  readonly grain: 'across' | 'along'
  /** Mitred at half the angle; or butted, with the bands at the sides running through, or those at the ends. */
  readonly corners: 'mitred' | 'sides through' | 'ends through'
  /** Along the edge, at most: a longer edge is made of several pieces. */
  readonly pieceLength: number
  /** What it is cut from; null: the flitch of the field. */
  readonly flitch: FlitchId | null
  /** Of leaves: each gives several pieces, one beside the other. */
  readonly count: LeafCount
  /** The leaf to start with; unless it is said, the next that the field leaves, or the first of another flitch. */
  readonly firstLeaf: number | 'after the field'
  readonly sideUp: 'numbered' | 'other'
  /** The line between border and field; null without one. */
  readonly string: Stringing | null
}

/** A thin line of other wood, laid in between border and field. */
export interface Stringing {
  readonly width: number
  /** In words; it is not cut from a flitch. */
  readonly species: string
}

export const USUAL_BORDER: Border = {
  width: 60,
  grain: 'across',
  corners: 'mitred',
  pieceLength: 200,
  flitch: null,
  count: 'fewest',
  firstLeaf: 'after the field',
  sideUp: 'numbered',
  string: null,
}

export const USUAL_STRING: Stringing = { width: 1.5, species: 'maple' }

/** How far the field's edge lies inside the edge of the finished panel. */
export const borderDepth = ({ width, string }: Border): number => width + (string?.width ?? 0)
