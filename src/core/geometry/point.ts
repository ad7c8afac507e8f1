/**
 * Points, and the spaces they live in. `y` points down in every space; lengths are millimetres, except in
 * `photo` and `screen` (pixels).
 *
 * - `leaf`: x across, y along the grain from the numbered end, seen from the numbered side.
 * - `window`: a piece in leaf orientation, about its own origin.
 * - `panel`: origin at the centre of the finished panel, seen from the show side.
 * - `sheet`: a page or a drawing, origin at its top left corner.
 * - `screen`: a board on the screen (CSS pixels), origin at its top left corner.
 */
export type Space = 'photo' | 'leaf' | 'window' | 'panel' | 'sheet' | 'screen'

declare const space: unique symbol

/** A point, or a displacement, in one space. The tag is a function type so that the spaces do not mix. */
export interface Point<S extends Space> {
  readonly x: number
  readonly y: number
  readonly [space]?: (s: S) => S
}

export const point = <S extends Space>(x: number, y: number): Point<S> => ({ x, y })

export const add = <S extends Space>(p: Point<S>, q: Point<S>): Point<S> => ({ x: p.x + q.x, y: p.y + q.y })

export const subtract = <S extends Space>(p: Point<S>, q: Point<S>): Point<S> => ({ x: p.x - q.x, y: p.y - q.y })

export const scale = <S extends Space>(p: Point<S>, by: number): Point<S> => ({ x: p.x * by, y: p.y * by })

/** Positive when turning from p to q is clockwise as seen (y down). */
export const cross = <S extends Space>(p: Point<S>, q: Point<S>): number => p.x * q.y - p.y * q.x

export const dot = <S extends Space>(p: Point<S>, q: Point<S>): number => p.x * q.x + p.y * q.y

export const distance = <S extends Space>(p: Point<S>, q: Point<S>): number => Math.hypot(p.x - q.x, p.y - q.y)

/** The point a share `t` of the way from p to q. */
export const between = <S extends Space>(p: Point<S>, q: Point<S>, t: number): Point<S> => ({
  x: p.x + (q.x - p.x) * t,
  y: p.y + (q.y - p.y) * t,
})
