import type { Point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'

/** A stretch of an outline of which all edges are sure, or none is. */
export interface OutlineRun {
  readonly line: readonly Point<'leaf'>[]
  readonly isUnsure: boolean
}

/** An outline as stretches, one after the other: dashes run on over its points. `unsure`: by edge, from its first point. */
export function outlineRuns(outline: Ring<'leaf'>, unsure: readonly boolean[]): readonly OutlineRun[] {
  const runs: { line: Point<'leaf'>[]; isUnsure: boolean }[] = []
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    const isUnsure = unsure[i] ?? false
    const last = runs.at(-1)
    if (last?.isUnsure === isUnsure) last.line.push(b)
    else runs.push({ line: [a, b], isUnsure })
  })
  return runs
}
