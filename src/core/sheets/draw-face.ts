import { dimensionLine } from '../drawing/dimension'
import type { Drawing, Item } from '../drawing/drawing'
import { boxGrown, boxHeight, boxWidth } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { compose, rotation, transformPoint, translation, type Transform } from '../geometry/transform'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { faceItems } from './face-items'
import type { JudgedFace } from './judged-face'

/** A face at full scale with its dimensions; a lying part with its numbered ends to the left. */
export function drawFace(face: JudgedFace, unit: LengthUnit): Drawing {
  const size = Math.max(8, Math.min(face.part.width, face.part.length) / 40)
  const room = size * 6
  const { sheet } = face.sizes
  const turned = face.part.lying
  const [across, along] = turned ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  const panelToSheet = turned
    ? layLeft(room - sheet.min.y, room + sheet.max.x)
    : translation<'panel', 'sheet'>(room - sheet.min.x, room - sheet.min.y)
  return {
    title: face.part.name,
    extent: boxGrown(
      { min: point<'sheet'>(room, room), max: point<'sheet'>(room + across, room + along) },
      { top: room, right: room, bottom: room, left: room },
    ),
    items: [...faceItems(face, { panelToSheet, size }), ...faceDimensions(face, panelToSheet, unit, size)],
  }
}

/** A quarter turn that puts the numbered ends, which are up, to the left: a rotation, never a mirror. */
const layLeft = (x: number, y: number): Transform<'panel', 'sheet'> =>
  compose(translation<'sheet'>(x, y), rotation<'panel', 'sheet'>(-Math.PI / 2))

/** Width and length outside the seam letters, and the finished columns on the other side. */
export function faceDimensions(
  { part, sizes, plan }: JudgedFace,
  panelToSheet: Transform<'panel', 'sheet'>,
  unit: LengthUnit,
  size: number,
): readonly Item[] {
  const at = (x: number, y: number): Point<'sheet'> => transformPoint(panelToSheet, point<'panel'>(x, y))
  const { finished, sheet } = sizes
  const style = { size, layer: 'text' } as const
  const overall = [
    dimensionLine({
      ...style,
      from: at(finished.min.x, sheet.min.y),
      to: at(finished.max.x, sheet.min.y),
      words: showLength(part.width, unit, 'seam'),
      offset: -size * 4,
    }),
    dimensionLine({
      ...style,
      from: at(sheet.min.x, finished.min.y),
      to: at(sheet.min.x, finished.max.y),
      words: showLength(part.length, unit, 'seam'),
      offset: size * 4,
    }),
  ]
  const columns = (plan.columns ?? []).filter(({ from, to }) => to > from)
  const chain = columns.length > 1 ? columns : []
  return [
    ...overall.flat(),
    ...chain.flatMap(({ from, to }) =>
      dimensionLine({
        ...style,
        size: size * 0.85,
        from: at(from, sheet.max.y),
        to: at(to, sheet.max.y),
        words: bareLength(to - from, unit, 'seam'),
        offset: size * 2.2,
      }),
    ),
  ]
}
