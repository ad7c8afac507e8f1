import type { Point, Space } from './point'

/** What a curved edge lies on: an arc of a circle, or a curve that is told by its points alone. */
export type Curve<S extends Space> =
  { readonly shape: 'arc'; readonly centre: Point<S>; readonly radius: number } | { readonly shape: 'free' }
