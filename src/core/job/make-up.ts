import type { Box } from '../geometry/box'
import type { Point } from '../geometry/point'

/** A straight cut at a slant to the grain, both faces trued, and how far one half is slid along the other. */
export interface SlantedCut {
  /** A point of the line that is marked; the loss is trued off on both sides of it. */
  readonly through: Point<'leaf'>
  /** The way the line runs from the numbered end to the far end. The half on that side stays where it is. */
  readonly runs: 'right' | 'left'
  /** The tangent of the angle between the cut and the grain: 1/k for a cut of 1 in k. */
  readonly slope: number
  /** What the leaf gains in length. */
  readonly gain: number
  /** What truing takes off each of the two faces. */
  readonly loss: number
}

interface AnyMakeUp {
  /**
   * The leaf it was made for, and void when another comes to lie there; null for the whole run as one packet: places
   * are then those on the flitch's first leaf, and follow the drift.
   */
  readonly leaf: number | null
  /** How far the stripes of the figure stand apart, where that is known. */
  readonly spacing: number | null
}

/** A leaf made longer: cut at a slant and its halves slid. */
export interface Lengthening extends AnyMakeUp {
  readonly how: 'longer'
  readonly cut: SlantedCut
}

/** A piece made wider by a strip along one edge. */
export interface Widening extends AnyMakeUp {
  readonly how: 'wider'
  /** The edge of the kept piece on which the strip is put. */
  readonly side: 'left' | 'right'
  /** What is kept of the leaf; its edge on that side is the line that is sawn, before truing. */
  readonly kept: Box<'leaf'>
  /** The leaf from which the strip comes; null for the same one. */
  readonly from: number | null
  /** The offcut of that leaf from which the strip is made. */
  readonly offcut: Box<'leaf'>
  /** The offcut itself made longer first; null where it is long enough. */
  readonly cut: SlantedCut | null
  /** The strip in the offcut as it then is, before truing; its numbered end comes level with that of the kept piece. */
  readonly strip: Box<'leaf'>
  /** What truing takes off each of the two faces along the grain. */
  readonly loss: number
}

/** How a leaf is made longer or wider before its piece is cut. */
export type MakeUp = Lengthening | Widening

/** The key of what is done to every leaf of the run alike; all others are cells. */
export const WHOLE_RUN = 'run'
