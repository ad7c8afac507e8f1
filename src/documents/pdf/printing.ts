import type { Paper } from '../paper'
import type { Correction } from './correction'

/** How neighbouring pages of a tiled drawing meet: one laid over the other, or edge to edge. */
export type Joining = 'overlap' | 'butt'

/** What neighbouring pages have in common, mm, when they are laid over each other. */
export const OVERLAP = 10

/** What sheets are printed on, and what is known of the printer. */
export interface Printing {
  readonly paper: Paper
  readonly correction: Correction
  readonly joining: Joining
}

export const overlapOf = (joining: Joining): number => (joining === 'overlap' ? OVERLAP : 0)

/** By how much a page is drawn larger, across × down, for its foot: `Corrected +3.1 % × −0.5 %`; empty for none. */
export function correctionNote(correction: { readonly x: number; readonly y: number }): string {
  if (correction.x === 1 && correction.y === 1) return ''
  const share = (scale: number) => {
    const percent = Math.abs((scale - 1) * 100).toFixed(1)
    return `${scale < 1 ? '−' : '+'}${percent} %`
  }
  return `Corrected ${share(correction.x)} × ${share(correction.y)}`
}
