import type { Point, Space } from './point'

declare const way: unique symbol

/**
 * An affine map from one space to another:
 * `x' = a·x + c·y + e`, `y' = b·x + d·y + f`.
 * Named by its way: `leafToPanel`.
 */
export interface Transform<From extends Space, To extends Space> {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
  readonly [way]?: (from: From, to: To) => [From, To]
}

export const identity = <S extends Space, T extends Space = S>(): Transform<S, T> => ({
  a: 1,
  b: 0,
  c: 0,
  d: 1,
  e: 0,
  f: 0,
})

export const translation = <S extends Space, T extends Space = S>(x: number, y: number): Transform<S, T> => ({
  a: 1,
  b: 0,
  c: 0,
  d: 1,
  e: x,
  f: y,
})

/** Turns about the origin by `angle` radians, from +x towards +y (clockwise as seen). */
export function rotation<S extends Space, T extends Space = S>(angle: number): Transform<S, T> {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return { a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 }
}

/** The mirror image in the line through p and q (which must be apart). */
export function reflection<S extends Space>(p: Point<S>, q: Point<S>): Transform<S, S> {
  const length = Math.hypot(q.x - p.x, q.y - p.y)
  const ux = (q.x - p.x) / length
  const uy = (q.y - p.y) / length
  const a = ux * ux - uy * uy
  const b = 2 * ux * uy
  return { a, b, c: b, d: -a, e: p.x - a * p.x - b * p.y, f: p.y - b * p.x + a * p.y }
}

/** First `inner`, then `outer`. */
export function compose<A extends Space, B extends Space, C extends Space>(
  outer: Transform<B, C>,
  inner: Transform<A, B>,
): Transform<A, C> {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  }
}

/** Negative exactly when the map mirrors. */
export const determinant = <A extends Space, B extends Space>(t: Transform<A, B>): number => t.a * t.d - t.b * t.c

/** The way back. The map must not be flat (determinant 0). */
export function invert<A extends Space, B extends Space>(t: Transform<A, B>): Transform<B, A> {
  const det = t.a * t.d - t.b * t.c
  return {
    a: t.d / det,
    b: -t.b / det,
    c: -t.c / det,
    d: t.a / det,
    e: (t.c * t.f - t.d * t.e) / det,
    f: (t.b * t.e - t.a * t.f) / det,
  }
}

export const transformPoint = <A extends Space, B extends Space>(t: Transform<A, B>, p: Point<A>): Point<B> => ({
  x: t.a * p.x + t.c * p.y + t.e,
  y: t.b * p.x + t.d * p.y + t.f,
})

/** As `transformPoint`, for a direction or a displacement. */
export const transformVector = <A extends Space, B extends Space>(t: Transform<A, B>, v: Point<A>): Point<B> => ({
  x: t.a * v.x + t.c * v.y,
  y: t.b * v.x + t.d * v.y,
})
