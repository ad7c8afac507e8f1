import { closedLine } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { placed } from '../drawing/placed'
import { boxHeight, boxWidth } from '../geometry/box'
import { point } from '../geometry/point'
import { transformRing } from '../geometry/polygon'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import type { LengthUnit } from '../units/unit'
import { faceDimensions } from './face-dimensions'
import { faceItems } from './face-items'
import type { JudgedFace } from './judged-face'

/** The em of letters on a face that is drawn 184 mm wide, and the room round it for letters and dimensions. */
const LETTER = 4.6
const ROOM = 30
const USUAL = 184

/**
 * A face at full scale with its dimensions; a lying part with its numbered ends to the left. It is looked at as a
 * whole: letters, arrow heads and pens are as large against the face as they would be on a page.
 */
export function drawFace(face: JudgedFace, unit: LengthUnit): Drawing {
  const { sheet } = face.sizes
  const turned = face.part.lying
  const [across, along] = turned ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  const larger = Math.max(1, Math.min(across, along * 1.4) / USUAL)
  const room = ROOM * larger
  const fullScale = turned
    ? layLeft(room - sheet.min.y, room + sheet.max.x)
    : translation<'panel', 'sheet'>(room - sheet.min.x, room - sheet.min.y)
  const panelToSheet = compose(scaling(1 / larger), fullScale)
  const items: readonly Item[] = [
    ...face.pieces.map(({ cell }) => closedLine('wood', transformRing(panelToSheet, cell.face.ring))),
    ...faceItems(face, { panelToSheet, size: LETTER }),
    ...faceDimensions(face, panelToSheet, unit, LETTER),
  ]
  return {
    title: face.part.name,
    extent: { min: point(0, 0), max: point(across + 2 * room, along + 2 * room) },
    items: placed(items, scaling(larger)).map((item) => withPen(item, larger)),
  }
}

const scaling = (by: number): Transform<'sheet', 'sheet'> => ({ a: by, b: 0, c: 0, d: by, e: 0, f: 0 })

function withPen(item: Item, larger: number): Item {
  if (item.kind === 'arc') return { ...item, pen: item.pen * larger }
  if (item.kind !== 'line') return item
  return { ...item, pen: item.pen * larger, dash: item.dash && item.dash.map((length) => length * larger) }
}

/** A quarter turn that puts the numbered ends, which are up, to the left: a rotation, never a mirror. */
const layLeft = (x: number, y: number): Transform<'panel', 'sheet'> =>
  compose(translation<'sheet'>(x, y), rotation<'panel', 'sheet'>(-Math.PI / 2))
