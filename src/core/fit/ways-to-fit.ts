import type { Remedy } from '../finding'
import type { Side } from '../geometry/box'
import type { Part } from '../job/job'
import { LIMITS } from '../job/limits'
import { placeInSequence } from '../leaves/bundle'
import type { PartFlitches } from '../job/part-flitches'
import type { Flitch } from '../leaves/flitch'
import { leavesEach } from '../patterns/jointed-sheet'
import type { LeafCount, Recipe, StripRecipe } from '../patterns/recipe'
import type { Sound } from '../scarf/extension'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { governingLeaves, type Governing } from './governing'
import { jointSearch, NO_STOCK, type Fits, type Stock } from './joint-ways'
import { layFace, wouldHavePlace, type LaidFace } from './lay-face'
import { WINDOW } from '../faces/window-group'

/** Why a face does not fit, and every least change that would make it. */
export interface FitAdvice {
  /** Leaves that take room from the others, those first whose absence would give most. */
  readonly governing: readonly Governing[]
  /** Cheapest in wood first: overhang, another leaf, another arrangement or count, a scarf or a strip. Each was tried. */
  readonly ways: readonly Remedy[]
  /** The size a scarf would have to give, and the greatest width any found one gives at that length. */
  readonly scarf: { readonly wanted: Sound; readonly most: number | null } | null
}

/** What was found so far, and how much of the looking is done, 0 to 1. */
export interface FitStep {
  readonly share: number
  readonly answer: FitAdvice
}

/** All of `waysToFitInSteps` at once: as long as laying the face some dozens of times and two searches for a scarf. */
export function waysToFit(
  part: Part,
  flitches: PartFlitches,
  shop: Shop,
  answers: Answers,
  stock: Stock = NO_STOCK,
): FitAdvice {
  let advice: FitAdvice = { governing: [], ways: [], scarf: null }
  for (const step of waysToFitInSteps(part, flitches, shop, answers, stock)) ({ answer: advice } = step)
  return advice
}

/**
 * Least changes that would let a face fit which does not, each tried on the real leaves; strips come from `stock` too. Where nothing fits, the place
 * that someone chose for the window is taken to be free.
 */
export function* waysToFitInSteps(
  part: Part,
  flitches: PartFlitches,
  shop: Shop,
  answers: Answers,
  stock: Stock = NO_STOCK,
): Generator<FitStep, void, void> {
  const free: Part = { ...part, positions: withoutWindow(part) }
  const face = layFace(free, flitches, shop, answers)
  const fits: Fits = (changed) => wouldHavePlace(changed, flitches, shop, answers)
  const governing = governingLeaves(face, answers)
  let ways: readonly Remedy[] = []
  const found = (share: number, more: readonly Remedy[], scarf: FitAdvice['scarf'] = null): FitStep => {
    ways = [...ways, ...more]
    return { share, answer: { governing, ways, scarf } }
  }
  yield found(0.05, [])
  yield found(0.2, lessOverhang(free, fits))
  yield found(0.3, otherLeaves(free, face, governing, fits))
  yield found(0.4, otherStarts(free, flitches.field, fits))
  yield found(0.5, otherArrangements(free, fits))
  yield found(0.6, [...otherCounts(free, fits), ...bookedPairs(free, fits), ...slippedSheets(free, fits)])
  const joints = jointSearch(face, { part: free, shop, fits, governing, stock })
  yield found(0.7, joints.strips())
  const { way, scarf } = joints.scarf()
  yield found(1, way, scarf)
}

const withoutWindow = ({ positions }: Part): Part['positions'] =>
  Object.fromEntries(Object.entries(positions).filter(([group]) => group !== WINDOW))

const SIDES: readonly Side[] = ['top', 'bottom', 'left', 'right']

/** For each edge the least that must go, to half a millimetre, where what it has is enough. */
function lessOverhang(part: Part, fits: Fits): readonly Remedy[] {
  const reduced = (side: Side, by: number): Part => ({
    ...part,
    overhang: { ...part.overhang, [side]: part.overhang[side] - by },
  })
  return SIDES.flatMap((side) => {
    const all = Math.floor(part.overhang[side] * 2)
    if (all < 1 || !fits(reduced(side, all / 2))) return []
    let [fails, works] = [0, all]
    while (works - fails > 1) {
      const middle = Math.floor((fails + works) / 2)
      if (fits(reduced(side, middle / 2))) works = middle
      else fails = middle
    }
    return [{ remedy: 'less overhang', side, by: works / 2 } as const]
  })
}

/** In place of a leaf without which the others fit: the leaf nearest to it in the log that does. */
function otherLeaves(part: Part, face: LaidFace, governing: readonly Governing[], fits: Fits): readonly Remedy[] {
  const { flitch } = face
  const used = new Set(face.pieces.map(({ leaf }) => leaf))
  return governing
    .filter(({ without }) => without !== null)
    .slice(0, MOST_REPLACED)
    .flatMap(({ cell, leaf }) => {
      const away = (number: number) => Math.abs(placeInSequence(flitch, number) - placeInSequence(flitch, leaf))
      const nearest = flitch.leaves
        .filter((other) => other.state !== 'set aside' && !used.has(other))
        .map(({ number }) => number)
        .sort((p, q) => away(p) - away(q))
        .find((number) => fits({ ...part, chosen: { ...part.chosen, [cell]: number } }))
      return nearest === undefined ? [] : [{ remedy: 'other leaf', cell, leaf: nearest } as const]
    })
}

const MOST_REPLACED = 2

/** The leaves nearest to the chosen first one from which the run fits, one on each side. */
function otherStarts(part: Part, flitch: Flitch, fits: Fits): readonly Remedy[] {
  const inUse = flitch.leaves.filter(({ state }) => state === 'in use').map(({ number }) => number)
  const at = Math.max(0, inUse.indexOf(part.recipe.firstLeaf))
  const starts = (numbers: readonly number[]) =>
    numbers.find((leaf) => fits({ ...part, chosen: {}, recipe: { ...part.recipe, firstLeaf: leaf } as Recipe }))
  const found = [starts(inUse.slice(at + 1)), starts(inUse.slice(0, at).reverse())]
  return found.flatMap((leaf) => (leaf === undefined ? [] : [{ remedy: 'start at leaf', leaf } as const]))
}

const ARRANGEMENTS: readonly StripRecipe['arrangement'][] = ['centre balance', 'balance', 'running']

/** The other ways of dividing the width that fit; two halves booked at the centre have one only. */
function otherArrangements(part: Part, fits: Fits): readonly Remedy[] {
  const { recipe } = part
  if (recipe.pattern !== 'strips' || recipe.match === 'slip-centre-book') return []
  return ARRANGEMENTS.filter(
    (arrangement) => arrangement !== recipe.arrangement && fits({ ...part, recipe: { ...recipe, arrangement } }),
  ).map((arrangement) => ({ remedy: 'arrangement', arrangement }))
}

const MOST_MORE = 8

/** The next larger count that fits. */
function otherCounts(part: Part, fits: Fits): readonly Remedy[] {
  const { recipe } = part
  const now: LeafCount = recipe.count
  if (now === 'fewest') return []
  const more = Array.from({ length: MOST_MORE }, (_, i) => now + i + 1)
  const allowed = more.filter((count) => !needsEven(recipe) || count % 2 === 0)
  const count = allowed.find((n) => fits({ ...part, recipe: { ...recipe, count: n } as Recipe }))
  const isOfWedges = leavesEach(recipe) > 1
  return count === undefined ? [] : [{ remedy: 'count', count, ...(isOfWedges ? { of: 'wedges' } : {}) }]
}

/** A leaf that is too narrow for a wedge may be wide enough for half of one. */
function bookedPairs(part: Part, fits: Fits): readonly Remedy[] {
  const { recipe } = part
  if (recipe.pattern !== 'radial' || recipe.eachFrom !== 'one leaf') return []
  return fits({ ...part, recipe: { ...recipe, eachFrom: 'booked pair' } }) ? [{ remedy: 'booked pairs' }] : []
}

/** The same for a piece of a diamond or a box: of the fewest leaves, slid beside each other, that will do. */
function slippedSheets(part: Part, fits: Fits): readonly Remedy[] {
  const { recipe } = part
  if (recipe.pattern !== 'diamond' && recipe.pattern !== 'box') return []
  const more = Array.from({ length: LIMITS.sheetOf.most - recipe.sheetOf }, (_, i) => recipe.sheetOf + 1 + i)
  const leaves = more.find((sheetOf) => fits({ ...part, recipe: { ...recipe, sheetOf } }))
  return leaves === undefined ? [] : [{ remedy: 'slipped sheets', leaves }]
}

const needsEven = (recipe: Recipe): boolean =>
  recipe.pattern !== 'strips' || recipe.arrangement === 'centre balance' || recipe.centreOn === 'seam'
