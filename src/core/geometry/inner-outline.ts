/**
 * What is left of a panel inside a band of one width.
 *
 * Input: a shape with its width and length, and the width of the band, above 0. Output: the ring at that distance inside
 * the panel's edges, each of its edges telling which edge of the shape it runs beside. Tolerance: as `panelRing`.
 * Failure: null when nothing is left, when a side of the shape has gone, or when what is left falls asunder.
 */
import { panelRing, type Outline, type PanelOutline, type PanelSize } from './panel-outline'
import { signedArea } from './polygon'

export function innerOutline(outline: PanelOutline, size: PanelSize, band: number): Outline<'panel'> | null {
  const whole = panelRing(outline, size, ALL(0))
  const inner = panelRing(outline, size, ALL(-band))
  if (!whole || !inner || signedArea(inner.ring) <= 0) return null
  return isSameRound(sidesOf(whole), sidesOf(inner)) ? inner : null
}

const ALL = (by: number) => ({ top: by, right: by, bottom: by, left: by })

/** The edges of a shape in the order in which an outline runs along them, each once. */
export const sidesOf = ({ edges }: Outline<'panel'>): readonly number[] =>
  edges
    .map(({ source }) => source)
    .filter((source, i, all) => all.length < 2 || source !== all[(i + all.length - 1) % all.length])

function isSameRound(one: readonly number[], other: readonly number[]): boolean {
  if (one.length !== other.length) return false
  const from = other.indexOf(one[0]!)
  return one.length === 0 || one.every((source, i) => source === other[(from + i) % other.length])
}
