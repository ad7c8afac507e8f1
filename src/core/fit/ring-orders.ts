import { distance } from '../geometry/point'
import type { Part } from '../job/job'
import { depthShown, numberFacesNext, runOfLeaves } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import { planRadial } from '../patterns/radial'
import type { RadialRecipe } from '../patterns/recipe'
import { patternSizes } from '../faces/face'

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
  flitch: Flitch,
  count: number,
): readonly RingOrder[] | null {
  const run = runOfLeaves(flitch, recipe.firstLeaf, count)
  if (run.length < count) return null
  return (['in a circle', 'both ways'] as const).map((order) => {
    const bundle = { numberFacesNext: numberFacesNext(flitch) }
    const { cells } = planRadial({ ...recipe, order }, patternSizes(part), count, bundle)
    const pairs = cells.map((cell, i) => [cell, cells[(i + 1) % cells.length]!] as const)
    const shown = ({ rank, turn }: (typeof cells)[number]) => depthShown(flitch, run[rank]!.number, turn.turnedOver)
    return {
      order,
      leaves: Math.max(...pairs.map(([a, b]) => Math.abs(a.rank - b.rank))),
      apart: Math.max(...pairs.map(([a, b]) => Math.abs(shown(a) - shown(b)))),
      drift: Math.max(...pairs.map(([a, b]) => distance(run[a.rank]!.drift, run[b.rank]!.drift))),
    }
  })
}
