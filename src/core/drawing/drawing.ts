import type { Box } from '../geometry/box'
import type { Point } from '../geometry/point'

/**
 * A drawing in millimetres, y down, that knows nothing of veneer: what the writers of PDF, SVG and DXF are
 * given. Layers are named by what a line means at the bench.
 */
export type Layer = 'cut' | 'seam' | 'trim' | 'mark' | 'text' | 'wood'

/** In the order in which they are painted where a writer sorts by layer: what is read lies on top. */
export const LAYERS: readonly Layer[] = ['wood', 'trim', 'seam', 'cut', 'mark', 'text']

export interface Drawing {
  readonly title: string
  /** What is to be seen; nothing reaches over it. */
  readonly extent: Box<'sheet'>
  readonly items: readonly Item[]
}

export type Item = Line | Fill | Arc | Text | Picture

/** A stroke through two or more points. Pen widths are mm on paper. */
export interface Line {
  readonly kind: 'line'
  readonly layer: Layer
  readonly points: readonly Point<'sheet'>[]
  readonly closed: boolean
  readonly pen: number
  /** Lengths of dash and gap in turn, mm; null for a full line. */
  readonly dash: readonly number[] | null
  /** How far along its dashes the line begins, mm: a line cut at the edge of a tile goes on in step. 0 if left out. */
  readonly dashFrom?: number
  /** `#rrggbb`; black if null. */
  readonly colour: string | null
}

/** A filled closed ring, without a stroke. */
export interface Fill {
  readonly kind: 'fill'
  readonly layer: Layer
  readonly points: readonly Point<'sheet'>[]
  readonly colour: string
}

/** A stroke along a circle, from one angle to another, radians from +x towards +y (clockwise as seen); a whole turn is a circle. */
export interface Arc {
  readonly kind: 'arc'
  readonly layer: Layer
  readonly centre: Point<'sheet'>
  readonly radius: number
  readonly from: number
  readonly to: number
  readonly pen: number
  readonly colour: string | null
}

/** One line of text. `at` is on the baseline, at the start, middle or end of the text; `size` is the em in mm. */
export interface Text {
  readonly kind: 'text'
  readonly layer: Layer
  readonly at: Point<'sheet'>
  readonly text: string
  readonly size: number
  readonly anchor: 'start' | 'middle' | 'end'
  /** Radians, from +x towards +y (clockwise as seen). */
  readonly angle: number
  readonly weight: 'regular' | 'bold'
  readonly colour: string | null
}

/** An encoded picture laid into a box by an affine map of the unit square: (0,0) its top left corner, (1,1) its bottom right. */
export interface Picture {
  readonly kind: 'picture'
  readonly layer: Layer
  readonly bytes: Uint8Array
  readonly type: 'jpeg' | 'png'
  readonly unitToSheet: AffineMap
  readonly clip: readonly Point<'sheet'>[] | null
}

/** `x' = a·x + c·y + e`, `y' = b·x + d·y + f`. */
export interface AffineMap {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

/** 9 pt, the smallest text on any sheet: the em in mm. */
export const SMALLEST_TEXT = 3.175
