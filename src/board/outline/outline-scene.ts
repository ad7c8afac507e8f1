import { findLeaf, leafOutline } from '../../core/leaves/bundle'
import { ringEdges, type Edge, type Ring } from '../../core/geometry/polygon'
import type { Flitch } from '../../core/leaves/flitch'
import type { DefectKind } from '../../core/leaves/leaf'
import type { LengthUnit } from '../../core/units/unit'
import type { BoardColours, BoardTarget, LeafPictures, OutlineScene, OutlineTool } from '../board-types'
import { leafWood } from '../face/face-scene'

export interface OutlineSceneOptions {
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly tool: OutlineTool
  readonly drawnKind: DefectKind
  readonly pictures?: LeafPictures
  readonly selected?: BoardTarget | null
  /** Edges that were unsure when the outline was found. */
  readonly unsure?: readonly Edge<'leaf'>[]
}

/** A leaf with its outline and defects to be edited; null where the flitch has no such leaf. */
export function outlineScene(flitch: Flitch, number: number, options: OutlineSceneOptions): OutlineScene | null {
  const leaf = findLeaf(flitch, number)
  if (!leaf) return null
  const outline = leafOutline(flitch, leaf)
  return {
    label: `Outline of leaf ${number}: ${outline.length} points, ${leaf.defects.length} defects. Tab goes from point to point, arrow keys move a point, Insert adds one, Delete takes one away.`,
    unit: options.unit,
    colours: options.colours,
    number,
    outline,
    unsure: stillThere(outline, options.unsure ?? []),
    wood: leafWood(flitch, leaf, options.pictures ?? null),
    tool: options.tool,
    drawnKind: options.drawnKind,
    selected: options.selected ?? null,
  }
}

/** Those of some edges that are edges of the outline as it is now. */
function stillThere(outline: Ring<'leaf'>, edges: readonly Edge<'leaf'>[]): readonly Edge<'leaf'>[] {
  if (edges.length === 0) return []
  const nameOf = ({ a, b }: Edge<'leaf'>) => [a.x, a.y, b.x, b.y].map((mm) => mm.toFixed(2)).join(' ')
  const known = new Set(edges.map(nameOf))
  return ringEdges(outline).filter((edge) => known.has(nameOf(edge)))
}
