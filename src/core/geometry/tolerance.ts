/** Polygons are snapped to this grid before they are combined; points closer than this are one point. */
export const GRID = 0.001

/** How far a polygon may run beside the curve it stands for. */
export const CHORD_ERROR = 0.01

/** Figure that meets across a seam to within this is said to meet. */
export const MEETS = 0.1

/** Room for the rounding of a handful of floating-point steps on coordinates of some metres. */
export const ROUNDING = 1e-9

/** How far the room is widened all round to find the positions where a piece fits exactly. */
export const EXACT_FIT = 0.005
