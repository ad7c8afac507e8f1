import { distance } from '../geometry/point'
import { determinant } from '../geometry/transform'
import type { Part } from '../job/job'
import { depthShown, numberFacesNext, runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import { leavesEach } from '../patterns/jointed-sheet'
import type { PlannedCell } from '../patterns/pattern'
import { planRecipe } from '../patterns/plan-recipe'
import type { RadialRecipe } from '../patterns/recipe'
import { patternSizes } from '../faces/face'
import type { Shop } from '../shop'

/** What an order of leaves round a sunburst brings together at its worst seam. */
export interface RingOrder {
  readonly order: RadialRecipe['order']
  /** How many leaves two neighbours are apart in the run. */
  readonly leaves: number
  /** How far apart in the log the two faces lie, mm. */
  readonly apart: number
  /** How far the two leaves have drifted against each other, mm; the windows are shifted by as much. */
  readonly drift: number
}

/** Both orders for a sunburst of `count` wedges; null where there are not leaves enough for it. */
export function ringOrders(
  part: Part,
  recipe: RadialRecipe,
  { flitch, shop }: { readonly flitch: Flitch; readonly shop: Shop },
  count: number,
): readonly RingOrder[] | null {
  const leaves = count * leavesEach(recipe)
  const run = runOfLeaves(flitch, recipe.firstLeaf, leaves)
  if (run.length < leaves) return null
  return (['in a circle', 'both ways'] as const).map((order) => {
    const bundle = { numberFacesNext: numberFacesNext(flitch) }
    const { cells } = planRecipe({ ...recipe, order }, patternSizes(part, shop), count, bundle, null)
    const round = cells.flatMap((cell) => clockwise(cell, recipe))
    const pairs = round.map((lain, i) => [lain, round[(i + 1) % round.length]!] as const)
    const shown = ({ rank, turn }: Lain) => depthShown(flitch, run[rank]!.number, turn.turnedOver)
    return {
      order,
      leaves: Math.max(...pairs.map(([a, b]) => Math.abs(a.rank - b.rank))),
      apart: Math.max(...pairs.map(([a, b]) => Math.abs(shown(a) - shown(b)))),
      drift: Math.max(...pairs.map(([a, b]) => distance(run[a.rank]!.drift, run[b.rank]!.drift))),
    }
  })
}

type Lain = Pick<PlannedCell, 'rank' | 'turn'>

/** The leaves of a wedge as one passes them going round: the left one of a pair that lies as it was made comes last. */
function clockwise({ strips, lay, ...cell }: PlannedCell, { numberedEnds }: RadialRecipe): readonly Lain[] {
  if (!strips) return [cell]
  const leftIsLast = determinant(lay) > 0 === (numberedEnds === 'inside')
  return leftIsLast ? [...strips].reverse() : strips
}
