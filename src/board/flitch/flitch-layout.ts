import { boxAround } from '../../core/geometry/box'
import type { FlitchLeaf, FlitchScene } from '../board-types'
import type { Size, View } from '../view'

/** A leaf in its row. */
export interface FlitchRow {
  readonly leaf: FlitchLeaf
  /** The leaf lying, as it stands on the board. */
  readonly view: View
  /** px from the top of the board: the line of words, and the leaf under it. */
  readonly top: number
  readonly leafTop: number
  readonly bottom: number
  /** Leaves missing after this one. */
  readonly missingAfter: number
}

export const GUTTER = 58
const WORDS = 24
const GAP = 14
const MISSING = 26
const EDGE = 10

/** One scale for all, so that the longest leaf is as wide as the board. */
export function flitchScale({ leaves }: FlitchScene, { width }: Size): number {
  const longest = Math.max(1, ...leaves.map(({ length }) => length))
  return Math.max(20, width - GUTTER - 16) / longest
}

/** The rows from the top; `view.x` and `view.y` say by how much the whole has been moved. */
export function flitchRows(scene: FlitchScene, { scale, x, y }: View): readonly FlitchRow[] {
  let top = y + EDGE
  return scene.leaves.map((leaf) => {
    const { min, max } = boxAround(leaf.wood.outline)
    const leafTop = top + WORDS
    const bottom = leafTop + (max.x - min.x) * scale
    const missingAfter = scene.missing
      .filter(({ after }) => after === leaf.number)
      .reduce((sum, { count }) => sum + count, 0)
    const row: FlitchRow = {
      leaf,
      view: { scale, x: x + GUTTER - min.y * scale, y: leafTop + max.x * scale, quarter: true },
      top,
      leafTop,
      bottom,
      missingAfter,
    }
    top = bottom + GAP + (missingAfter > 0 ? MISSING : 0)
    return row
  })
}

/** The whole height, px. */
export const flitchHeight = (rows: readonly FlitchRow[]): number => {
  const [first, last] = [rows[0], rows.at(-1)]
  return first && last ? last.bottom - first.top + 2 * EDGE : 0
}
