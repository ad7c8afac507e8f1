import { BORDER, isBorderPiece } from '../faces/window-group'
import type { PartId } from '../ids'
import type { Job, Part } from '../job/job'
import { usualBorder } from '../job/usual'
import { USUAL_STRING, type Border, type Stringing } from '../patterns/border'
import { ok } from '../result'
import { changeWithinPart, patched, withEntry, type Next } from './change-within'

/** Lays the usual border round the field of a face; one that has a border keeps it. */
export const addBorder = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => {
    const flitch = job.flitches.find((one) => one.id === part.flitch)
    return ok(part.border || !flitch ? part : { ...part, border: usualBorder(part, flitch) })
  })

/** Takes the border away, with all that was decided by hand about its pieces; the field's own window stays. */
export const removeBorder = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => ok(part.border ? { ...withoutBorderPlaces(part), border: null } : part))

/**
 * Changes some of what is decided about a border. Where the leaves lie another way round in it, what was said of the
 * place of its pieces on them goes.
 */
export const changeBorder = (job: Job, id: PartId, patch: Partial<Omit<Border, 'string'>>): Next =>
  changeWithinPart(job, id, (part) => {
    if (!part.border) return ok(part)
    const border = patched(part.border, patch)
    if (border === part.border) return ok(part)
    const isLaidAnew = border.grain !== part.border.grain || border.sideUp !== part.border.sideUp
    return ok({ ...(isLaidAnew ? withoutBorderPlaces(part) : part), border })
  })

/** The string between border and field: some of it changed, or the usual one put there; null takes it away. */
export const changeString = (job: Job, id: PartId, patch: Partial<Stringing> | null): Next =>
  changeWithinPart(job, id, (part) => {
    if (!part.border) return ok(part)
    const string = patch && patched(part.border.string ?? USUAL_STRING, patch)
    return ok(string === part.border.string ? part : { ...part, border: { ...part.border, string } })
  })

function withoutBorderPlaces(part: Part): Part {
  const ofField = <T>(chosen: Readonly<Record<string, T>>): Readonly<Record<string, T>> =>
    Object.fromEntries(Object.entries(chosen).filter(([cell]) => !isBorderPiece(cell)))
  return {
    ...part,
    positions: withEntry(part.positions, BORDER, null),
    chosen: ofField(part.chosen),
    nudges: ofField(part.nudges),
  }
}
