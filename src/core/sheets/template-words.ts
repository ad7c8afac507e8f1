import type { LaidFace } from '../fit/lay-face'
import { roughSize, type WindowTemplate } from '../templates/window-template'
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
    { words: capital(leavesInWords(template.pieces)), size: 5.4, bold: true },
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
  ]
}

/** What is good to know while cutting; it may stand beside the piece. */
export function templateNotes(face: LaidFace, unit: LengthUnit): readonly Paragraph[] {
  return [
    'Full line: cut. Long dashes: joint to here, the seam. Dash and dot: trimmed to here after pressing.',
    recipeSentence(face.part, face.count, unit),
    ...CUTTING_CAUTIONS,
  ].map((words) => ({ words, size: 3.4, bold: false }))
}
