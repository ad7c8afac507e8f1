import type { RingOrder } from '../fit/ring-orders'
import type { RadialRecipe } from '../patterns/recipe'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** What the order of the leaves round a sunburst does at its worst seam, beside what the other order would do. */
export function ringOrderWords(orders: readonly RingOrder[], taken: RadialRecipe['order'], unit: LengthUnit): string {
  const here = orders.find(({ order }) => order === taken)
  const other = orders.find(({ order }) => order !== taken)
  if (!here || !other) return ''
  const deep = (mm: number) => showLength(mm, unit, 'depth')
  const far = (mm: number) => showLength(mm, unit, 'seam')
  return (
    `At the worst seam leaves ${here.leaves} apart in the run meet: ${deep(here.apart)} apart in the log, drifted ${far(here.drift)} against each other. ` +
    `${other.order === 'both ways' ? 'Both ways from the first' : 'In a circle'} they would be ${other.leaves} leaves, ${deep(other.apart)} and ${far(other.drift)}.`
  )
}
