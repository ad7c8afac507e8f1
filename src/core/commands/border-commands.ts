import type { FlitchId, PartId } from '../ids'
import type { Job, Part } from '../job/job'
import { borderFlitch } from '../job/part-flitches'
import { usualBorder } from '../job/usual'
import type { Flitch } from '../leaves/flitch'
import { USUAL_STRING, type Border, type Stringing } from '../patterns/border'
import { ok } from '../result'
import { onlyOfField } from './border-places'
import { changeWithinPart, patched, type Next } from './change-within'

/** Lays the usual border round the field of a face; one that has a border keeps it. */
export const addBorder = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => {
    const flitch = flitchIn(job, part.flitch)
    return ok(part.border || !flitch ? part : { ...part, border: usualBorder(part, flitch) })
  })

/** Takes the border away, with all that was decided by hand about its pieces; the field's own window stays. */
export const removeBorder = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => ok(part.border ? { ...part, ...onlyOfField(part), border: null } : part))

/**
 * Changes some of what is decided about a border. Where the leaves lie another way round in it, or come from another
 * flitch, what was said of the place of its pieces on them goes; the first leaf too if that flitch has none of its number.
 */
export const changeBorder = (job: Job, id: PartId, patch: Partial<Omit<Border, 'string'>>): Next =>
  changeWithinPart(job, id, (part) => {
    if (!part.border) return ok(part)
    const wanted = patch.flitch === part.flitch ? { ...patch, flitch: null } : patch
    const border = patched(part.border, wanted)
    if (border === part.border) return ok(part)
    const isOther = border.flitch !== part.border.flitch
    const isLaidAnew = border.grain !== part.border.grain || border.sideUp !== part.border.sideUp || isOther
    const next: Part = { ...(isLaidAnew ? { ...part, ...onlyOfField(part) } : part), border }
    return ok(isOther ? { ...next, border: borderFrom(border, flitchIn(job, borderFlitch(next))) } : next)
  })

const flitchIn = (job: Job, id: FlitchId) => job.flitches.find((flitch) => flitch.id === id)

/** With a first leaf that the flitch has. */
export const borderFrom = (border: Border, flitch: Flitch | undefined): Border =>
  border.firstLeaf === 'after the field' || !flitch || flitch.leaves.some(({ number }) => number === border.firstLeaf)
    ? border
    : { ...border, firstLeaf: 'after the field' }

/** The string between border and field: some of it changed, or the usual one put there; null takes it away. */
export const changeString = (job: Job, id: PartId, patch: Partial<Stringing> | null): Next =>
  changeWithinPart(job, id, (part) => {
    if (!part.border) return ok(part)
    const string = patch && patched(part.border.string ?? USUAL_STRING, patch)
    return ok(string === part.border.string ? part : { ...part, border: { ...part.border, string } })
  })
