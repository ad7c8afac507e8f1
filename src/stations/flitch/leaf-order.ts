import { boxAround, boxHeight, boxWidth } from '../../core/geometry/box'
import { leafOutline } from '../../core/leaves/bundle'
import { rectangle } from '../../core/job/usual'
import type { Flitch } from '../../core/leaves/flitch'
import type { Leaf, LeafState } from '../../core/leaves/leaf'

/** How the list of leaves is looked at; the sequence itself stays as it is. */
export type LeafOrder = 'sequence' | 'number' | 'longest' | 'widest' | 'defects' | 'state'

export const LEAF_ORDERS: readonly { readonly value: LeafOrder; readonly name: string }[] = [
  { value: 'sequence', name: 'in sequence, as sliced' },
  { value: 'number', name: 'by number' },
  { value: 'longest', name: 'longest first' },
  { value: 'widest', name: 'widest first' },
  { value: 'defects', name: 'most defects first' },
  { value: 'state', name: 'set aside and spare first' },
]

/** The greatest width and length of a leaf. */
export function leafSize(flitch: Flitch, leaf: Leaf): { readonly width: number; readonly length: number } {
  const box = boxAround(leafOutline(flitch, leaf))
  return { width: boxWidth(box), length: boxHeight(box) }
}

/** The leaves in an order to look at; equal ones stay in their sequence. */
export function orderedLeaves(flitch: Flitch, order: LeafOrder): readonly Leaf[] {
  if (order === 'sequence') return flitch.leaves
  const keyed = flitch.leaves.map((leaf) => ({ leaf, key: sortKey(flitch, leaf, order) }))
  return keyed.sort((a, b) => a.key - b.key).map(({ leaf }) => leaf)
}

const STATE_FIRST: Readonly<Record<LeafState, number>> = { 'set aside': 0, spare: 1, 'in use': 2 }

function sortKey(flitch: Flitch, leaf: Leaf, order: Exclude<LeafOrder, 'sequence'>): number {
  switch (order) {
    case 'number':
      return leaf.number
    case 'longest':
      return -leafSize(flitch, leaf).length
    case 'widest':
      return -leafSize(flitch, leaf).width
    case 'defects':
      return -leaf.defects.length
    case 'state':
      return STATE_FIRST[leaf.state]
  }
}

/** Width and length of an outline that is a rectangle from the origin, so that the two say all; else null. */
export function rectangleSize(outline: Flitch['outline']): { readonly width: number; readonly length: number } | null {
  const corner = outline[2]
  if (!corner || outline.length !== 4) return null
  const isPlain = rectangle(corner.x, corner.y).every((p, i) => p.x === outline[i]?.x && p.y === outline[i]?.y)
  return isPlain ? { width: corner.x, length: corner.y } : null
}
