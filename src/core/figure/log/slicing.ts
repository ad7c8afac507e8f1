/** How the knife goes through the log. Depths are measured from the log's middle; x and y lie across the log. */
export type Slicing =
  /** Straight cuts side by side beyond the heart: crowns in the middle, stripes at the sides. */
  | { readonly cut: 'flat'; readonly firstDepth: number }
  /** Straight cuts along a radius, from `innerEdge` (sawn) out to the bark: stripes. */
  | { readonly cut: 'quarter'; readonly firstDepth: number; readonly innerEdge: number }
  /** The log hangs in a lathe off its middle and the knife takes arcs of falling radius. */
  | { readonly cut: 'half round'; readonly firstDepth: number; readonly latheRadius: number }

/** The place in the log of a spot `u` across a leaf, on the surface `sunk` below the numbered face of leaf 1. */
export interface Across {
  readonly x: number
  readonly y: number
}

export function acrossAt(slicing: Slicing, sunk: number, u: number): Across {
  if (slicing.cut !== 'half round') return { x: u, y: slicing.firstDepth - sunk }
  const turn = u / slicing.latheRadius
  const radius = slicing.latheRadius - sunk
  return {
    x: radius * Math.sin(turn),
    y: slicing.firstDepth - slicing.latheRadius + radius * Math.cos(turn),
  }
}
