import type { Edges } from '../geometry/box'
import type { PanelOutline } from '../geometry/panel-outline'
import type { Point } from '../geometry/point'
import type { CellId, FlitchId, PartId, WindowGroup } from '../ids'
import type { Flitch } from '../leaves/flitch'
import type { Recipe } from '../patterns/recipe'
import type { Shop, ShowClass } from '../shop'
import type { MakeUp } from './make-up'

/** What a person has decided, and nothing that can be worked out from it. This is what is saved. */
export interface Job {
  readonly name: string
  /** The unit in which bare numbers are typed and lengths are shown. */
  readonly unit: 'mm' | 'in'
  readonly shop: Shop
  readonly flitches: readonly Flitch[]
  readonly parts: readonly Part[]
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
  readonly flitch: FlitchId
  readonly recipe: Recipe
  /** Where the window has been put on the leaf; a group that is missing lies where there is most play. */
  readonly positions: Readonly<Record<WindowGroup, Point<'leaf'>>>
  /** Leaves chosen by hand for single cells, instead of the next in the run. */
  readonly chosen: Readonly<Record<CellId, number>>
  /** Shifts of one cell on its leaf; void when another leaf comes to lie there. */
  readonly nudges: Readonly<Record<CellId, Nudge>>
  /** Leaves made longer or wider before their pieces are cut: for the whole run, or for single cells. */
  readonly madeUp: Readonly<Record<CellId, MakeUp>>
}

export interface Nudge {
  readonly leaf: number
  readonly by: Point<'leaf'>
}
