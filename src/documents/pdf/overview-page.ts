import { boxAround, boxHeight, boxWidth, type Box } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import type { Transform } from '../../core/geometry/transform'
import { fill, frame, text } from '../../core/drawing/build'
import { SMALLEST_TEXT, type Drawing, type Item } from '../../core/drawing/drawing'
import { placed } from '../../core/drawing/placed'
import { CAP_HEIGHT, textCutTo, textLines, textWidth } from '../../core/drawing/text-width'
import { printedTiles } from '../../core/drawing/tiling'
import type { PdfPage } from './pdf-document'
import { pageWindow, sheetFoot, sheetPage, type TileSheet } from './tile-sheet'

const TITLE = 8
const TEXT = 4.2
const LINE = 5.8

/** The first page: what to do with the sheets, and a small map of where each belongs. */
export function overviewPage(drawing: Drawing, sheet: TileSheet): PdfPage {
  const { min, max } = pageWindow(sheet)
  const title = text(point(min.x, min.y + TITLE * CAP_HEIGHT), textCutTo(sheet.title, max.x - min.x, TITLE, 'bold'), {
    size: TITLE,
    weight: 'bold',
  })
  const words = paragraphs(sentences(sheet), point(min.x, min.y + 13), max.x - min.x)
  const mapBox = { min: point<'sheet'>(min.x, words.end + 5), max: point<'sheet'>(max.x, max.y - 2) }
  return sheetPage(sheet, {
    label: 'Plan',
    bookmark: `${sheet.title}: plan`,
    items: [title, ...words.items, ...map(drawing, sheet, mapBox), ...sheetFoot(sheet, 'Plan', 'Where the tiles lie')],
  })
}

function sentences(sheet: TileSheet): string[] {
  const { tiling, paperName, correction, checkBar } = sheet
  const { columns, rows, orientation } = tiling
  const across = `${columns} ${columns === 1 ? 'column' : 'columns'}`
  const down = `${rows} ${rows === 1 ? 'row' : 'rows'}`
  const corrected = correction.x !== 1 || correction.y !== 1
  const asKnown = (scale: number) => (100 / scale).toFixed(1)
  return [
    `${printedTiles(tiling)} tiles on ${paperName}, ${orientation}: ${across}, ${down}, named as on the map below.`,
    'Print at actual size (100 %), never fitted to the page. They come out row by row, from left to right.',
    ...(corrected
      ? [
          `Drawn larger for a printer whose bars measured ${asKnown(correction.x)} mm across this page and ${asKnown(correction.y)} mm down it: now they must measure 100.`,
        ]
      : []),
    ...(checkBar ? ['Measure the bars on every tile before cutting. All must be right to half a millimetre.'] : []),
    tiling.overlap > 0
      ? 'Cut each tile along its full hairlines, left and upper. Lay the cut edge on the dashed line of the tile before, cross on cross, and tape.'
      : 'Cut each tile along all its hairlines. Lay them edge to edge, half cross to half cross, and tape.',
    ...longLengths(sheet),
  ]
}

/** Longer than this, paper is not to be relied on alone, mm. */
const PAPER_TRUSTED = 500

/** Paper grows and shrinks across its grain by 0.3 to 0.5 % from dry weather to damp: on a metre, 3 to 5 mm. */
function longLengths({ tiling: { pages } }: TileSheet): string[] {
  const all = boxAround(pages.filter(({ blank }) => !blank).flatMap(({ window }) => [window.min, window.max]))
  if (Math.max(boxWidth(all), boxHeight(all)) <= PAPER_TRUSTED) return []
  return [
    `Paper moves with the weather, some millimetres on a metre: check every length over ${PAPER_TRUSTED} mm against the figures, with a steel rule.`,
  ]
}

function paragraphs(sentences: readonly string[], at: Point<'sheet'>, width: number) {
  let y = at.y
  const items: Item[] = []
  for (const sentence of sentences) {
    for (const words of textLines(sentence, width, TEXT)) {
      y += LINE
      items.push(text(point(at.x, y), words, { size: TEXT }))
    }
    y += 1.2
  }
  return { items, end: y }
}

/** The tiles and the strokes of the drawing, as large as the box takes; its texts would be too small to read. */
function map(drawing: Drawing, sheet: TileSheet, box: Box<'sheet'>): Item[] {
  const printed = sheet.tiling.pages.filter(({ blank }) => !blank)
  const all = boxAround(printed.flatMap(({ window }) => [window.min, window.max]))
  const size = Math.min(boxWidth(box) / boxWidth(all), boxHeight(box) / boxHeight(all), 1)
  const left = box.min.x + (boxWidth(box) - boxWidth(all) * size) / 2
  const toMap: Transform<'sheet', 'sheet'> = {
    a: size,
    b: 0,
    c: 0,
    d: size,
    e: left - all.min.x * size,
    f: box.min.y - all.min.y * size,
  }
  const tiles = printed.map(({ window }) => frame('mark', window, { pen: 0.25 }))
  return [
    ...placed(thinned(drawing.items), toMap),
    ...placed(tiles, toMap),
    ...printed.flatMap(({ name, window }) => mapName(name, window, toMap)),
  ]
}

function thinned(items: readonly Item[]): Item[] {
  return items.flatMap((item): Item[] => {
    if (item.kind !== 'line' && item.kind !== 'arc') return []
    const thin = { ...item, pen: 0.13, colour: '#707070' }
    return [thin.kind === 'line' ? { ...thin, dash: null } : thin]
  })
}

/** On a white ground, in the middle of its tile. */
function mapName(name: string, window: Box<'sheet'>, { a, e, f }: Transform<'sheet', 'sheet'>): Item[] {
  const size = Math.min(7, Math.max(SMALLEST_TEXT, Math.min(boxWidth(window), boxHeight(window)) * a * 0.3))
  const x = ((window.min.x + window.max.x) / 2) * a + e
  const y = ((window.min.y + window.max.y) / 2) * a + f
  const [half, cap] = [textWidth(name, size, 'bold') / 2 + size * 0.2, (size * CAP_HEIGHT) / 2]
  const pad = size * 0.2
  const ground = [
    point<'sheet'>(x - half, y - cap - pad),
    point<'sheet'>(x + half, y - cap - pad),
    point<'sheet'>(x + half, y + cap + pad),
    point<'sheet'>(x - half, y + cap + pad),
  ]
  return [fill('text', ground, '#ffffff'), text(point(x, y + cap), name, { size, weight: 'bold', anchor: 'middle' })]
}
