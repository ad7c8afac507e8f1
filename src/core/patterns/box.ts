import { point, type Point } from '../geometry/point'
import type { Edge } from '../geometry/polygon'
import { compose, reflection, rotation, translation, type Transform } from '../geometry/transform'
import { above, below, layAt, leftOf, rightOf, type Bound, type Plan, type PlannedCell, type Sizes } from './pattern'
import type { BoxRecipe } from './recipe'

export const USUAL_BOX: BoxRecipe = {
  pattern: 'box',
  grain: 'along the edges',
  count: 'fewest',
  firstLeaf: 1,
  sideUp: 'numbered',
  numberedEnds: 'outside',
  sheetOf: 1,
}

/** Four pieces, never more. */
export const BOX_COUNT = 4

/** Clockwise from the top, in the order of the run. */
const PIECES = ['T', 'R', 'B', 'L'] as const
type PieceName = (typeof PIECES)[number]

/**
 * Four pieces round the panel, grain along its edges, or across them in a reverse box. Seams stay at 45° from the
 * corners of the finished panel on a panel of any shape, for only there they halve the angle of the grain; on one that
 * is not square they leave a seam on the centre line, as long as width and length differ.
 *
 * One of the two long pieces is laid first and the short ones mirror it; the other long one is the first spun about
 * the centre. The four mirrors compose to a slide of twice the difference, so on a panel that is not square the figure
 * jumps by the difference at the mitres of the spun piece, and cannot do without.
 */
export function planBox(recipe: BoxRecipe, sizes: Sizes): Plan {
  const lays = boxLays(recipe, sizes)
  return {
    cells: PIECES.map((id, rank): PlannedCell => ({
      id,
      rank,
      bounds: pieceBounds(id, sizes),
      lay: lays[id],
      turn: { turnedOver: isTurnedOver(recipe, id), spun: null },
    })),
    outerJointed: [],
    columns: null,
  }
}

/** Neighbours lie opposite sides up; the first of the run as the recipe says. */
const isTurnedOver = ({ sideUp }: BoxRecipe, id: PieceName): boolean =>
  (sideUp === 'other') === (PIECES.indexOf(id) % 2 === 0)

function boxLays(recipe: BoxRecipe, sizes: Sizes): Readonly<Record<PieceName, Transform<'window', 'panel'>>> {
  const { width, length } = sizes
  const across = (id: keyof typeof CORNERS) => {
    const { a, b } = mitre(id, sizes)
    return reflection(a, b)
  }
  const spin = rotation<'panel'>(Math.PI)
  if (width >= length) {
    const T = layFirst(recipe, point(0, -length / 4), 0, isTurnedOver(recipe, 'T'))
    return { T, R: compose(across('TR'), T), B: compose(spin, T), L: compose(across('TL'), T) }
  }
  const L = layFirst(recipe, point(-width / 4, 0), Math.PI / 2, isTurnedOver(recipe, 'L'))
  return { L, T: compose(across('TL'), L), R: compose(spin, L), B: compose(across('BL'), L) }
}

/**
 * A long piece about its middle. `along` is the direction of its edge, from left to right or down: along the edges the
 * numbered end comes first; across them it lies at the rim, or inside.
 */
function layFirst(recipe: BoxRecipe, middle: Point<'panel'>, along: number, isOver: boolean) {
  const inward = along === 0 ? Math.PI / 2 : 0
  const acrossGrain = recipe.numberedEnds === 'outside' ? inward : inward + Math.PI
  const grain = recipe.grain === 'along the edges' ? along : acrossGrain
  return compose(
    translation<'panel'>(middle.x, middle.y),
    compose(rotation<'panel'>(grain - Math.PI / 2), layAt(point(0, 0), isOver, false)),
  )
}

/** Corners of the finished panel, as signs of x and y. */
const CORNERS = { TL: [-1, -1], TR: [1, -1], BR: [1, 1], BL: [-1, 1] } as const

/** The line at 45° from a corner inwards. */
function mitre(corner: keyof typeof CORNERS, { width, length }: Sizes): Edge<'panel'> {
  const [x, y] = CORNERS[corner]
  const a = point<'panel'>((x * width) / 2, (y * length) / 2)
  return { a, b: point(a.x - x, a.y - y) }
}

const reversed = ({ a, b }: Edge<'panel'>): Edge<'panel'> => ({ a: b, b: a })

/** Going inwards from a corner, the piece that comes next clockwise round the panel lies on the left hand. */
function pieceBounds(id: PieceName, sizes: Sizes): readonly Bound[] {
  const [before, after] = MITRES_OF[id]
  const bounds: Bound[] = [
    { edge: reversed(mitre(before, sizes)), joint: 'mitre' },
    { edge: mitre(after, sizes), joint: 'mitre' },
  ]
  const ridge = ridgeOf(id, sizes)
  return ridge ? [...bounds, { edge: ridge, joint: 'side' }] : bounds
}

/** The mitre at which a piece begins, and the one at which it ends, clockwise round the panel. */
const MITRES_OF = { T: ['TL', 'TR'], R: ['TR', 'BR'], B: ['BR', 'BL'], L: ['BL', 'TL'] } as const

/** The seam on the centre line, which the two long pieces share; none on a square. */
function ridgeOf(id: PieceName, { width, length }: Sizes): Edge<'panel'> | null {
  if (width > length) return id === 'T' ? above(0) : id === 'B' ? below(0) : null
  if (length > width) return id === 'L' ? leftOf(0) : id === 'R' ? rightOf(0) : null
  return null
}
