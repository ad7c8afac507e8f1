import { lengthSentence } from './length-sentence'
import { quoted } from './plain-typing'
import { countSentence } from './read-count'
import { MOST_LEAVES, type TableTrouble } from './read-leaf-table'
import type { HeadTrouble, LeafColumn } from './table-columns'
import type { LengthUnit } from './unit'

/** Where and why a pasted table was not understood, and what to do. */
export function tableSentence({ line, column, trouble }: TableTrouble, unit: LengthUnit): string {
  const name = column === null ? `Line ${line}` : `Line ${line}, ${column}`
  switch (trouble.about) {
    case 'length':
      return lengthSentence(trouble.trouble, { name, unit })
    case 'number':
      return countSentence(trouble.trouble, { name, min: 1, max: MOST_LEAVES })
    case 'head':
      return headSentence(trouble.trouble, column, line)
    case 'repeat':
      return `${name}: leaf ${trouble.number} already stands in line ${trouble.firstLine}. Give each leaf its own number.`
    case 'extra cell':
      return `${name}: ${quoted(trouble.text)} stands in a column of its own. The columns are number, length, width and note.`
    case 'nothing':
      return `${name}: there are no leaves here. Paste rows of number, length and width, or of length and width.`
    case 'too many rows':
      return `${name}: a flitch has at most ${trouble.max} leaves. Paste the rest as another flitch.`
  }
}

function headSentence(trouble: HeadTrouble, column: LeafColumn | null, line: number): string {
  switch (trouble.trouble) {
    case 'unknown column':
      return `Line ${line}: the column ${quoted(trouble.text)} is not known. Name it number, length, width or note, or leave it out.`
    case 'column twice':
      return `Line ${line}: two columns are named ${column}. Leave one out.`
    case 'column missing':
      return `Line ${line}: no column is named ${column}. Name one so, or leave the line of names out.`
  }
}
