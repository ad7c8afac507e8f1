import { distance, point, type Point } from '../geometry/point'
import type { CellId, PartId, WindowGroup } from '../ids'
import { WINDOW } from '../faces/window-group'
import { figureTrouble } from '../job/check-part'
import type { Job, Nudge, Part } from '../job/job'
import type { MakeUp } from '../job/make-up'
import { partInWords } from '../job/place-words'
import { usualRecipe } from '../job/usual'
import { takesItsCount } from '../patterns/count-taken'
import {
  isRunning,
  type BoxRecipe,
  type DiamondRecipe,
  type EndMatchRecipe,
  type FourWayRecipe,
  type HerringboneRecipe,
  type ParquetRecipe,
  type PlanksRecipe,
  type RadialRecipe,
  type Recipe,
  type StripRecipe,
} from '../patterns/recipe'
import { pressingRelaid } from '../press/follow-flitch'
import { ok, refused } from '../result'
import { flitchOfCell, onlyOfBorder } from './border-places'
import { movedBy, otherLeaf } from './fixed-cuts'
import { changeWithinPart, isSamePoint, patched, withEntry, type Next } from './change-within'

/** Some fields of the recipe as it is; or another pattern, with as much of it as is decided. */
export type RecipePatch =
  | Partial<StripRecipe>
  | Partial<FourWayRecipe>
  | Partial<EndMatchRecipe>
  | Partial<RadialRecipe>
  | Partial<DiamondRecipe>
  | Partial<BoxRecipe>
  | Partial<HerringboneRecipe>
  | Partial<ParquetRecipe>
  | Partial<PlanksRecipe>

/**
 * Changes what a face is made by. Within a pattern everything stays that still has a meaning: hand-made choices go by
 * cell, and cells keep their names when a face grows. Another pattern, or another way of naming the cells, makes
 * choices and nudges void; where the window's origin moves, positions too.
 */
export const changeRecipe = (job: Job, id: PartId, patch: RecipePatch): Next =>
  changeWithinPart(job, id, (part) => {
    const { pattern = part.recipe.pattern } = patch
    const recipe =
      pattern === part.recipe.pattern ? patchedRecipe(part.recipe, patch) : anew(pattern, part.recipe, patch)
    if (recipe === part.recipe) return ok(part)
    const windowTurn = isRunning(recipe) ? 0 : part.windowTurn
    const pressing = pressingRelaid(part.pressing, part.recipe.pattern, recipe.pattern)
    return ok({ ...part, recipe, windowTurn, pressing, ...voided(part, recipe) })
  })

/** Turns the window on every leaf, which only burl allows; where it lies on the leaf stays. */
export const turnWindow = (job: Job, id: PartId, degrees: number): Next =>
  changeWithinPart(job, id, (part) => {
    const flitch = job.flitches.find((f) => f.id === part.flitch)
    const turned = patched(part, { windowTurn: degrees })
    const wrong = flitch && figureTrouble(turned, flitch, partInWords(job.parts.indexOf(part), part.name))
    return wrong ? refused(wrong) : ok(turned)
  })

/** A field that the pattern does not have is left out: a recipe holds only what it means. */
function patchedRecipe(recipe: Recipe, patch: RecipePatch): Recipe {
  const known = Object.entries(patch).filter(([key]) => key in recipe)
  return withCountTaken(togetherAgain(patched(recipe, Object.fromEntries(known)), patch), patch)
}

/** A number of leaves that was good before and no longer goes with the newer decision gives way to the fewest. */
const withCountTaken = (recipe: Recipe, patch: RecipePatch): Recipe =>
  'count' in patch || takesItsCount(recipe) ? recipe : { ...recipe, count: 'fewest' }

/** A slip-centre-book is laid in centre balance alone: the newer of two decisions that don't go together holds. */
function togetherAgain(recipe: Recipe, patch: RecipePatch): Recipe {
  if (recipe.pattern !== 'strips' || recipe.match !== 'slip-centre-book' || recipe.arrangement === 'centre balance')
    return recipe
  return 'match' in patch ? { ...recipe, arrangement: 'centre balance' } : { ...recipe, match: 'slip' }
}

/** Another pattern keeps the leaf to start with, and how the bundle is opened. */
const anew = (pattern: Recipe['pattern'], before: Recipe, patch: RecipePatch): Recipe =>
  patchedRecipe(usualRecipe(pattern, before.firstLeaf), {
    ...('spine' in before ? { spine: before.spine } : {}),
    ...patch,
  })

/** A border keeps what was decided of its own pieces: the pattern inside it is none of its business. */
function voided(part: Part, after: Recipe): Partial<Part> {
  const before = part.recipe
  const { positions, chosen, nudges } = onlyOfBorder(part)
  if (before.pattern !== after.pattern) return { positions, chosen, nudges, madeUp: {} }
  if (before.pattern === 'strips' && after.pattern === 'strips') {
    // running cells are counted from the starting edge, the others from the centre
    const isNamedAnew = isRunning(before) !== isRunning(after) || (isRunning(after) && before.startAt !== after.startAt)
    return isNamedAnew ? { chosen, nudges } : {}
  }
  if (isFromOtherSheets(before, after))
    // other pieces, from a leaf each
    return { positions: {}, chosen: {}, nudges: {}, madeUp: {} }
  if (before.pattern === 'radial' && after.pattern === 'radial' && before.numberedEnds !== after.numberedEnds) {
    // the apex goes to the other end of the leaf
    return { positions, nudges }
  }
  // the same place of the window holds another stretch of wood once the leaf lies the other way in its cell
  if (isSetPiece(before) && isSetPiece(after) && isLaidAnew(before, after)) return { positions, nudges }
  return {}
}

function isFromOtherSheets(before: Recipe, after: Recipe): boolean {
  if (isSetPiece(before) && isSetPiece(after)) return before.sheetOf !== after.sheetOf
  return before.pattern === 'radial' && after.pattern === 'radial' && before.eachFrom !== after.eachFrom
}

const isSetPiece = (recipe: Recipe): recipe is DiamondRecipe | BoxRecipe =>
  recipe.pattern === 'diamond' || recipe.pattern === 'box'

function isLaidAnew(before: DiamondRecipe | BoxRecipe, after: DiamondRecipe | BoxRecipe): boolean {
  if (before.pattern === 'diamond' && after.pattern === 'diamond') return before.runs !== after.runs
  return before.pattern === 'box' && after.pattern === 'box' && before.grain !== after.grain
}

/** Where the window of a group lies on the leaf; null puts it back to where there is most play. */
export const setPosition = (job: Job, id: PartId, group: WindowGroup, at: Point<'leaf'> | null): Next =>
  changeWithinPart(job, id, (part) => {
    const before = part.positions[group] ?? null
    if (isSamePoint(before, at)) return ok(part)
    // a border has a window of its own: which pieces go with which is told by the face alone
    const cut = before && at && !part.border ? movedBy(job, id, null, distance(before, at)) : null
    if (cut) return refused(cut)
    return ok({ ...part, positions: withEntry(part.positions, group, at) })
  })

/** Takes over where another way of laying the same part lies: the leaf to start with, the window, nothing chosen by hand. */
export const takePlaces = (job: Job, id: PartId, { recipe, positions, chosen, nudges }: Part): Next =>
  changeWithinPart(job, id, (part) =>
    ok({ ...part, recipe: { ...part.recipe, firstLeaf: recipe.firstLeaf }, positions, chosen, nudges }),
  )

/** Puts a leaf of the flitch that a cell is cut from into it; null leaves the cell to the run. */
export const chooseLeaf = (job: Job, id: PartId, cell: CellId, leaf: number | null): Next =>
  changeWithinPart(job, id, (part) => {
    if (leaf !== null && !hasLeaf(job, part, cell, leaf)) return refused(noLeaf(leaf))
    if ((part.chosen[cell] ?? null) === leaf) return ok(part)
    const cut = leaf === null ? null : otherLeaf(job, id, cell, leaf)
    if (cut) return refused(cut)
    return ok({ ...part, chosen: withEntry(part.chosen, cell, leaf) })
  })

/** Exchanges the leaves of two cells; `leafA` is what lies in `cellA` now, and `leafB` in `cellB`. */
export const swapLeaves = (job: Job, id: PartId, cellA: CellId, cellB: CellId, leafA: number, leafB: number): Next =>
  changeWithinPart(job, id, (part) => {
    const unknown = leafUnknown(job, part, [cellB, leafA], [cellA, leafB])
    if (flitchOfCell(part, cellA) !== flitchOfCell(part, cellB)) return refused({ trouble: 'two flitches' })
    if (unknown !== null) return refused(noLeaf(unknown))
    if (cellA === cellB || leafA === leafB) return ok(part)
    const cut = otherLeaf(job, id, cellA, leafB) ?? otherLeaf(job, id, cellB, leafA)
    if (cut) return refused(cut)
    return ok(patched(part, { chosen: patched(part.chosen, { [cellA]: leafB, [cellB]: leafA }) }))
  })

/** Every cell takes its leaf from the run again; nudges made for a leaf chosen by hand go with it. */
export const clearChosen = (job: Job, id: PartId): Next =>
  changeWithinPart(job, id, (part) => {
    if (Object.keys(part.chosen).length === 0) return ok(part)
    const kept = Object.entries(part.nudges).filter(([cell, { leaf }]) => part.chosen[cell] !== leaf)
    return ok({ ...part, chosen: {}, nudges: Object.fromEntries(kept) })
  })

/**
 * Makes the leaves of the run, or the leaf of one cell, longer or wider before their pieces are cut; null takes the leaf
 * as it is. Where the window lay before says nothing about a made-up leaf, so it goes back to where there is most play.
 */
export const setMakeUp = (job: Job, id: PartId, cell: CellId, makeUp: MakeUp | null): Next =>
  changeWithinPart(job, id, (part) => {
    const unknown = [makeUp?.leaf, makeUp?.how === 'wider' ? makeUp.from : null].find(
      (leaf) => typeof leaf === 'number' && !hasLeaf(job, part, cell, leaf),
    )
    if (typeof unknown === 'number') return refused(noLeaf(unknown))
    if (!makeUp && !part.madeUp[cell]) return ok(part)
    return ok({
      ...part,
      madeUp: withEntry(part.madeUp, cell, makeUp),
      positions: withEntry(part.positions, WINDOW, null),
    })
  })

/** How far the stripes of the figure stand apart where a made-up leaf is joined; null when that is not known. */
export const setStripeSpacing = (job: Job, id: PartId, cell: CellId, spacing: number | null): Next =>
  changeWithinPart(job, id, (part) => {
    const makeUp = part.madeUp[cell]
    if (!makeUp || makeUp.spacing === spacing) return ok(part)
    return ok({ ...part, madeUp: withEntry(part.madeUp, cell, { ...makeUp, spacing }) })
  })

/** Shifts one cell on the leaf that lies in it; null, or a shift by nothing, puts it back to its group. */
export const setNudge = (job: Job, id: PartId, cell: CellId, nudge: Nudge | null): Next =>
  changeWithinPart(job, id, (part) => {
    if (nudge && !hasLeaf(job, part, cell, nudge.leaf)) return refused(noLeaf(nudge.leaf))
    const wanted = nudge && (nudge.by.x !== 0 || nudge.by.y !== 0) ? nudge : null
    const before = part.nudges[cell] ?? null
    if (isSameNudge(before, wanted)) return ok(part)
    const cut = movedBy(job, id, cell, distance(before?.by ?? NOWHERE, wanted?.by ?? NOWHERE))
    if (cut) return refused(cut)
    return ok({ ...part, nudges: withEntry(part.nudges, cell, wanted) })
  })

/** Shifts several cells at once: those that are named, the others stay. */
export const setNudges = (job: Job, id: PartId, nudges: Readonly<Record<CellId, Nudge>>): Next =>
  Object.entries(nudges).reduce<Next>(
    (next, [cell, nudge]) => (next.ok ? setNudge(next.value, id, cell as CellId, nudge) : next),
    ok(job),
  )

const NOWHERE = point<'leaf'>(0, 0)

const isSameNudge = (a: Nudge | null, b: Nudge | null): boolean =>
  a === b || (a !== null && b !== null && a.leaf === b.leaf && isSamePoint(a.by, b.by))

/** Whether the flitch that a cell is cut from has such a leaf. */
const hasLeaf = (job: Job, part: Part, cell: CellId, leaf: number): boolean =>
  job.flitches.find(({ id }) => id === flitchOfCell(part, cell))?.leaves.some(({ number }) => number === leaf) ?? false

const leafUnknown = (job: Job, part: Part, ...wanted: readonly (readonly [CellId, number])[]): number | null =>
  wanted.find(([cell, leaf]) => !hasLeaf(job, part, cell, leaf))?.[1] ?? null

const noLeaf = (leaf: number) => ({ trouble: 'not there', thing: 'leaf', id: String(leaf) }) as const
