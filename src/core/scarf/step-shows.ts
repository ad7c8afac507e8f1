/** What a scarf's step does to the look of a face. It is the figure that shows a scarf, not the slope of its cut. */

/** The figure of a leaf as far as a step across the grain matters to it. */
export type SteppedFigure =
  { readonly kind: 'stripe'; readonly spacing: number } | { readonly kind: 'even' } | { readonly kind: 'crown' }

export type StepLook =
  /** The place is not seen: nothing to warn of. */
  | { readonly kind: 'hidden' }
  /** No lines to break. */
  | { readonly kind: 'no lines' }
  /** In crown figure the lines run at every angle: nothing can be promised. */
  | { readonly kind: 'no promise' }
  /** Lines miss each other by this share of the spacing, from 0 to a half; `passed` whole stripes lie between. */
  | { readonly kind: 'meets' | 'breaks'; readonly share: number; readonly passed: number }

/** Lines that miss each other by no more than this share of their spacing are taken for one by the eye: our judgement. */
export const MISSED_SHARE = 1 / 8

/**
 * What shows where the figure is carried across by `step`. Stripes carried on by whole spacings meet again as far as
 * they are regular, so `passed` belongs to what is said.
 */
export function stepLook(step: number, figure: SteppedFigure, seen: boolean): StepLook {
  if (!seen) return { kind: 'hidden' }
  if (figure.kind === 'crown') return { kind: 'no promise' }
  if (figure.kind === 'even') return { kind: 'no lines' }
  const passed = Math.round(step / figure.spacing)
  const share = Math.abs(step / figure.spacing - passed)
  return { kind: share <= MISSED_SHARE ? 'meets' : 'breaks', share, passed }
}
