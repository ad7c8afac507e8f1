import type { Ring } from '../geometry/polygon'
import type { LeafRef } from '../ids'
import type { Job } from '../job/job'
import { blankLeaf } from '../job/usual'
import type { Defect, StoredPicture } from '../leaves/leaf'
import { ok } from '../result'
import { changeWithinFlitch, changeWithinLeaf, type Next } from './change-within'

/** What a photograph tells of a leaf, once the maker has agreed to it. */
export interface FromPhoto {
  readonly picture: StoredPicture
  /** null: the outline stays as it is. */
  readonly outline: Ring<'leaf'> | null
  /** In addition to those that the leaf has. */
  readonly defects: readonly Defect[]
}

/** Gives a leaf what its photograph shows; one that is not in the flitch yet comes last in its sequence. */
export function takeFromPhoto(job: Job, ref: LeafRef, { picture, outline, defects }: FromPhoto): Next {
  const present = changeWithinFlitch(job, ref.flitch, (flitch) => {
    const isThere = flitch.leaves.some(({ number }) => number === ref.leaf)
    return ok(isThere ? flitch : { ...flitch, leaves: [...flitch.leaves, blankLeaf(ref.leaf)] })
  })
  if (!present.ok) return present
  return changeWithinLeaf(present.value, ref, (leaf) =>
    ok({ ...leaf, picture, outline: outline ?? leaf.outline, defects: [...leaf.defects, ...defects] }),
  )
}

/** The names of all pictures that a job speaks of, each once. */
export const picturesOf = ({ flitches }: Job): readonly string[] => [
  ...new Set(flitches.flatMap(({ leaves }) => leaves.flatMap(({ picture }) => (picture ? [picture.hash] : [])))),
]
