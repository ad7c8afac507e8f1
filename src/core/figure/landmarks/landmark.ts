import type { Point } from '../../geometry/point'

/**
 * A spot of a leaf's figure that the eye finds again: the tip of a crown, with the end of the leaf to which it points; a
 * knot; or a dark stripe where it runs over the end of a window.
 */
export type Landmark =
  | { readonly kind: 'crown tip'; readonly at: Point<'leaf'>; readonly end: LeafEnd }
  | { readonly kind: 'knot'; readonly at: Point<'leaf'> }
  | { readonly kind: 'stripe'; readonly at: Point<'leaf'>; readonly end: LeafEnd }

/** Near: towards the numbered end. */
export type LeafEnd = 'near' | 'far'
