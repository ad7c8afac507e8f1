import { boxAround } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { ringEdges, type Ring } from '../geometry/polygon'
import { leafOutline } from './bundle'
import type { Flitch } from './flitch'

/** Where the register lines across the bundle are found on one leaf. */
export interface LineMark {
  readonly leaf: number
  /** From the numbered end to the line on the bundle's edge. */
  readonly along: number
  /** From the left edge to the line on the bundle's numbered end; null where none was struck there. */
  readonly across: number | null
}

/** How far the lines run on from the first leaf of the bundle to the last: 0 for lines struck square. */
export interface LineSlant {
  readonly along: number
  readonly across: number
}

/**
 * The drift of each leaf that bears a mark, from lines struck straight across the bundle while it lay as it was sliced: the
 * line on leaf k belongs at the mark of the first leaf and k's share of the slant; what it lies off that is drift. The
 * first leaf of the flitch must bear a mark. Leaves count as they lie in the bundle, so those that are missing are not.
 */
export function driftsFromMarks(
  flitch: Flitch,
  marks: readonly LineMark[],
  slant: LineSlant,
): ReadonlyMap<number, Point<'leaf'>> | null {
  const places = new Map(flitch.leaves.map((leaf, i) => [leaf.number, { leaf, i }]))
  const spots = new Map(marks.map((mark) => [mark.leaf, mark]))
  const first = flitch.leaves[0] && spots.get(flitch.leaves[0].number)
  if (!first) return null
  const last = Math.max(1, flitch.leaves.length - 1)
  const at = (mark: LineMark) => onLeaf(leafOutline(flitch, places.get(mark.leaf)!.leaf), mark)
  const begin = at(first)
  const drifts = new Map<number, Point<'leaf'>>()
  for (const mark of marks) {
    const place = places.get(mark.leaf)
    if (!place) continue
    const share = place.i / last
    const here = at(mark)
    const across = here.x === null || begin.x === null ? place.leaf.drift.x : here.x - begin.x - share * slant.across
    drifts.set(mark.leaf, point(rounded(across), rounded(here.y - begin.y - share * slant.along)))
  }
  return drifts
}

/** A mark in the leaf's frame: measured from its numbered end, and from where its left edge meets that end. */
function onLeaf(outline: Ring<'leaf'>, { along, across }: LineMark): { x: number | null; y: number } {
  const { min } = boxAround(outline)
  const row = min.y + 1
  const edges = ringEdges(outline).filter(({ a, b }) => a.y > row !== b.y > row)
  const left = Math.min(...edges.map(({ a, b }) => a.x + ((b.x - a.x) * (row - a.y)) / (b.y - a.y)))
  return { x: across === null || !Number.isFinite(left) ? null : left + across, y: min.y + along }
}

/** To a hundredth, and never −0. */
const rounded = (value: number): number => Math.round(value * 100) / 100 + 0
