import type { PartId } from '../ids'
import { borderFlitchTrouble } from '../job/check-border'
import { countTrouble, idTrouble } from '../job/check-job'
import { figureTrouble, partTrouble } from '../job/check-part'
import { fittedPart } from '../job/fitted-part'
import type { Job, MeasuredAt, Part } from '../job/job'
import { withOwnUnnamed } from '../job/part-flitches'
import { inPlace, partInWords } from '../job/place-words'
import { firstLeafOf, USUAL_ALLOWANCE } from '../job/usual'
import type { Flitch } from '../leaves/flitch'
import { pressingFollows } from '../press/follow-flitch'
import { ok, refused } from '../result'
import { borderFrom } from './border-commands'
import { onlyOfBorder } from './border-places'
import { partGone } from './fixed-cuts'
import { changeWithinPart, patched, withEntry, type Next } from './change-within'

/** Puts a part behind the others. */
export function addPart(job: Job, part: Part): Next {
  const owner = partInWords(job.parts.length, part.name)
  const flitch = job.flitches.find(({ id }) => id === part.flitch)
  if (!flitch) return refused(noSuchFlitch(owner, part.flitch))
  const next = { ...job, parts: [...job.parts, part] }
  const wrong =
    partTrouble(part, owner) ??
    figureTrouble(part, flitch, owner) ??
    borderFlitchTrouble(part, job.flitches, owner) ??
    countTrouble(next) ??
    idTrouble(next)
  return wrong ? refused(wrong) : ok(next)
}

/** What is said of a part apart from its face. */
export type PartPatch = Partial<
  Omit<
    Part,
    'id' | 'recipe' | 'positions' | 'chosen' | 'nudges' | 'madeUp' | 'windowTurn' | 'asCut' | 'pressing' | 'finished'
  >
>

/**
 * Positions survive a change of size and outline; the size is made to go with the outline. Another way of jointing
 * brings its usual allowance, unless one is given; another flitch makes positions, chosen leaves, nudges and made-up
 * leaves void, and the first leaf too if it has none of that number.
 */
export function changePart(job: Job, id: PartId, patch: PartPatch): Next {
  return changeWithinPart(job, id, (part) => {
    const { flitch: wanted, jointing, allowance } = patch
    const flitch = job.flitches.find((f) => f.id === (wanted ?? part.flitch))
    if (!flitch) return refused(noSuchFlitch(partInWords(job.parts.indexOf(part), part.name), wanted ?? part.flitch))
    const brought =
      jointing !== undefined && jointing !== part.jointing && allowance === undefined
        ? { allowance: USUAL_ALLOWANCE[jointing] }
        : {}
    const decided = patch.length !== undefined && patch.width === undefined ? 'length' : 'width'
    const changed = patched(part, fittedPart(patched(part, { ...patch, ...brought }), decided))
    if (flitch.id === part.flitch) return ok(withOwnUnnamed(changed))
    const before = job.flitches.find((f) => f.id === part.flitch) ?? flitch
    return ok({ ...facedAnew(changed, flitch), pressing: pressingFollows(part.pressing, before, flitch) })
  })
}

/** Keeps what was measured on a part's taped sheet at one place; null takes it to be as planned. */
export const measureSheet = (job: Job, id: PartId, at: MeasuredAt, length: number | null): Next =>
  changeWithinPart(job, id, (part) =>
    ok(part.asCut[at] === (length ?? undefined) ? part : { ...part, asCut: withEntry(part.asCut, at, length) }),
  )

/** All of a part's taped sheet as planned again: a new one is taped. */
export const forgetMeasures = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => ok(Object.keys(part.asCut).length === 0 ? part : { ...part, asCut: {} }))

/** Its pairs go with it. Refused while a piece is marked as cut for it. */
export function removePart(job: Job, id: PartId): Next {
  const cut = partGone(job, id)
  if (cut && job.parts.some((part) => part.id === id)) return refused(cut)
  const parts = job.parts.filter((part) => part.id !== id)
  const pairs = job.pairs.filter(({ first, second }) => first !== id && second !== id)
  return parts.length < job.parts.length
    ? ok({ ...job, parts, pairs })
    : refused({ trouble: 'not there', thing: 'part', id })
}

/** A copy right behind the part, with all that was decided about its face; it has yet to be made, and its sheet measured. */
export function duplicatePart(job: Job, id: PartId, copyId: PartId, name: string): Next {
  const nth = job.parts.findIndex((part) => part.id === id)
  const part = job.parts[nth]
  if (!part) return refused({ trouble: 'not there', thing: 'part', id })
  const copy = { ...part, id: copyId, name, finished: false, asCut: {} }
  const next = { ...job, parts: job.parts.toSpliced(nth + 1, 0, copy) }
  const wrong = partTrouble(copy, partInWords(nth + 1, name)) ?? countTrouble(next) ?? idTrouble(next)
  return wrong ? refused(wrong) : ok(next)
}

/** Puts a part in the place `to`, counted from 0; beyond the ends it stops there. */
export function movePart(job: Job, id: PartId, to: number): Next {
  const nth = job.parts.findIndex((part) => part.id === id)
  const part = job.parts[nth]
  if (!part) return refused({ trouble: 'not there', thing: 'part', id })
  const place = Number.isNaN(to) ? nth : Math.min(Math.max(Math.round(to), 0), job.parts.length - 1)
  if (place === nth) return ok(job)
  return ok({ ...job, parts: job.parts.toSpliced(nth, 1).toSpliced(place, 0, part) })
}

/** What the border has from a flitch of its own stays. */
function facedAnew(part: Part, flitch: Flitch): Part {
  const { firstLeaf } = part.recipe
  const isThere = flitch.leaves.some(({ number }) => number === firstLeaf)
  const recipe = { ...part.recipe, firstLeaf: isThere ? firstLeaf : firstLeafOf(flitch) }
  const windowTurn = flitch.figure === 'burl' ? part.windowTurn : 0
  const isOwn = part.border !== null && part.border.flitch !== null
  const border = part.border && (isOwn ? part.border : borderFrom(part.border, flitch))
  const places = isOwn ? onlyOfBorder(part) : { positions: {}, chosen: {}, nudges: {} }
  return withOwnUnnamed({ ...part, recipe, border, windowTurn, ...places, madeUp: {} })
}

const noSuchFlitch = (owner: string, flitch: string) =>
  ({ trouble: 'no such flitch', place: inPlace([owner], ['flitch']), flitch }) as const
