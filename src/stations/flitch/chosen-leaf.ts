import { findLeaf } from '../../core/leaves/bundle'
import type { Flitch } from '../../core/leaves/flitch'
import type { Leaf } from '../../core/leaves/leaf'
import type { Selected } from '../../store/session.svelte'

/** The leaf of this flitch that has been picked, itself or by one of its defects. */
export function chosenLeaf(flitch: Flitch, selected: Selected | null): Leaf | null {
  if (selected?.on !== 'leaf' && selected?.on !== 'defect') return null
  return selected.leaf.flitch === flitch.id ? findLeaf(flitch, selected.leaf.leaf) : null
}
