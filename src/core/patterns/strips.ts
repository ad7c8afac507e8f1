import { point } from '../geometry/point'
import type { CellId } from '../ids'
import { invariant, present } from '../invariant'
import { bookTurns, columnBounds, columnId, equalColumns, finishedColumn, layingBySpine, type Band } from './columns'
import { layAt, turnOf, type Bundle, type Plan, type Sizes } from './pattern'
import type { Laying, StripRecipe } from './recipe'

/** What is decided when nothing is said. */
export const USUAL_STRIPS: StripRecipe = {
  pattern: 'strips',
  match: 'book',
  arrangement: 'centre balance',
  count: 'fewest',
  firstLeaf: 1,
  equal: 'after trimming',
  centreOn: 'either',
  startAt: 'left',
  spine: 'right',
  laying: 'by spine',
  sideUp: 'numbered',
}

/** The counts that the pattern takes. */
export const STRIP_COUNTS = { min: 1, max: 64 }

/** A slip-centre-book takes an even number, so that its centre is a seam, and two slipped leaves a half at least. */
export const CENTRE_BOOK_COUNTS = { min: 4, max: 64, step: 2 }

/**
 * Leaves side by side over the full length: `count` columns of equal width, or in a running match one column for each
 * band, as wide as the band, from the starting edge on.
 */
export function planStrips(
  recipe: StripRecipe,
  sizes: Sizes,
  count: number,
  bundle: Bundle,
  bands: readonly Band[] | null,
): Plan {
  const running = recipe.arrangement === 'running'
  const borders = running
    ? runningBorders(recipe, sizes, present(bands, 'a running match without bands'))
    : equalColumns(sizes, count, recipe.equal, recipe.arrangement === 'centre balance')
  const columns = borders.length - 1
  const turns = turnsOfStrips(recipe, columns, bundle)
  const overs = turns.map(({ overX }) => overX)
  const laying = layingOfStrips(recipe, overs, bundle)
  const rankOf = (i: number) => (laying === 'left to right' ? i : columns - 1 - i)
  const centres = running
    ? runningCentres(borders, overs, laying, present(bands, 'a running match without bands'))
    : balanceCentres(recipe, sizes, borders, overs)
  return {
    cells: turns.map(({ overX, overY }, i) => ({
      id: running ? (`S${rankOf(i) + 1}` as CellId) : columnId(i, columns),
      rank: rankOf(i),
      bounds: columnBounds(borders, i),
      lay: layAt(point(centres[i]!, 0), overX, overY),
      turn: turnOf(overX, overY),
    })),
    outerJointed: ['left', 'right'],
    columns: overs.map((_, i) => finishedColumn(sizes, borders, i)),
  }
}

/** Neighbours lie the same side up everywhere. */
const isSlipped = ({ match }: StripRecipe): boolean => match === 'slip' || match === 'reverse slip'

/** The seam at which the first pair is opened: on the centre, else the first one laid. */
function hingeSeam(recipe: StripRecipe, count: number, bundle: Bundle): number {
  if (count < 2) return 0
  if (recipe.arrangement === 'running') return recipe.startAt === 'left' ? 1 : count - 1
  if (count % 2 === 0) return count / 2
  const laying =
    recipe.laying === 'by spine' ? layingBySpine(recipe.spine === 'left', bundle.numberFacesNext) : recipe.laying
  return laying === 'left to right' ? 1 : count - 1
}

/** In which axes the leaf of each column is reversed: across for turned over, both for spun, along for end over end. */
interface StripTurn {
  readonly overX: boolean
  readonly overY: boolean
}

function turnsOfStrips(recipe: StripRecipe, count: number, bundle: Bundle): readonly StripTurn[] {
  const turnedOver = (overX: boolean): StripTurn => ({ overX, overY: false })
  const columns = Array.from({ length: count }, (_, i) => i)
  switch (recipe.match) {
    case 'slip':
      return columns.map(() => turnedOver(recipe.sideUp === 'other'))
    case 'reverse slip':
      return columns.map((i) => spunIn(recipe, spunColumn(recipe, i, count)))
    case 'slip-centre-book':
      return columns.map((i) => turnedOver(i < count / 2 === (recipe.spine === 'left')))
    case 'book':
      // a single leaf lies numbered side up
      if (count === 1) return [turnedOver(false)]
      return bookTurns(count, hingeSeam(recipe, count, bundle), recipe.spine).map(turnedOver)
  }
}

const spunIn = (recipe: StripRecipe, spun: boolean): StripTurn => ({
  overX: (recipe.sideUp === 'other') !== spun,
  overY: spun,
})

/** Every other leaf is spun: never the one on the centre, or left of a centre seam, nor the first of a running match. */
function spunColumn(recipe: StripRecipe, i: number, count: number): boolean {
  if (recipe.arrangement !== 'running') return Math.abs(i - Math.floor((count - 1) / 2)) % 2 === 1
  return spunInRun(recipe.startAt === 'left' ? i : count - 1 - i)
}

/** Whether the leaf of a running reverse slip is spun, by its place in the run, counted from 0. */
export const spunInRun = (rank: number): boolean => rank % 2 === 1

function layingOfStrips(recipe: StripRecipe, overs: readonly boolean[], bundle: Bundle): Exclude<Laying, 'by spine'> {
  if (recipe.arrangement === 'running') return recipe.startAt === 'left' ? 'left to right' : 'right to left'
  if (recipe.laying !== 'by spine') return recipe.laying
  if (isSlipped(recipe) || overs.length === 1) return 'left to right'
  return layingBySpine(overs[hingeSeam(recipe, overs.length, bundle) - 1]!, bundle.numberFacesNext)
}

/**
 * Where the origins of the windows come to lie. In a book match each is the mirror image of its neighbour's in the
 * seam between them, so that every seam is a mirror however unequal the columns; the one next to the panel's centre
 * has its origin in the middle of its finished column.
 */
function balanceCentres(
  recipe: StripRecipe,
  sizes: Sizes,
  borders: readonly number[],
  overs: readonly boolean[],
): readonly number[] {
  const count = overs.length
  const middle = (i: number) => {
    // slipped pieces lie over each other as they were taped; where no column is an inner one, by what stays of them
    if (recipe.match !== 'book' && recipe.equal === 'before trimming' && count > 2)
      return (borders[i]! + borders[i + 1]!) / 2
    if (recipe.equal === 'after trimming') return -sizes.width / 2 + ((i + 0.5) * sizes.width) / count
    const { from, to } = finishedColumn(sizes, borders, i)
    return (from + to) / 2
  }
  if (isSlipped(recipe)) return overs.map((_, i) => middle(i))
  if (recipe.match === 'slip-centre-book') {
    // the left half mirrors the right one, so that the centre seam is a mirror however unequal the halves
    const seam = borders[count / 2]!
    return overs.map((_, i) => (i < count / 2 ? 2 * seam - middle(count - 1 - i) : middle(i)))
  }
  const reference = Math.floor(count / 2)
  const centres = overs.map(() => 0)
  centres[reference] = middle(reference)
  for (let i = reference + 1; i < count; i++) centres[i] = 2 * borders[i]! - centres[i - 1]!
  for (let i = reference - 1; i >= 0; i--) centres[i] = 2 * borders[i + 1]! - centres[i + 1]!
  return centres
}

/** Borders of a running match: bands laid one after the other from the starting edge, the last one cut off. */
function runningBorders(recipe: StripRecipe, { width, beyond }: Sizes, bands: readonly Band[]): readonly number[] {
  invariant(bands.length > 0, 'a running match without bands')
  const [left, right] = [-width / 2 - beyond.left, width / 2 + beyond.right]
  const widths = bands.slice(0, -1).map(({ low, high }) => high - low)
  const inner = widths.map((_, i) => widths.slice(0, i + 1).reduce((sum, w) => sum + w, 0))
  return recipe.startAt === 'left'
    ? [left, ...inner.map((x) => left + x), right]
    : [left, ...inner.map((x) => right - x).reverse(), right]
}

/** Origins that lay each band's edge on the border towards the starting edge. */
function runningCentres(
  borders: readonly number[],
  overs: readonly boolean[],
  laying: Exclude<Laying, 'by spine'>,
  bands: readonly Band[],
): readonly number[] {
  return overs.map((over, i) => {
    if (laying === 'left to right') {
      const { low, high } = bands[i]!
      return over ? borders[i]! + high : borders[i]! - low
    }
    const { low, high } = bands[overs.length - 1 - i]!
    return over ? borders[i + 1]! + low : borders[i + 1]! - high
  })
}
