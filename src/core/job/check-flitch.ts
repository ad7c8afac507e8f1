import type { Flitch } from '../leaves/flitch'
import type { Defect, DoneCut, Leaf, StoredPicture } from '../leaves/leaf'
import { ok, refused, type Result } from '../result'
import { checkEach } from './check-each'
import { fieldsTrouble, numberTrouble, pointTrouble, repeated } from './check-number'
import { checkRing } from './check-ring'
import { textTrouble } from './check-text'
import { LIMITS, LONGEST_NAME, LONGEST_NOTE, MOST_CUTS, MOST_DEFECTS } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

const { thickness, lossBetween, sideMargin, endMargin } = LIMITS

/**
 * The flitch with its outlines in order, or the first thing about it that can't be so. `owner` is how it is
 * called in a sentence: `flitch 1, “Walnut”`.
 */
export function checkFlitch(flitch: Flitch, owner: string): Result<Flitch, MeaningTrouble> {
  const wrong = flitchTrouble(flitch, owner)
  if (wrong) return refused(wrong)
  const outline = checkRing(flitch.outline, [owner], 'outline')
  if (!outline.ok) return outline
  const leaves = checkEach(flitch.leaves, (leaf) => checkLeaf(leaf, owner))
  if (!leaves.ok) return leaves
  const isAsItWas = outline.value === flitch.outline && leaves.value === flitch.leaves
  return ok(isAsItWas ? flitch : { ...flitch, outline: outline.value, leaves: leaves.value })
}

/** What can't be so about a flitch apart from its outline and what is on its single leaves, or null. */
export const flitchTrouble = (flitch: Flitch, owner: string): MeaningTrouble | null =>
  textTrouble(flitch.name, LONGEST_NAME, inPlace([owner], ['name'])) ??
  textTrouble(flitch.species, LONGEST_NAME, inPlace([owner], ['species'])) ??
  fieldsTrouble(flitch, { thickness, lossBetween, sideMargin, endMargin }, [owner]) ??
  sequenceTrouble(flitch, owner)

/** Numbers, gaps and drift, which make sense only in a sequence. */
function sequenceTrouble({ leaves, missing }: Flitch, owner: string): MeaningTrouble | null {
  const place = inPlace([owner], ['leaves'])
  const count = numberTrouble(leaves.length, LIMITS.leaves, inPlace([owner], ['number of leaves']))
  if (count) return count
  const twice = repeated(leaves.map(({ number }) => number))
  if (twice !== null) return { trouble: 'repeated leaf', place, leaf: twice }
  const first = leaves[0]!
  if (first.drift.x !== 0 || first.drift.y !== 0) {
    return {
      trouble: 'first leaf drifts',
      place: inPlace([owner, `leaf ${first.number}`], ['drift']),
      leaf: first.number,
    }
  }
  return missingTrouble(missing, new Set(leaves.map(({ number }) => number)), owner)
}

function missingTrouble(
  missing: Flitch['missing'],
  numbers: ReadonlySet<number>,
  owner: string,
): MeaningTrouble | null {
  const place = inPlace([owner], ['missing'])
  for (const { after, count } of missing) {
    if (!numbers.has(after)) return { trouble: 'no such leaf', place, leaf: after }
    const wrong = numberTrouble(count, LIMITS.missing, inPlace([owner], [`number missing after leaf ${after}`]))
    if (wrong) return wrong
  }
  const twice = repeated(missing.map(({ after }) => after))
  return twice === null ? null : { trouble: 'repeated leaf', place, leaf: twice }
}

/** As `checkFlitch`, for one leaf; its place in the sequence is the flitch's business. */
export function checkLeaf(leaf: Leaf, flitch: string): Result<Leaf, MeaningTrouble> {
  const owners = [flitch, `leaf ${leaf.number}`]
  const wrong =
    numberTrouble(leaf.number, LIMITS.leafNumber, inPlace(owners, ['number'])) ??
    pointTrouble(leaf.drift, owners, ['drift']) ??
    textTrouble(leaf.note, LONGEST_NOTE, inPlace(owners, ['note'])) ??
    (leaf.picture ? pictureTrouble(leaf.picture, owners) : null)
  if (wrong) return refused(wrong)
  if (leaf.defects.length > MOST_DEFECTS) {
    const place = inPlace(owners, [])
    return refused({ trouble: 'too many', place, value: leaf.defects.length, things: 'defects', limit: MOST_DEFECTS })
  }
  const outline = leaf.outline ? checkRing(leaf.outline, owners, 'outline') : ok(null)
  if (!outline.ok) return outline
  const defects = checkEach(leaf.defects, (defect, i) => checkDefect(defect, [...owners, `defect ${i + 1}`]))
  if (!defects.ok) return defects
  const cuts = checkCuts(leaf.cuts, owners)
  if (!cuts.ok) return cuts
  const isAsItWas = outline.value === leaf.outline && defects.value === leaf.defects && cuts.value === leaf.cuts
  return ok(isAsItWas ? leaf : { ...leaf, outline: outline.value, defects: defects.value, cuts: cuts.value })
}

/** As `checkFlitch`, for what has been cut from a leaf. */
function checkCuts(cuts: readonly DoneCut[], owners: readonly string[]): Result<readonly DoneCut[], MeaningTrouble> {
  if (cuts.length > MOST_CUTS) {
    return refused({
      trouble: 'too many',
      place: inPlace(owners, []),
      value: cuts.length,
      things: 'pieces cut',
      limit: MOST_CUTS,
    })
  }
  return checkEach(cuts, (cut, i): Result<DoneCut, MeaningTrouble> => {
    const outline = checkRing(cut.outline, [...owners, `cut ${i + 1}`], 'outline')
    if (!outline.ok) return outline
    return ok(outline.value === cut.outline ? cut : { ...cut, outline: outline.value })
  })
}

const pictureTrouble = (picture: StoredPicture, owners: readonly string[]): MeaningTrouble | null =>
  fieldsTrouble(picture, { width: LIMITS.pixels, height: LIMITS.pixels, mmPerPx: LIMITS.mmPerPx }, owners, [
    'picture',
  ]) ?? pointTrouble(picture.origin, owners, ['picture', 'origin'])

/** As `checkFlitch`, for one defect. */
function checkDefect(defect: Defect, owners: readonly string[]): Result<Defect, MeaningTrouble> {
  const long = textTrouble(defect.note, LONGEST_NOTE, inPlace(owners, ['note']))
  if (long) return refused(long)
  if (defect.shape === 'area') {
    const ring = checkRing(defect.ring, owners, 'ring')
    if (!ring.ok) return ring
    return ok(ring.value === defect.ring ? defect : { ...defect, ring: ring.value })
  }
  const wrong =
    defect.shape === 'spot'
      ? (pointTrouble(defect.centre, owners, ['centre']) ?? fieldsTrouble(defect, { radius: LIMITS.radius }, owners))
      : (pointTrouble(defect.from, owners, ['from']) ?? pointTrouble(defect.to, owners, ['to']))
  if (wrong) return refused(wrong)
  if (defect.shape === 'line' && defect.from.x === defect.to.x && defect.from.y === defect.to.y) {
    return refused({ trouble: 'no length', place: inPlace(owners, []) })
  }
  return ok(defect)
}
