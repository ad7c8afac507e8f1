import { boxGrown, type Box, type Edges } from '../geometry/box'
import { point } from '../geometry/point'
import type { Part } from '../job/job'
import type { Sizes } from '../patterns/pattern'

/** The three sizes of a part, about the centre of the finished panel. */
export interface ThreeSizes {
  readonly finished: Box<'panel'>
  readonly core: Box<'panel'>
  readonly sheet: Box<'panel'>
}

export function threeSizes(part: Part): ThreeSizes {
  const finished = {
    min: point<'panel'>(-part.width / 2, -part.length / 2),
    max: point<'panel'>(part.width / 2, part.length / 2),
  }
  const core = boxGrown(finished, part.core)
  return { finished, core, sheet: boxGrown(core, part.overhang) }
}

/** What a pattern is told. */
export const patternSizes = ({ width, length, core, overhang }: Part): Sizes => ({
  width,
  length,
  beyond: addedEdges(core, overhang),
})

const addedEdges = (a: Edges, b: Edges): Edges => ({
  top: a.top + b.top,
  right: a.right + b.right,
  bottom: a.bottom + b.bottom,
  left: a.left + b.left,
})
