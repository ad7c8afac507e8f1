import { point, type Point } from '../geometry/point'
import { compose, rotation, translation } from '../geometry/transform'
import { layAt, type Bound, type Bundle, type Joint, type Plan, type Sizes } from './pattern'
import type { RadialRecipe } from './recipe'

export const USUAL_RADIAL: RadialRecipe = {
  pattern: 'radial',
  match: 'book',
  count: 'fewest',
  firstLeaf: 1,
  firstSeam: 0,
  centre: { x: 0, y: 0 },
  spine: 'right',
  laying: 'by spine',
  order: 'in a circle',
  numberedEnds: 'inside',
  // common practice: 0.05 to 0.1 a wedge
  cutFull: 0.05,
  eachFrom: 'one leaf',
}

/** Six or more; a book match closes with an even number only. */
export const RADIAL_COUNTS = { min: 6, max: 48, step: 2 }

/**
 * `count` wedges of equal angle round the recipe's centre, grain on the bisector, clockwise from the first seam. Every
 * wedge's window has its tip at the origin; it is cut wider than its share by the recipe's `cutFull`.
 */
export function planRadial(recipe: RadialRecipe, _sizes: Sizes, count: number, bundle: Bundle): Plan {
  const angle = (2 * Math.PI) / count
  const start = (recipe.firstSeam * Math.PI) / 180
  const overs = wedgeTurns(recipe, count)
  const laying = layingRound(recipe, overs, bundle)
  // anticlockwise the run starts at the second wedge, so that the first pair is the same one
  const along = (i: number) => (laying === 'clockwise' ? i : (count + 1 - i) % count)
  const rankOf = (i: number) => (recipe.order === 'in a circle' ? along(i) : rankBothWays(along(i), count))
  const full = (recipe.cutFull * Math.PI) / 180
  // cut full alike on both sides of its bisector: the point stays
  const between = (i: number, wider: number) =>
    wedgeBounds(
      recipe.centre,
      start + i * angle - wider / 2,
      start + (i + 1) * angle + wider / 2,
      jointOf(i, count),
      jointOf(i + 1, count),
    )
  return {
    cells: overs.map((over, i) => {
      const from = start + i * angle
      const outward = from + angle / 2
      const turn = recipe.numberedEnds === 'inside' ? outward - Math.PI / 2 : outward + Math.PI / 2
      return {
        id: `W${i + 1}`,
        rank: rankOf(i),
        bounds: between(i, 0),
        ...(full > 0 && { cutBounds: between(i, full) }),
        lay: compose(
          translation<'panel'>(recipe.centre.x, recipe.centre.y),
          compose(rotation<'panel'>(turn), layAt(point(0, 0), over, false)),
        ),
        turn: { turnedOver: over, spun: null },
      }
    }),
    outerJointed: [],
    columns: null,
  }
}

/**
 * Which leaf of the run lies in wedge i when it is laid from the first leaf both ways, 1 2 4 6 … 5 3: no neighbours are
 * then more than two leaves apart, where a circle puts the last leaf beside the first. The order is common practice.
 */
const rankBothWays = (i: number, count: number): number =>
  i === 0 ? 0 : i <= Math.floor(count / 2) ? 2 * i - 1 : 2 * (count - i)

/** The seams along which the two halves are trued and joined. */
const jointOf = (seam: number, count: number): Joint =>
  count % 2 === 0 && (seam * 2) % count === 0 ? 'diameter' : 'radial'

/**
 * In a book match neighbours alternate. Opened on the left edge, the first pair has the left edges of its leaves at the
 * seam between them: clockwise of a wedge that points down lies its left edge, when the numbered end is inside.
 */
function wedgeTurns(recipe: RadialRecipe, count: number): readonly boolean[] {
  if (recipe.match === 'slip') return Array.from({ length: count }, () => false)
  // a booked pair is opened within its wedge, and the first lies as it was made
  const isPair = recipe.eachFrom === 'booked pair'
  const firstIsOver = !isPair && (recipe.spine === 'left') !== (recipe.numberedEnds === 'inside')
  return Array.from({ length: count }, (_, i) => (i % 2 === 0 ? firstIsOver : !firstIsOver))
}

function layingRound(recipe: RadialRecipe, overs: readonly boolean[], bundle: Bundle): 'clockwise' | 'anticlockwise' {
  if (recipe.laying !== 'by spine') return recipe.laying
  if (recipe.match === 'slip') return 'clockwise'
  if (recipe.eachFrom === 'booked pair') return beyondEarlierLeaf(recipe, bundle)
  // the wedge that shows the far face of its leaf is the earlier one of a pair that shares a knife cut
  return overs[0] !== bundle.numberFacesNext ? 'clockwise' : 'anticlockwise'
}

/**
 * A pair that is turned over begins with its later leaf where one that lies as it was made begins with its earlier one:
 * the second pair goes to the side on which the earlier leaf of the first lies, so that both neighbours are near.
 */
function beyondEarlierLeaf(
  { spine, numberedEnds }: RadialRecipe,
  { numberFacesNext }: Bundle,
): 'clockwise' | 'anticlockwise' {
  const isAtLeft = (spine === 'right') === numberFacesNext
  // clockwise of a wedge that points down lies its left edge
  return isAtLeft === (numberedEnds === 'inside') ? 'clockwise' : 'anticlockwise'
}

function wedgeBounds(
  centre: Point<'panel'>,
  from: number,
  to: number,
  fromJoint: Joint,
  toJoint: Joint,
): readonly Bound[] {
  const onRay = (angle: number): Point<'panel'> => point(centre.x + Math.cos(angle), centre.y + Math.sin(angle))
  return [
    { edge: { a: centre, b: onRay(from) }, joint: fromJoint },
    { edge: { a: onRay(to), b: centre }, joint: toJoint },
  ]
}
