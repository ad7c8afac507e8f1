import { findLeaf, leafOutline } from '../../core/leaves/bundle'
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
    wood: leafWood(flitch, leaf, options.pictures ?? null),
    tool: options.tool,
    drawnKind: options.drawnKind,
    selected: options.selected ?? null,
  }
}
