/**
 * Two leaves joined end to end. Two different joints go by the name of scarf: a bevel through the thickness, which
 * costs next to no length and leaves the width whole, and a diagonal cut in the plane of the leaf, seen on the face.
 *
 * Input: lengths along the grain, and the k of a slope of 1 in k. Output: millimetres. Failure: none.
 */

/** Bevelled through the thickness, one bevel laid over the other. */
export const bevelSpliceLength = (first: number, second: number, thickness: number, k: number): number =>
  first + second - k * thickness

/** The length of the bevel, from its feather edge to its full thickness along the face. */
export const bevelLength = (thickness: number, k: number): number => k * thickness

export interface DiagonalSplice {
  /** Full width along the whole of it; 0 or less when the slants take up all there is. */
  readonly length: number
  /** The slant takes so much that the longer leaf by itself is as long: the slope is too flat for the width. */
  readonly pointless: boolean
}

/** Both leaves cut along the same slant across their whole width, in their plane, and butted. */
export function diagonalSplice(first: number, second: number, width: number, k: number): DiagonalSplice {
  const length = first + second - k * width
  return { length, pointless: length <= Math.max(first, second) }
}
