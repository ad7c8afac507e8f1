import type { DerivedPart } from '../core/derive'
import { findLeaf } from '../core/leaves/bundle'
import type { Leaf, StoredPicture } from '../core/leaves/leaf'
import type { Workshop } from '../store/workshop.svelte'

/** The pictures of the leaves that the face shows, and the parts beside it, and of the leaf that is open. */
export function photographsLookedAt(workshop: Workshop): readonly StoredPicture[] {
  const { face } = workshop
  const beside = face?.pairs.flatMap(({ other }) => workshop.faceOf(other.id) ?? []) ?? []
  const leaves = [...(face ? [face, ...beside].flatMap(leavesOf) : []), openLeaf(workshop)]
  return leaves.flatMap((leaf) => leaf?.picture ?? [])
}

const leavesOf = ({ pieces }: DerivedPart): readonly (Leaf | null)[] => pieces.map(({ leaf }) => leaf)

function openLeaf(workshop: Workshop): Leaf | null {
  const { selected } = workshop.session
  if (selected?.on !== 'leaf' && selected?.on !== 'defect') return null
  const flitch = workshop.flitchOf(selected.leaf.flitch)
  return flitch && findLeaf(flitch, selected.leaf.leaf)
}
