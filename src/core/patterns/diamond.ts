import { point } from '../geometry/point'
import { compose, reflection, rotation, translation, type Transform } from '../geometry/transform'
import { above, below, layAt, leftOf, rightOf, type Bound, type Plan, type PlannedCell, type Sizes } from './pattern'
import type { DiamondRecipe } from './recipe'

export const USUAL_DIAMOND: DiamondRecipe = {
  pattern: 'diamond',
  runs: 'round',
  angle: 'mid-sides',
  count: 'fewest',
  firstLeaf: 1,
  sideUp: 'numbered',
  numberedEnds: 'outside',
  sheetOf: 1,
}

/** Four quadrants, never more. */
export const DIAMOND_COUNT = 4

/** Degrees between the grain and the width, so that the diamonds touch the middles of the four sides. */
export const midSidesAngle = ({ width, length }: Pick<Sizes, 'width' | 'length'>): number =>
  (Math.atan2(length, width) * 180) / Math.PI

/**
 * Four quadrants of slanted grain, mirrored in both centre lines: closing round the centre in a diamond, running to it
 * in a reverse diamond. The run goes clockwise from the upper left quadrant. Every window has its origin in the middle
 * of its finished quadrant. Seams on the axes mirror grain of any slant, on a panel of any shape.
 */
export function planDiamond(recipe: DiamondRecipe, sizes: Sizes): Plan {
  const upperRight = layUpperRight(recipe, sizes)
  const inUpright = reflection<'panel'>(point(0, 0), point(0, 1))
  const inLevel = reflection<'panel'>(point(0, 0), point(1, 0))
  const firstIsOver = recipe.sideUp === 'other'
  const cell = (id: string, rank: number, lay: Transform<'window', 'panel'>): PlannedCell => ({
    id,
    rank,
    bounds: quadrantBounds(id.startsWith('T'), id.endsWith('L')),
    lay,
    turn: { turnedOver: (rank % 2 === 0) === firstIsOver, spun: null },
  })
  return {
    cells: [
      cell('TL', 0, compose(inUpright, upperRight)),
      cell('TR', 1, upperRight),
      cell('BR', 2, compose(inLevel, upperRight)),
      cell('BL', 3, compose(inLevel, compose(inUpright, upperRight))),
    ],
    outerJointed: [],
    columns: null,
  }
}

/** The upper right quadrant is the second of the run, so the other side of the first one is up. */
function layUpperRight(recipe: DiamondRecipe, sizes: Sizes): Transform<'window', 'panel'> {
  const degrees = recipe.angle === 'mid-sides' ? midSidesAngle(sizes) : recipe.angle
  const slant = (degrees * Math.PI) / 180
  // away from the upright seam: down to the level one, or up from the centre to the corner
  const outward = recipe.runs === 'round' ? slant : -slant
  const grain = recipe.numberedEnds === 'inside' ? outward : outward + Math.PI
  const isOver = recipe.sideUp === 'numbered'
  return compose(
    translation<'panel'>(sizes.width / 4, -sizes.length / 4),
    compose(rotation<'panel'>(grain - Math.PI / 2), layAt(point(0, 0), isOver, false)),
  )
}

/** The upright seams join two pairs, the level one the pairs. */
const quadrantBounds = (isTop: boolean, isLeft: boolean): readonly Bound[] => [
  { edge: isLeft ? leftOf(0) : rightOf(0), joint: 'mitre' },
  { edge: isTop ? above(0) : below(0), joint: 'cross' },
]
