import type { LaidFace } from '../fit/lay-face'
import type { JointedSheet, SheetTemplate } from '../templates/sheet-template'
import { roughSize, type WindowTemplate } from '../templates/window-template'
import { showAngle } from '../units/read-angle'
import { boxAround, boxHeight, boxWidth } from '../geometry/box'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { CUTTING_CAUTIONS } from './cautions'
import { leavesInWords } from './leaf-words'
import { recipeSentence } from './recipe-sentence'
import type { Paragraph } from './text-block'

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** What must stand on a template, wherever it goes. */
export function templateHeading(face: LaidFace, template: WindowTemplate, unit: LengthUnit): readonly Paragraph[] {
  const { width, length } = roughSize(template)
  const [across, along] = [showLength(width, unit, 'seam'), showLength(length, unit, 'seam')]
  return [
    { words: 'Cut numbered side up', size: 7, bold: true },
    { words: 'The arrow looks to the numbered end', size: 4, bold: false },
    { words: `${face.part.name}, template ${template.name}`, size: 5.4, bold: true },
    { words: capital(leavesInWords(face, template.pieces)), size: 5.4, bold: true },
    {
      words: template.straight ? `Rip ${across}, crosscut ${along}` : `${across} × ${along} over all`,
      size: 5.4,
      bold: false,
    },
    {
      words: template.straight
        ? 'Straight piece: set out by rule, stop and square; the paper is a check'
        : 'The middle of the full line is the size',
      size: 4,
      bold: false,
    },
    ...fullWords(face),
  ]
}

/** A wedge that is not cut to its share says so: the template is wider than the seam map. */
function fullWords({ part: { recipe }, count }: LaidFace): readonly Paragraph[] {
  if (recipe.pattern !== 'radial' || recipe.cutFull === 0) return []
  const words = `Cut ${showAngle(recipe.cutFull)} full: ${showAngle(360 / count + recipe.cutFull)} between the seams`
  return [{ words, size: 4, bold: false }]
}

/** How an angled or curved piece gets a template that lasts; a knife or a bearing runs along it. */
const RIGID =
  'Rigid template: stick the sheet, this face up, to 6 mm board; saw outside the full line and plane until the line is split. Write on the board “this face up” and the leaves. Never paste paper on a show leaf.'

/** What must stand on a template for pieces that are cut from jointed sheets. */
export function sheetHeading(face: LaidFace, template: SheetTemplate, unit: LengthUnit): readonly Paragraph[] {
  const [across, along] = [boxWidth, boxHeight].map((of) => showLength(of(boxAround(template.rough)), unit, 'seam'))
  return [
    { words: 'Cut from a jointed sheet', size: 7, bold: true },
    { words: `This face up: ${numbersInSheet(template.sheets[0]!)}`, size: 5.4, bold: true },
    { words: 'The arrow looks to the numbered ends', size: 4, bold: false },
    { words: `${face.part.name}, sheet template ${template.name}`, size: 5.4, bold: true },
    { words: `${template.sheets.length} sheets: ${template.sheets.map(sheetInWords).join(', ')}`, size: 4, bold: true },
    { words: `${across} × ${along} over all`, size: 5.4, bold: false },
    { words: 'The middle of the full line is the size', size: 4, bold: false },
  ]
}

/** Which leaves show their numbers as the sheet lies when it is made, before it is turned with its piece. */
export function numbersInSheet({ cell, strips }: JointedSheet): string {
  const down = strips.map((strip) => strip.cell.turn.turnedOver !== cell.turn.turnedOver)
  if (down.every((isDown) => !isDown)) return 'all numbers up'
  return down[0] ? 'number down left of the joint, up right of it' : 'number up left of the joint, down right of it'
}

/** A sheet as its leaves from left to right, `3 + 4`. */
export const sheetInWords = ({ strips }: JointedSheet): string =>
  strips.map(({ leaf }) => leaf?.number ?? 'none left').join(' + ')

/** What is good to know while cutting sheets. */
export const sheetNotes = (face: LaidFace, template: SheetTemplate, unit: LengthUnit): readonly Paragraph[] => [
  {
    words:
      'Joint the sheet first, then cut the piece from it. Thick line: the joint; lay it on the joint of the sheet, the numbered ends together.',
    size: 3.4,
    bold: false,
  },
  ...templateNotes(face, template, unit),
]

/** What is good to know while cutting; it may stand beside the piece. */
export function templateNotes(
  face: LaidFace,
  { straight }: Pick<WindowTemplate, 'straight'>,
  unit: LengthUnit,
): readonly Paragraph[] {
  return [
    ...(straight ? [] : [RIGID]),
    'Full line: cut. Long dashes: joint to here, the seam. Dash and dot: trimmed to here after pressing.',
    recipeSentence(face.part, face.count, unit),
    ...CUTTING_CAUTIONS,
  ].map((words) => ({ words, size: 3.4, bold: false }))
}
