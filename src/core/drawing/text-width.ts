import { BOLD_ADVANCES, REGULAR_ADVANCES, type AdvanceRun } from './text-advances'

/**
 * How much room a text takes, so that a drawing can keep clear of it. The advances are those of Source Sans 3,
 * the face on every sheet, without kerning, as the writers set it. A character that is not in the table counts
 * as a whole em, so that the room is never too small.
 */
export type Weight = 'regular' | 'bold'

/** Height of the capitals and of the figures, and how far a p hangs below the baseline, in ems. */
export const CAP_HEIGHT = 0.66
export const DESCENT = 0.21

const tables: Readonly<Record<Weight, ReadonlyMap<number, number>>> = {
  regular: readRuns(REGULAR_ADVANCES),
  bold: readRuns(BOLD_ADVANCES),
}

/** Width in mm of one line of text at the em `size` in mm. */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  let thousandths = 0
  for (const character of text.normalize('NFC')) thousandths += tables[weight].get(character.codePointAt(0)!) ?? 1000
  return (thousandths * size) / 1000
}

/** The text in lines no wider than `width`, broken at spaces; a single word wider than that keeps a line to itself. */
export function textLines(text: string, width: number, size: number, weight: Weight = 'regular'): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`
    if (line !== '' && textWidth(longer, size, weight) > width) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return line === '' ? lines : [...lines, line]
}

/** The text, or as much of it as goes into `width` with an ellipsis after it; empty if not even that does. */
export function textCutTo(text: string, width: number, size: number, weight: Weight = 'regular'): string {
  if (textWidth(text, size, weight) <= width) return text
  const characters = [...text]
  while (characters.length > 0) {
    characters.pop()
    const cut = `${characters.join('').trimEnd()}…`
    if (textWidth(cut, size, weight) <= width) return characters.length > 0 ? cut : ''
  }
  return ''
}

function readRuns(runs: readonly AdvanceRun[]): ReadonlyMap<number, number> {
  return new Map(
    runs.flatMap(([first, advances]) => advances.split(' ').map((n, i) => [first + i, Number(n)] as const)),
  )
}
