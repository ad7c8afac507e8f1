import { fill, frame, line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import { textCutTo, textLines } from '../drawing/text-width'
import { point } from '../geometry/point'
import { layerLine } from '../press/layer-words'
import type { Pressing } from '../press/pressing'
import { sectionBands, type SectionBand } from '../press/section'
import type { LengthUnit } from '../units/unit'

/** Least height of a layer that has its words beside it. */
const ROW = 14
/** From one line of words to the next. */
const LINE = 4.2

export interface DrawnSection {
  readonly items: readonly Item[]
  readonly bottom: number
}

/** The section as it lies in the press, show face up, its thickness enlarged; each layer with its words beside it. */
export function sectionItems(
  pressing: Pressing,
  unit: LengthUnit,
  at: { x: number; y: number },
  width: number,
): DrawnSection {
  const { layers } = pressing
  const bands = sectionBands(layers, Math.max(52, layers.length * ROW))
  const picture = width * 0.3
  let y = at.y
  const items = bands.flatMap((band): Item[] => {
    const room = width - picture - 3
    const what = textLines(layerLine(layers[band.layer]!, unit), room, SMALLEST_TEXT)
    const height = Math.max(ROW, band.shownTo - band.shownFrom, (what.length + 1) * LINE + 1.5)
    const box = { min: point<'sheet'>(at.x, y), max: point<'sheet'>(at.x + picture, y + height) }
    const middle = y + height / 2
    const left = at.x + picture + 3
    const first = middle + 1.4 - (what.length * LINE) / 2
    const drawn = [
      fill(
        'wood',
        [box.min, point(box.max.x, box.min.y), box.max, point(box.min.x, box.max.y)],
        tone(layers[band.layer]!.kind),
      ),
      ...grainItems(band.grain, at.x, y, picture, height),
      frame('mark', box, { pen: 0.25 }),
      text(point(left, first), textCutTo(big(band.name), room, 3.8, 'bold'), { size: 3.8, weight: 'bold' }),
      ...what.map((words, i) => text(point(left, first + LINE * (i + 1)), words)),
    ]
    y += height
    return drawn
  })
  return { items, bottom: y }
}

const big = (words: string): string => words.replace(/^the /, '').replace(/^./, (c) => c.toUpperCase())

/** Little ink: wood a shade darker than board. */
const tone = (kind: string): string => (kind === 'board' ? '#f4f4f4' : '#dddddd')

/** Dots for end grain, strokes for grain that runs along the cut, slanted ones askew. */
function grainItems(grain: SectionBand['grain'], x: number, y: number, width: number, height: number): Item[] {
  if (grain === 'none') return []
  const rows = Math.max(1, Math.floor(height / 4))
  const items: Item[] = []
  for (let row = 0; row < rows; row++) {
    const level = y + ((row + 0.5) * height) / rows
    const first = x + 2 + (row % 2) * 1.5
    for (let left = first; left < x + width - 3; left += grain === 'lengthwise' ? 8 : 3)
      items.push(mark(grain, left, level))
  }
  return items
}

function mark(grain: SectionBand['grain'], x: number, y: number): Item {
  const stroke = (dx: number, dy: number): Item => line('mark', [point(x, y), point(x + dx, y + dy)], { pen: 0.2 })
  switch (grain) {
    case 'lengthwise':
      return stroke(6, 0)
    case 'askew':
      return stroke(2, -1)
    case 'every way':
      return stroke(Math.cos(x * 7 + y) * 1.2, Math.sin(x * 7 + y) * 1.2)
    default:
      return stroke(0.4, 0)
  }
}
