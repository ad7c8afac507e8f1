import { circle, crossMark, fill } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { boxRing } from '../geometry/box'
import { point, type Point } from '../geometry/point'
import { transformPoint, type Transform } from '../geometry/transform'
import type { PanelPin, PanelPins } from '../templates/panel-pins'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { JudgedFace } from './judged-face'

const PIN_RADIUS = 1.4

/** The corners of a core that has four, which the taped sheet is laid by, and the pins that hold it there. */
export function coreMarks(
  { part, sizes }: JudgedFace,
  pins: PanelPins | null,
  panelToSheet: Transform<'panel', 'sheet'>,
): readonly Item[] {
  const corners = part.outline.shape === 'rectangle' ? boxRing(sizes.core) : []
  return [
    ...corners.flatMap((corner) => crossMark('mark', transformPoint(panelToSheet, corner), 5)),
    ...(pins ?? []).flatMap(({ at }) => pinMark(transformPoint(panelToSheet, at))),
  ]
}

const pinMark = (at: Point<'sheet'>): readonly Item[] => [
  fill('mark', diamondRound(at, PIN_RADIUS * 1.3), '#ffffff'),
  circle('mark', at, PIN_RADIUS, { pen: 0.4 }),
  ...crossMark('mark', at, PIN_RADIUS * 4),
]

const diamondRound = ({ x, y }: Point<'sheet'>, reach: number): readonly Point<'sheet'>[] => [
  point(x - reach, y),
  point(x, y - reach),
  point(x + reach, y),
  point(x, y + reach),
]

/** What the marks mean, and where the pins stand. */
export function coreMarkWords({ part }: JudgedFace, pins: PanelPins | null, unit: LengthUnit): string {
  const corners = part.outline.shape === 'rectangle' ? 'Crosses: corners of the core as pressed. ' : ''
  if (!pins)
    return `${corners}The core has no waste to take pins: tape over its edges at the centre lines holds the sheet.`
  const places = pins.map((pin) => pinPlace(pin, unit)).join('; ')
  return `${corners}Ringed crosses: two pins through the waste into the core, against creep on wet glue: ${places}. Out with them before the panel is sawn to size.`
}

function pinPlace({ side, beside, inside }: PanelPin, unit: LengthUnit): string {
  const show = (length: number) => showLength(length, unit, 'place')
  const isEnd = side === 'top' || side === 'bottom'
  const way = isEnd ? (beside < 0 ? 'left of' : 'right of') : beside < 0 ? 'above' : 'below'
  return `${show(inside)} in from the core’s ${side} edge, ${show(Math.abs(beside))} ${way} the centre line`
}
