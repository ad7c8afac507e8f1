import type { DerivedPart } from '../../core/derive'
import type { PartId } from '../../core/ids'
import type { ShowClass } from '../../core/shop'
import type { LengthUnit } from '../../core/units/unit'
import type { BoardColours, PicturesOf, PartsScene } from '../board-types'
import { faceCells, faceSeams, faceString } from '../face/face-scene'

export interface PartsSceneOptions {
  readonly unit: LengthUnit
  readonly colours: BoardColours
  readonly pictures?: PicturesOf
  readonly selected?: PartId | null
}

const FIRST: readonly ShowClass[] = ['show', 'now and then', 'hidden']
const CLASS_WORDS: Readonly<Record<ShowClass, string>> = {
  show: '',
  'now and then': 'seen now and then',
  hidden: 'hidden',
}

/** The parts of a job with their faces, those that show first. */
export function partsScene(parts: readonly DerivedPart[], options: PartsSceneOptions): PartsScene {
  const ordered = [...parts].sort((p, q) => FIRST.indexOf(p.part.showClass) - FIRST.indexOf(q.part.showClass))
  return {
    label: parts.length === 0 ? 'No parts yet.' : `Parts: ${ordered.map(({ part }) => part.name).join(', ')}.`,
    unit: options.unit,
    colours: options.colours,
    parts: ordered.map((derived) => ({
      id: derived.part.id,
      name: derived.part.name,
      lying: derived.part.lying,
      finished: derived.sizes.finished,
      sheet: derived.sizes.sheet,
      outline: derived.sizes.outlines.finished.ring,
      cells: faceCells(derived, options.pictures),
      seams: faceSeams(derived),
      string: faceString(derived),
      remark: CLASS_WORDS[derived.part.showClass],
    })),
    selected: options.selected ?? null,
  }
}
