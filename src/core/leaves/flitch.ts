import type { FlitchId } from '../ids'
import type { Ring } from '../geometry/polygon'
import type { Leaf } from './leaf'

/** How the leaves were taken from the log. */
export type Cut = 'flat' | 'quarter' | 'rift' | 'half round' | 'rotary' | 'sawn'

/** What the figure asks of laying: grain that runs along the leaf, no grain line at all, or a feather that has an up end. */
export type FigureKind = 'straight' | 'burl' | 'crotch'

/** All leaves of one log section in cutting order. */
export interface Flitch {
  readonly id: FlitchId
  readonly name: string
  readonly species: string
  readonly cut: Cut
  readonly figure: FigureKind
  /** Crotch: the end of the leaf that is up on a face, where the feather opens. */
  readonly upEnd: 'numbered' | 'far'
  /** Thickness of a leaf. */
  readonly thickness: number
  /** What is lost between two leaves: 0 off the knife, kerf and planing off the saw. */
  readonly lossBetween: number
  /** Where leaf 1 lies in the bundle as it stands on the bench. */
  readonly leafOneAt: 'top' | 'bottom'
  /** The face that carries the number, as the bundle lies. */
  readonly numberedFace: 'upper' | 'lower'
  /** Whether the numbered face is the one away from the knife (tight) or the one that touched it (loose). */
  readonly numberedFaceIs: 'tight' | 'loose'
  /** The outline of every leaf that has none of its own. */
  readonly outline: Ring<'leaf'>
  /** In sequence, as sliced. */
  readonly leaves: readonly Leaf[]
  /** Leaves known to be missing from the sequence: how many, after which number. */
  readonly missing: readonly { readonly after: number; readonly count: number }[]
  /** Kept clear of each wild edge. */
  readonly sideMargin: number
  /** Kept clear of each end. */
  readonly endMargin: number
}
