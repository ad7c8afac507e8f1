import type { DerivedPart } from '../../core/derive'
import { hammerOrder, hammerSentences } from '../../core/press/hammer-work'
import type { LengthUnit } from '../../core/units/unit'

const BY_THE_MAP =
  'The seams of this face don’t all run from end to end: draw them on the core by the seam map, lay the piece on the centre first, then outwards, and cut through both leaves wherever two overlap.'

/** How a face is laid leaf by leaf: in order where its strips run from end to end, else by the seam map. */
export function hammerWords({ plan, pieces, sizes: { core } }: DerivedPart, unit: LengthUnit): readonly string[] {
  const columns = plan.columns ?? []
  if (columns.length === 0 || columns.length !== pieces.length) return [BY_THE_MAP]
  // lines are set out from the edges of the core that lies on the bench
  const borders = [core.min.x, ...columns.slice(1).map(({ from }) => from), core.max.x]
  return hammerSentences(hammerOrder(borders), unit)
}
