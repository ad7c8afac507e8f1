import type { Piece } from '../fit/lay-face'
import { leafPlace } from '../templates/leaf-place'
import type { WindowTemplate } from '../templates/window-template'
import { roughSize } from '../templates/window-template'
import { boxAround, boxWidth } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { placeFigure } from './figures'

/** One cut as it is read off a card: its number in the picture, a large figure, and from where it is measured. */
export interface CutFigure {
  readonly tag: string
  readonly what: string
  readonly figure: string
  readonly from: string
}

/** The four cuts of a piece on its leaf: two across and two along; by the paper where the piece is no rectangle. */
export function cutFigures(piece: Piece, template: WindowTemplate, unit: LengthUnit): readonly CutFigure[] {
  const { near, far } = leafPlace(piece)
  const say = (length: number) => `${placeFigure(length, unit)} ${unit}`
  const both = (one: number, other: number) =>
    placeFigure(one, unit) === placeFigure(other, unit)
      ? say(one)
      : `${placeFigure(one, unit)}, ${placeFigure(other, unit)} ${unit}`
  const { width, length } = roughSize(template)
  const ends = { near: both(near.left.along, near.right.along), far: both(far.left.along, far.right.along) }
  const sides = both(near.left.across, far.left.across)
  const ofSides =
    placeFigure(near.left.across, unit) === placeFigure(far.left.across, unit) ? '' : ', at the near and the far end'
  const slanted = near.left.along !== near.right.along ? 'at the left and the right' : ''
  if (!template.straight)
    return [
      { tag: '1', what: 'Begins at', figure: ends.near, from: slanted },
      { tag: '2', what: 'Ends at', figure: ends.far, from: 'both from the numbered end' },
      {
        tag: '3',
        what: 'Template',
        figure: template.name,
        from: `${showLength(width, unit, 'seam')} × ${showLength(length, unit, 'seam')} over all, cut by the paper`,
      },
    ]
  return [
    { tag: '1', what: 'Crosscut', figure: ends.near, from: slanted },
    { tag: '2', what: 'Crosscut', figure: ends.far, from: 'both from the numbered end' },
    { tag: '3', what: 'Rip', figure: sides, from: `from the left wild edge${ofSides}` },
    {
      tag: '4',
      what: 'Rip',
      figure: showLength(width, unit, 'seam'),
      from: `wide; then joint to ${showLength(jointedWidth(piece), unit, 'seam')}`,
    },
  ]
}

const jointedWidth = ({ cell }: Piece): number => boxWidth(boxAround(cell.window.ring))
