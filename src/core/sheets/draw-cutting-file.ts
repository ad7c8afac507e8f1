import { arrow, closedLine, line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { itemsBox } from '../drawing/item-box'
import { placed } from '../drawing/placed'
import type { Cell } from '../faces/cells'
import { otherFlitch, type LaidFace } from '../fit/lay-face'
import { ofFlitch } from '../leaves/flitch-words'
import { boxAround, boxGrown, boxHeight, boxWidth } from '../geometry/box'
import { point } from '../geometry/point'
import { transformPoint, translation } from '../geometry/transform'
import { present } from '../invariant'
import { ok, refused, type Result } from '../result'
import { toolPath, type CuttingTool } from '../templates/cutting-tool'
import { sheetTemplates, type SheetTemplate } from '../templates/sheet-template'
import { windowTemplates, type WindowTemplate } from '../templates/window-template'
import { cellsOf, seamLines, trimRings } from './draw-window-template'
import { sheetInWords } from './template-words'

/** White between two templates, and round all of them, mm. */
const APART = 20

/** The template of which nothing is left. */
export interface NothingToCut {
  readonly template: string
}

/**
 * All templates of a face side by side at full scale, for a machine or a router: the path on `cut`, seams, trims, an
 * arrow to the numbered end, a name. Leaf orientation, numbered side up.
 */
export function drawCuttingFile(face: LaidFace, tool: CuttingTool): Result<Drawing, NothingToCut> {
  const items: Item[] = []
  let x = 0
  for (const template of toCut(face)) {
    const drawn = templateItems(face, template, tool)
    if (!drawn) return refused({ template: template.name })
    const box = present(itemsBox(drawn), 'a template has lines')
    items.push(...placed(drawn, translation(x - box.min.x, -box.min.y)))
    x += boxWidth(box) + APART
  }
  const all = present(itemsBox(items), 'a face has templates')
  const extent = boxGrown(all, { top: APART, right: APART, bottom: APART, left: APART })
  return ok({ title: `${face.part.name}, to cut`, extent, items })
}

interface ToCut extends Pick<WindowTemplate, 'name' | 'rough' | 'window' | 'tags'> {
  readonly joints: SheetTemplate['joints']
  /** What is cut by it. */
  readonly cells: readonly Cell[]
  /** And of which leaves, in words. */
  readonly leaves: string
}

/** What is cut on the leaves, and behind it what is cut from jointed sheets. */
const toCut = (face: LaidFace): readonly ToCut[] => [
  ...windowTemplates(face).map((one) => ({
    ...one,
    joints: [],
    cells: cellsOf(one.pieces),
    leaves: `${leavesInWords(one)}${ofFlitch(one.pieces[0] ? otherFlitch(face, one.pieces[0]) : null)}`,
  })),
  ...sheetTemplates(face).map((one) => ({
    ...one,
    cells: one.sheets.map(({ cell }) => cell),
    leaves: one.sheets.map((sheet) => `${sheetInWords(sheet)}: ${sheet.cell.id}`).join(', '),
  })),
]

/** One template about its own window; null when the tool leaves nothing of it. */
function templateItems(face: LaidFace, template: ToCut, tool: CuttingTool): readonly Item[] | null {
  const path = toolPath(template.rough, tool)
  if (!path) return null
  const toSheet = translation<'window', 'sheet'>(0, 0)
  const onSheet = (ring: WindowTemplate['rough']) => ring.map((p) => transformPoint(toSheet, p))
  const box = boxAround(onSheet(template.rough))
  const middle = (box.min.x + box.max.x) / 2
  const reach = Math.min(40, boxHeight(box) / 4)
  const foot = (box.min.y + box.max.y) / 2 + reach
  return [
    closedLine('cut', onSheet(path)),
    ...seamLines(template).map((along) => line('seam', onSheet(along))),
    ...template.joints.map(({ a, b }) => line('seam', onSheet([a, b]))),
    ...trimRings(face, template.cells).map((ring) => closedLine('trim', onSheet(ring))),
    ...arrow('mark', point(middle, foot), point(middle, foot - reach)),
    text(point(middle, foot + 8), `${face.part.name} ${template.name}`, { anchor: 'middle', size: 5 }),
    text(point(middle, foot + 14), template.leaves, { anchor: 'middle', size: 4 }),
  ]
}

const leavesInWords = ({ pieces }: WindowTemplate): string =>
  pieces.map(({ leaf, cell }) => `${leaf?.number ?? '–'}: ${cell.id}`).join(', ')

/** Why there is no file, in a sentence. */
export const nothingToCut = ({ part }: LaidFace, { template }: NothingToCut): string =>
  `${part.name}: the tool is wider than template ${template}, and nothing is left of it. Take a narrower one.`
