import type { Edges } from '../../src/core/geometry/box'
import { point } from '../../src/core/geometry/point'
import { runningBands } from '../../src/core/fit/running-bands'
import { rectangle } from '../../src/core/job/usual'
import type { Band } from '../../src/core/patterns/columns'
import type { Sizes } from '../../src/core/patterns/pattern'
import type { RadialRecipe, Recipe, StripRecipe } from '../../src/core/patterns/recipe'
import { spread, whole, type Chance } from '../fixtures/geometry/shapes'
import { oneOf } from './any-face'
import { boxed, diamond, endMatch, fourWay, herringbone, parquet, planks, radial, strips } from './job-builders'

/** A pattern with its parameters and sizes, and the same once more on a panel that has grown. */
export interface AnyPattern {
  readonly recipe: Recipe
  readonly sizes: Sizes
  readonly count: number
  readonly bands: readonly Band[] | null
  readonly grown: { readonly recipe: Recipe; readonly sizes: Sizes; readonly count: number }
}

type Make = (chance: Chance) => { recipe: Recipe; count: number; grown?: { recipe?: Recipe; count?: number } }

const spine = (chance: Chance) => oneOf(chance, 'left' as const, 'right' as const)
const equal = (chance: Chance) => oneOf(chance, 'before trimming' as const, 'after trimming' as const)
const sideUp = (chance: Chance) => oneOf(chance, 'numbered' as const, 'other' as const)
const numberedEnds = (chance: Chance) => oneOf(chance, 'inside' as const, 'outside' as const)
const laying = (chance: Chance) =>
  oneOf(chance, 'by spine' as const, 'left to right' as const, 'right to left' as const)
const arrangement = (chance: Chance) => oneOf(chance, 'balance' as const, 'centre balance' as const)

const shared = (chance: Chance) => ({ spine: spine(chance), equal: equal(chance), laying: laying(chance) })

/** Leaves of equal width; a wider panel takes two more, so that the one on the centre stays there. */
const equalStrips =
  (match: StripRecipe['match']): Make =>
  (chance) => {
    const halves = whole(chance, match === 'slip-centre-book' ? 2 : 1, 5)
    const way = match === 'slip-centre-book' ? 'centre balance' : arrangement(chance)
    const count = way === 'balance' && chance() < 0.5 ? 2 * halves - 1 : 2 * halves
    const recipe = strips({ ...shared(chance), match, arrangement: way, count, sideUp: sideUp(chance) })
    return { recipe, count, grown: { count: count + 2 } }
  }

const running =
  (match: 'book' | 'slip' | 'reverse slip'): Make =>
  (chance) => ({
    recipe: strips({
      ...shared(chance),
      match,
      arrangement: 'running',
      startAt: oneOf(chance, 'left', 'right'),
      sideUp: sideUp(chance),
    }),
    count: 1,
  })

const anyPlanks =
  (look: 'random' | 'planked'): Make =>
  (chance) => {
    const count = whole(chance, 1, 9)
    const recipe = planks({
      look,
      sideUp: sideUp(chance),
      widths: oneOf<'seeded' | readonly number[]>(
        chance,
        'seeded',
        Array.from({ length: whole(chance, 1, 6) }, () => spread(chance, 20, 200)),
      ),
      seed: whole(chance, 1, 9999),
      unevenness: oneOf(chance, 0, 35, spread(chance, 0, 80)),
      order: oneOf(chance, 'as they come', 'shuffled'),
      ends: oneOf(chance, 'alike', 'mixed'),
    })
    return { recipe, count, grown: { count: count + 1 } }
  }

const anyEndMatch = (chance: Chance): ReturnType<Make> => {
  const rows = whole(chance, 2, 5)
  const columns = whole(chance, 1, 4)
  const order = oneOf(chance, 'column by column' as const, 'down and up' as const, 'panel' as const)
  const recipe = endMatch({ ...shared(chance), numberedEnds: numberedEnds(chance), rows, order })
  return { recipe, count: rows * columns, grown: { count: rows * (columns + 2) } }
}

const anyFourWay = (chance: Chance): ReturnType<Make> => {
  const count = 4 * whole(chance, 1, 4)
  return {
    recipe: fourWay({ ...shared(chance), numberedEnds: numberedEnds(chance) }),
    count,
    grown: { count: count + 4 },
  }
}

const anyDiamond =
  (runs: 'round' | 'to the centre', sheetOf = 1): Make =>
  (chance) => ({
    recipe: diamond({
      runs,
      sideUp: sideUp(chance),
      numberedEnds: numberedEnds(chance),
      angle: oneOf<'mid-sides' | number>(chance, 'mid-sides', 45, spread(chance, 1, 89)),
      sheetOf,
    }),
    count: 4,
  })

const anyBox =
  (grain: 'along the edges' | 'across the edges', sheetOf = 1): Make =>
  (chance) => ({
    recipe: boxed({ grain, sideUp: sideUp(chance), numberedEnds: numberedEnds(chance), sheetOf }),
    count: 4,
  })

const anyHerringbone = (chance: Chance): ReturnType<Make> => {
  const columns = whole(chance, 2, 4)
  const recipe = herringbone({
    columns,
    angle: oneOf(chance, 45, 30, spread(chance, 10, 70)),
    stripWidth: spread(chance, 90, 220),
    points: oneOf(chance, 'up', 'down'),
    sideUp: sideUp(chance),
    numberedEnds: numberedEnds(chance),
  })
  return { recipe, count: columns * whole(chance, 1, 5) }
}

const anyParquet =
  (least: number, most: number): Make =>
  (chance) => {
    const recipe = parquet({
      columns: whole(chance, 2, 4),
      rows: whole(chance, 2, 4),
      strips: whole(chance, least, most),
      firstBlock: oneOf(chance, 'upright', 'lying'),
      sideUp: sideUp(chance),
    })
    // a block more at every side: the one that was named stays where it is
    const grown = { ...recipe, columns: recipe.columns + 2, rows: recipe.rows + 2 }
    return { recipe, count: whole(chance, 1, 12), ...(chance() < 0.3 && { grown: { recipe: grown } }) }
  }

const anyRadial =
  (match: 'book' | 'slip', least: number, odd: boolean, eachFrom: RadialRecipe['eachFrom'] = 'one leaf'): Make =>
  (chance) => {
    const count = 2 * whole(chance, least, 8) + (odd ? 1 : 0)
    const recipe = radial({
      match,
      spine: spine(chance),
      firstSeam: oneOf(chance, 0, 45, spread(chance, -360, 360)),
      laying: oneOf(chance, 'by spine', 'clockwise', 'anticlockwise'),
      order: oneOf(chance, 'in a circle', 'both ways'),
      numberedEnds: numberedEnds(chance),
      eachFrom,
    })
    return { recipe, count }
  }

/** Every pattern there is, by the name that it goes by. */
export const EVERY_PATTERN: Readonly<Record<string, Make>> = {
  book: equalStrips('book'),
  'book, running': running('book'),
  slip: equalStrips('slip'),
  'slip, running': running('slip'),
  'reverse slip': equalStrips('reverse slip'),
  'reverse slip, running': running('reverse slip'),
  'slip-centre-book': equalStrips('slip-centre-book'),
  'four-way': anyFourWay,
  'end match': anyEndMatch,
  sunburst: anyRadial('book', 3, false),
  'sunburst, odd': anyRadial('book', 3, true),
  'sunburst, slip': anyRadial('slip', 3, false),
  'sunburst of booked pairs': (chance) =>
    anyRadial(oneOf(chance, 'book', 'slip'), 3, chance() < 0.3, 'booked pair')(chance),
  diamond: anyDiamond('round'),
  'reverse diamond': anyDiamond('to the centre'),
  box: anyBox('along the edges'),
  'reverse box': anyBox('across the edges'),
  'set pieces of slipped sheets': (chance) => {
    const leaves = whole(chance, 2, 6)
    const makes = [
      anyDiamond('round', leaves),
      anyDiamond('to the centre', leaves),
      anyBox('along the edges', leaves),
      anyBox('across the edges', leaves),
    ] as const
    return oneOf(chance, ...makes)(chance)
  },
  herringbone: anyHerringbone,
  parquet: anyParquet(1, 1),
  basket: anyParquet(2, 4),
  random: anyPlanks('random'),
  planked: anyPlanks('planked'),
}

export function anyPattern(make: Make, chance: Chance): AnyPattern {
  const { recipe, count, grown = {} } = make(chance)
  const sizes = anySizes(chance)
  const larger = {
    ...sizes,
    width: sizes.width * spread(chance, 1, 1.6),
    length: sizes.length * spread(chance, 1, 1.6),
  }
  return {
    recipe,
    sizes,
    count,
    bands: bandsFor(recipe, sizes, chance),
    grown: { recipe: grown.recipe ?? recipe, sizes: larger, count: grown.count ?? count },
  }
}

function anySizes(chance: Chance): Sizes {
  const width = spread(chance, 240, 900)
  const edge = () => oneOf(chance, 0, 10, spread(chance, -4, 16))
  const beyond: Edges = { top: edge(), right: edge(), bottom: edge(), left: edge() }
  const length = spread(chance, 240, 900)
  return {
    width,
    // square, or so far from it that a box's jump is told from none
    length: chance() < 0.2 || Math.abs(width - length) < 0.2 ? width : length,
    beyond,
    lost: { first: spread(chance, 0, 8), later: spread(chance, 0, 12) },
    between: spread(chance, 0, 5),
  }
}

/** What a run of leaves of all widths gives to a running match, each lying a little to one side of the one before. */
function bandsFor(recipe: Recipe, sizes: Sizes, chance: Chance): readonly Band[] | null {
  if (recipe.pattern !== 'strips' || recipe.arrangement !== 'running') return null
  const { width, length, beyond, lost } = sizes
  const leaves = Array.from({ length: 30 }, () => ({
    usable: [[rectangle(spread(chance, 120, 260), 2000)]] as const,
    shift: point<'leaf'>(spread(chance, -9, 9), 0),
  }))
  const demand = {
    width: width + beyond.left + beyond.right,
    above: length / 2 + beyond.top,
    below: length / 2 + beyond.bottom,
    allowance: lost.first,
  }
  return runningBands(recipe, demand, leaves, 1000)!.bands
}
