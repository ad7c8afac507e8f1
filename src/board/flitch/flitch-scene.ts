import type { DerivedPart } from '../../core/derive'
import { boxAround, boxHeight, boxWidth } from '../../core/geometry/box'
import { leafOutline } from '../../core/leaves/bundle'
import type { Flitch } from '../../core/leaves/flitch'
import type { LengthUnit } from '../../core/units/unit'
import type { BoardColours, FlitchLeaf, FlitchScene, LeafPictures } from '../board-types'
import { leafWood } from '../face/face-scene'
import { takenFrom } from '../leaf/leaf-scene'

export interface FlitchSceneOptions {
  readonly unit: LengthUnit
  readonly colours: BoardColours
  /** All parts of the job: what they take is shown on the leaves. */
  readonly parts: readonly DerivedPart[]
  readonly pictures?: LeafPictures
  readonly selected?: number | null
}

/** A flitch as it is laid out on the floor: its leaves in sequence. */
export function flitchScene(flitch: Flitch, options: FlitchSceneOptions): FlitchScene {
  const leaves = flitch.leaves.map((leaf): FlitchLeaf => {
    const box = boxAround(leafOutline(flitch, leaf))
    return {
      number: leaf.number,
      wood: leafWood(flitch, leaf, options.pictures ?? null),
      state: leaf.state,
      width: boxWidth(box),
      length: boxHeight(box),
      note: leaf.note,
      taken: options.parts.flatMap((part) => takenFrom(part, null, { flitch: flitch.id, leaf: leaf.number }, null)),
    }
  })
  const kept = leaves.filter(({ state }) => state !== 'in use').length
  return {
    label: `${flitch.name}: ${leaves.length} leaves in sequence${kept > 0 ? `, ${kept} of them not in use` : ''}.`,
    unit: options.unit,
    colours: options.colours,
    leaves,
    missing: flitch.missing,
    selected: options.selected ?? null,
  }
}
