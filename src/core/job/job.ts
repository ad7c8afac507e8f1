import type { Edges } from '../geometry/box'
import type { PanelOutline } from '../geometry/panel-outline'
import type { Point } from '../geometry/point'
import type { CellId, FlitchId, PartId, WindowGroup } from '../ids'
import type { Flitch } from '../leaves/flitch'
import type { Border } from '../patterns/border'
import type { Recipe } from '../patterns/recipe'
import type { Pressing, PressRoom } from '../press/pressing'
import type { Shop, ShowClass } from '../shop'
import type { MakeUp } from './make-up'

/** What a person has decided, and nothing that can be worked out from it. This is what is saved. */
export interface Job {
  readonly name: string
  /** The unit in which bare numbers are typed and lengths are shown. */
  readonly unit: 'mm' | 'in'
  readonly shop: Shop
  /** What the shop has to press with, and its air. */
  readonly pressRoom: PressRoom
  readonly flitches: readonly Flitch[]
  readonly parts: readonly Part[]
  readonly pairs: readonly Pair[]
}

/** How the long edges are made straight, which says how much they lose. */
export type Jointing = 'packet' | 'pair' | 'overlap'

/** One panel and its face. */
export interface Part {
  readonly id: PartId
  readonly name: string
  /** Finished, across the grain. */
  readonly width: number
  /** Finished, along the grain. */
  readonly length: number
  /** What the finished panel is cut to; width and length are those of the box round it. */
  readonly outline: PanelOutline
  readonly showClass: ShowClass
  /** The core as pressed, beyond the finished panel, for each edge; negative where a lipping is put on afterwards. */
  readonly core: Edges
  /** The taped sheet beyond the core as pressed. */
  readonly overhang: Edges
  readonly jointing: Jointing
  /** Lost on each edge by jointing. */
  readonly allowance: number
  /** Lost on each edge that is trued at a later stage: cross seams and the diameter of a sunburst. */
  readonly laterAllowance: number
  /** Shown with the grain lying, numbered end to the left. */
  readonly lying: boolean
  /** The panel is done: what is left of its leaves is let go of, and nothing about its face changes any more. */
  readonly finished: boolean
  readonly flitch: FlitchId
  readonly recipe: Recipe
  /** Burl: how the window is turned on every leaf, degrees clockwise as seen from the numbered side; 0 for other figure. */
  readonly windowTurn: number
  /** Where the window has been put on the leaf; a group that is missing lies where there is most play. */
  readonly positions: Readonly<Record<WindowGroup, Point<'leaf'>>>
  /** Leaves chosen by hand for single cells, instead of the next in the run. */
  readonly chosen: Readonly<Record<CellId, number>>
  /** Shifts of one cell on its leaf; void when another leaf comes to lie there. */
  readonly nudges: Readonly<Record<CellId, Nudge>>
  /** Leaves made longer or wider before their pieces are cut: for the whole run, or for single cells. */
  readonly madeUp: Readonly<Record<CellId, MakeUp>>
  /** The taped sheet as it was measured, from its seam to its edges; what is missing is as planned. */
  readonly asCut: Readonly<Partial<Record<MeasuredAt, number>>>
  /** A crossbanding round the field; null where the field reaches to the edges. */
  readonly border: Border | null
  /** How it is built up and glued. What is done to an edge has its share in `core`. */
  readonly pressing: Pressing
}

/**
 * Two parts whose faces are read as one across the gap between them, as the doors of a cupboard are: the second takes
 * leaves, turns and place from the first.
 */
export interface Pair {
  readonly first: PartId
  readonly second: PartId
  /**
   * Booked: the second, at the right, mirrors the first in the gap. Running through: its leaves go on as the match has
   * it. Same leaves: the second lies below, from the same leaves farther on.
   */
  readonly meet: 'booked' | 'running through' | 'same leaves'
  /** Between the finished edges as they hang; when one board is sawn through, what saw and planing take. */
  readonly gap: number
  readonly pressed: 'apart' | 'one board'
  /** Pressed apart: the sheet beyond the finished panel at both edges that meet, in place of core and overhang there. */
  readonly overhang: number
}

/** Where a taped sheet is measured: the end, or the side, and which way from the seam. */
export const MEASURED_AT = [
  'top left',
  'top right',
  'bottom left',
  'bottom right',
  'left above',
  'left below',
  'right above',
  'right below',
] as const
export type MeasuredAt = (typeof MEASURED_AT)[number]

export interface Nudge {
  readonly leaf: number
  readonly by: Point<'leaf'>
}
