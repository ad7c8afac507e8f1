import { point } from '../geometry/point'
import { columnBounds, finishedColumn } from './columns'
import { layAt, turnOf, type Plan, type PlannedCell, type Sizes } from './pattern'
import type { PlanksRecipe } from './recipe'

export const USUAL_PLANKS: PlanksRecipe = {
  pattern: 'planks',
  look: 'random',
  widths: 'seeded',
  seed: 1,
  unevenness: 35,
  order: 'as they come',
  ends: 'alike',
  count: 'fewest',
  firstLeaf: 1,
  sideUp: 'numbered',
}

export const PLANK_COUNTS = { min: 1, max: 64 }

/**
 * Strips of unequal width side by side, named from the left edge: `S1`, `S2` … Each window has its origin in the middle
 * of its finished strip. All leaves lie the same side up; by the seed the order is shuffled and some are spun, where
 * that is wanted.
 */
export function planPlanks(recipe: PlanksRecipe, sizes: Sizes, count: number): Plan {
  const borders = plankBorders(recipe, sizes, count)
  const strips = borders.length - 1
  const columns = Array.from({ length: strips }, (_, i) => finishedColumn(sizes, borders, i))
  const ranks = recipe.order === 'shuffled' ? shuffled(strips, drawsFrom(recipe.seed + 1000)) : null
  const draw = drawsFrom(recipe.seed + 2000)
  const isOver = recipe.sideUp === 'other'
  const cells = columns.map(({ from, to }, i): PlannedCell => {
    const spun = draw() < 0.5 && recipe.ends === 'mixed'
    return {
      id: `S${i + 1}`,
      rank: ranks ? ranks[i]! : i,
      bounds: columnBounds(borders, i),
      lay: layAt(point((from + to) / 2, 0), isOver !== spun, spun),
      turn: turnOf(isOver !== spun, spun),
    }
  })
  return { cells, outerJointed: ['left', 'right'], columns }
}

/** From the left edge of the taped sheet to its right edge. */
function plankBorders(recipe: PlanksRecipe, sizes: Sizes, count: number): readonly number[] {
  const { width, beyond } = sizes
  const widths = recipe.widths === 'seeded' ? seededWidths(recipe, width, count) : recipe.widths
  const inner: number[] = []
  let at = -width / 2
  for (const strip of widths) {
    at += strip
    if (at < width / 2 - 1e-6) inner.push(at)
  }
  return [-width / 2 - beyond.left, ...inner, width / 2 + beyond.right]
}

/** `count` widths that fill the panel, none further from the mean than the unevenness allows before they are scaled. */
function seededWidths({ seed, unevenness }: PlanksRecipe, width: number, count: number): readonly number[] {
  const draw = drawsFrom(seed)
  const shares = Array.from({ length: count }, () => 1 + (unevenness / 100) * (2 * draw() - 1))
  const whole = shares.reduce((sum, share) => sum + share, 0)
  return shares.slice(0, -1).map((share) => (share * width) / whole)
}

/** How many strips the widths typed by hand make in a panel, the one that is left included. */
export const plankCountByHand = (widths: readonly number[], width: number): number => {
  const reached = widths.map((_, i) => widths.slice(0, i + 1).reduce((sum, w) => sum + w, 0))
  return reached.filter((at) => at < width - 1e-6).length + 1
}

/** Numbers from 0 to 1, the same for the same seed: a linear congruence modulo 2³² (constants of Numerical Recipes), stirred. */
function drawsFrom(seed: number): () => number {
  let state = (seed * 2_654_435_761) >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return ((state ^ (state >>> 15)) >>> 0) / 2 ** 32
  }
}

function shuffled(count: number, draw: () => number): readonly number[] {
  const order = Array.from({ length: count }, (_, i) => i)
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(draw() * (i + 1))
    ;[order[i], order[j]] = [order[j]!, order[i]!]
  }
  return order
}
