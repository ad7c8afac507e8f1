import { boxAround, boxCentre, boxRing } from '../../core/geometry/box'
import { point } from '../../core/geometry/point'
import type { Ring } from '../../core/geometry/polygon'
import type { DefectId } from '../../core/ids'
import type { Defect, DefectKind, DefectShape } from '../../core/leaves/leaf'

export const DEFECT_KINDS: readonly { readonly value: DefectKind; readonly name: string }[] = [
  { value: 'knot', name: 'knot' },
  { value: 'hole', name: 'hole' },
  { value: 'split', name: 'split' },
  { value: 'stain', name: 'stain' },
  { value: 'sapwood', name: 'sapwood' },
  { value: 'tear', name: 'tear' },
]

/** What each shape is called, and how it is said in a sentence. */
export const SHAPE_WORDS: Readonly<Record<DefectShape['shape'], string>> = {
  spot: 'a round spot',
  line: 'along a line',
  area: 'an area',
}

/** A defect in the middle of a leaf (a split at its far end), to be put where it belongs. */
export function draftDefect(id: DefectId, shape: DefectShape['shape'], outline: Ring<'leaf'>): Defect {
  const box = boxAround(outline)
  const { x, y } = boxCentre(box)
  switch (shape) {
    case 'spot':
      return { id, kind: 'knot', note: '', shape, centre: point(Math.round(x), Math.round(y)), radius: 10 }
    case 'line': {
      const end = point<'leaf'>(Math.round(x), box.max.y)
      return { id, kind: 'split', note: '', shape, from: end, to: point(end.x, Math.round((box.max.y + y) / 2)) }
    }
    case 'area': {
      const [across, along] = [(box.max.x - box.min.x) / 8, (box.max.y - box.min.y) / 16]
      const ring = boxRing<'leaf'>({ min: point(x - across, y - along), max: point(x + across, y + along) })
      return { id, kind: 'stain', note: '', shape, ring: ring.map((p) => point(Math.round(p.x), Math.round(p.y))) }
    }
  }
}
