import type { DerivedPart } from '../../core/derive'
import { groupOf, otherFlitch } from '../../core/fit/lay-face'
import { BORDER } from '../../core/faces/window-group'
import { ofFlitch } from '../../core/leaves/flitch-words'
import { showLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'

/** How it stands with the border, beside its fold. */
export function borderState({ part: { border } }: DerivedPart, unit: LengthUnit): string {
  if (!border) return 'none'
  return `${showLength(border.width, unit, 'seam')}${border.string ? ' and a string' : ''}`
}

/** What the border is made of, counted: pieces, and the leaves that they are cut from. */
export function borderPiecesWords(face: DerivedPart): string {
  const { flitch, pieces } = groupOf(face, BORDER)
  const leaves = [...new Set(pieces.flatMap(({ leaf }) => (leaf ? [leaf.number] : [])))]
  const lacking = pieces.filter(({ leaf }) => leaf === null).length
  const from =
    leaves.length === 0
      ? ''
      : ` from ${leaves.length === 1 ? 'leaf' : 'leaves'} ${listed(leaves)}${ofFlitch(otherFlitch(face, { flitch }))}`
  const none = lacking === 0 ? '' : ` For ${lacking} of them no leaf is left.`
  return `${pieces.length} pieces${from}.${none}`
}

const listed = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`
