import type { Ring } from '../geometry/polygon'
import type { Flitch } from './flitch'
import type { Leaf } from './leaf'

/** The outline of a leaf: its own, or the flitch's common one. */
export const leafOutline = (flitch: Flitch, leaf: Leaf): Ring<'leaf'> => leaf.outline ?? flitch.outline

export const findLeaf = (flitch: Flitch, number: number): Leaf | null =>
  flitch.leaves.find((leaf) => leaf.number === number) ?? null

/** Whether the numbered faces look towards the next leaf of the sequence, and not back towards leaf 1. */
export const numberFacesNext = (flitch: Flitch): boolean =>
  (flitch.leafOneAt === 'top') !== (flitch.numberedFace === 'upper')

/** How many leaves were sliced before this one, missing ones counted in. */
export function placeInSequence(flitch: Flitch, number: number): number {
  const place = flitch.leaves.findIndex((leaf) => leaf.number === number)
  const before = new Set(flitch.leaves.slice(0, Math.max(0, place)).map((leaf) => leaf.number))
  return place + flitch.missing.reduce((sum, gap) => sum + (before.has(gap.after) ? gap.count : 0), 0)
}

/**
 * How deep in the log lies the face that a leaf shows, measured from the outer face of the first leaf: the figure of
 * two neighbours in a face differs as much as these depths do. Off the saw, what the blade took lies between the
 * two faces of one cut.
 */
export function depthShown(flitch: Flitch, number: number, turnedOver: boolean): number {
  const near = placeInSequence(flitch, number) * (flitch.thickness + flitch.lossBetween)
  const showsFar = turnedOver !== numberFacesNext(flitch)
  return showsFar ? near + flitch.thickness : near
}

/**
 * The leaves of a run: from leaf `first` on in sequence, those in use. Shorter than `count` where the flitch ends;
 * from the start of the flitch if it has no such leaf.
 */
export function runOfLeaves(flitch: Flitch, first: number, count: number): readonly Leaf[] {
  const start = Math.max(
    0,
    flitch.leaves.findIndex((leaf) => leaf.number === first),
  )
  return flitch.leaves
    .slice(start)
    .filter((leaf) => leaf.state === 'in use')
    .slice(0, count)
}
