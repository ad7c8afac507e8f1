/**
 * The second of a pair: which leaves it takes, how they are turned and where its window lies, so that it carries on what
 * the first begins.
 *
 * Input: the first as it is laid, the second with the edges of its pairs. Output: the second as a part of its own, its
 * recipe and its place filled in. Places are those of the log, nudges left out. Failure: the reason why nothing follows.
 */
import { WINDOW } from '../faces/window-group'
import { distance, point, subtract, type Point } from '../geometry/point'
import { GRID } from '../geometry/tolerance'
import { compose, invert, reflection, transformPoint, type Transform } from '../geometry/transform'
import type { PartId } from '../ids'
import { WHOLE_RUN } from '../job/make-up'
import type { Pair, Part } from '../job/job'
import { runOfLeaves } from '../leaves/bundle'
import { leavesTaken } from '../patterns/jointed-sheet'
import type { Plan } from '../patterns/pattern'
import type { Recipe } from '../patterns/recipe'
import { planFor, type LaidFace } from './lay-face'
import { lostBetween, pairVoid, type PairVoid } from './pair-edges'
import { logPlacement } from './placement'

/** The second of a pair follows another part, and through it perhaps others. */
export interface Follows {
  /** The part at their head, which says where the window lies. */
  readonly part: PartId
  /** How much farther on the leaf this one's window lies. */
  readonly apart: Point<'leaf'>
  /** The part where it is decided which leaf lies in a cell, and how it is shifted: itself, or the one above it. */
  readonly cells: PartId
}

/** The second of a pair as it follows from the first, or why it can't. */
export function followed(pair: Pair, first: LaidFace, second: Part): Part | PairVoid {
  const why = pairVoid(pair, first.part, second)
  if (why) return why
  const { flitch, jointing, allowance, laterAllowance, recipe, windowTurn } = first.part
  const part: Part = { ...second, flitch, jointing, allowance, laterAllowance, recipe, windowTurn, positions: {} }
  return pair.meet === 'same leaves' ? farther(pair, first, part) : beside(pair, first, part)
}

/** From the same leaves, farther on: what was chosen or shifted for a cell of the first holds for the second too. */
function farther(pair: Pair, first: LaidFace, part: Part): Part {
  const { chosen, nudges, madeUp, recipe } = first.part
  const next: Part = { ...part, recipe: { ...recipe, count: first.count }, chosen, nudges, madeUp }
  const [mine, theirs] = [planOf(next, first), first.plan].map(({ cells }) => cells[0]!)
  return putWhere(next, first, {
    mine: { at: point(0, -part.length / 2), lay: mine!.lay },
    theirs: { at: point(0, first.part.length / 2 + lostBetween(pair)), lay: theirs!.lay },
  })
}

/** At the right of the first: mirrored in the gap, or as the match goes on. */
function beside(pair: Pair, first: LaidFace, part: Part): Part | PairVoid {
  const firstLeaf = leafAfter(first)
  if (firstLeaf === null) return 'no more leaves'
  const run = first.part.madeUp[WHOLE_RUN]
  const given: Part = { ...part, madeUp: run ? { ...part.madeUp, [WHOLE_RUN]: run } : part.madeUp }
  const going = { ...first.part.recipe, ...layingOf(first), count: first.count, firstLeaf } as Recipe
  const recipe = goingOn(pair, first, given, going)
  if (!recipe) return first.part.recipe.pattern === 'strips' ? 'spun leaves' : 'no mirror image'
  const next: Part = { ...given, recipe }
  const [mine, theirs] = [planOf(next, first).cells[0]!, first.plan.cells.at(-1)!]
  // where the leaves go on as they lie they show the same stretch again, and the mirror image of a pattern shows it too
  if (recipe.pattern !== 'strips' || mine.turn.turnedOver === theirs.turn.turnedOver)
    return { ...next, positions: { [WINDOW]: first.position } }
  return putWhere(next, first, {
    mine: { at: point(-next.width / 2, 0), lay: mine.lay },
    theirs: { at: point(first.part.width / 2, 0), lay: theirs.lay },
  })
}

/** Strips are laid on in the same direction, however the spine of the second comes to lie. */
function layingOf({ part: { recipe }, plan }: LaidFace): Partial<Recipe> {
  if (recipe.pattern !== 'strips') return {}
  return { laying: plan.cells[0]!.rank === 0 ? 'left to right' : 'right to left' }
}

/** A spot of a panel under a cell laid thus. */
interface SpotUnder {
  readonly at: Point<'panel'>
  readonly lay: Lay
}

/** The position at which a spot of the second's panel shows what a spot of the first's shows, or would show farther on. */
function putWhere(next: Part, first: LaidFace, { mine, theirs }: Readonly<Record<'mine' | 'theirs', SpotUnder>>): Part {
  const log = spotOfLog(theirs, first.position)
  return { ...next, positions: { [WINDOW]: subtract(log, spotOfLog(mine, point(0, 0))) } }
}

const spotOfLog = ({ at, lay }: SpotUnder, position: Point<'leaf'>): Point<'leaf'> =>
  transformPoint(invert(logPlacement(lay, { position, drift: NOWHERE, nudge: NOWHERE, farther: NOWHERE })), at)

const NOWHERE = point<'leaf'>(0, 0)

/** The cells of a part whose count is decided. */
function planOf(part: Part, { flitch, shop }: LaidFace): Plan {
  const { count } = part.recipe
  return planFor(part, flitch, shop, { count: count === 'fewest' ? 1 : count, bands: null, position: null, bare: 0 })
}

/** The first's recipe with the turns that the pair asks for, or null where no way of laying gives them. */
function goingOn(pair: Pair, first: LaidFace, part: Part, recipe: Recipe): Recipe | null {
  // only strips can be wider or narrower and still meet
  if (recipe.pattern !== 'strips' && Math.abs(part.width - first.part.width) > GRID) return null
  const mirrors = pair.meet === 'booked' || (recipe.pattern === 'strips' && recipe.match === 'book')
  const suits = recipe.pattern !== 'strips' ? isMirrorImage : mirrors ? isTurnedBack : isTurnedAlike
  return waysToLay(recipe).find((one) => suits(planOf({ ...part, recipe: one }, first), first.plan)) ?? null
}

/** The ways to lay a pattern that differ only in how its leaves are turned, as it is first. */
function waysToLay(recipe: Recipe): readonly Recipe[] {
  const round: readonly Recipe[] = recipe.pattern === 'radial' ? [recipe, otherWayRound(recipe)] : [recipe]
  const spines = round.flatMap((one) => ('spine' in one ? bothOf(one, 'spine', 'left', 'right') : [one]))
  const sides = spines.flatMap((one) => ('sideUp' in one ? bothOf(one, 'sideUp', 'numbered', 'other') : [one]))
  // a single leaf of a book match would lie number up
  const single = sides.filter((one) => one.pattern === 'strips' && one.count === 1)
  return [...sides, ...single.map((one) => ({ ...one, match: 'slip' }) as Recipe)]
}

/** As it is, and with the other of two values. */
const bothOf = (recipe: Recipe, key: string, a: string, b: string): readonly Recipe[] => [
  recipe,
  { ...recipe, [key]: (recipe as unknown as Record<string, string>)[key] === a ? b : a } as Recipe,
]

/** A sunburst as seen in a mirror. */
const otherWayRound = (recipe: Extract<Recipe, { pattern: 'radial' }>): Recipe => ({
  ...recipe,
  firstSeam: 180 - recipe.firstSeam,
  centre: point(-recipe.centre.x, recipe.centre.y),
})

const MIRROR = reflection<'panel'>(point(0, 0), point(0, 1))
const seenInMirror = (lay: Lay): Lay => compose(MIRROR, lay)
type Lay = Transform<'window', 'panel'>

const isTurnedLike = (p: Lay, q: Lay): boolean =>
  Math.max(Math.abs(p.a - q.a), Math.abs(p.b - q.b), Math.abs(p.c - q.c), Math.abs(p.d - q.d)) < 1e-9

/** Those of strips, from left to right. */
const laysOf = ({ cells }: Plan): readonly Lay[] => cells.map(({ lay }) => lay)

/** Strips turned as the others would be, seen in a mirror; how wide they are does not matter. */
function isTurnedBack(plan: Plan, of: Plan): boolean {
  const others = laysOf(of).map(seenInMirror).reverse()
  return laysOf(plan).every((lay, i) => isTurnedLike(lay, others[i]!))
}

function isTurnedAlike(plan: Plan, of: Plan): boolean {
  const others = laysOf(of)
  return laysOf(plan).every((lay, i) => isTurnedLike(lay, others[i]!))
}

/** Every cell lies where the mirror image of another would, and is turned like it. */
const isMirrorImage = (plan: Plan, of: Plan): boolean =>
  plan.cells.length === of.cells.length &&
  of.cells
    .map(({ lay }) => seenInMirror(lay))
    .every((wanted) =>
      plan.cells.some(
        ({ lay }) => isTurnedLike(lay, wanted) && distance(point(lay.e, lay.f), point(wanted.e, wanted.f)) < GRID,
      ),
    )

/** The leaf that the run of the second begins with, the next in use after those of the first; null where the flitch ends. */
function leafAfter({ flitch, count, part, plan }: LaidFace): number | null {
  const taken = Math.max(count, leavesTaken(plan))
  return runOfLeaves(flitch, part.recipe.firstLeaf, taken + 1)[taken]?.number ?? null
}

/** How far the window of the second lies from that of the first, on every leaf. */
export const windowsApart = (first: LaidFace, second: LaidFace): Point<'leaf'> =>
  subtract(second.position, first.position)
