import type { DerivedPart } from '../../core/derive'
import type { Point } from '../../core/geometry/point'
import type { PartId } from '../../core/ids'
import type { Flitch } from '../../core/leaves/flitch'
import type { Leaf } from '../../core/leaves/leaf'
import { bareLength } from '../../core/units/show-length'
import type { LengthUnit } from '../../core/units/unit'
import { leavesInWords } from './flitch-words'

/** A flitch in a few words: how many leaves, and what is out of the ordinary about them. */
export function flitchInShort({ leaves, missing }: Flitch): string {
  const flawed = leaves.filter(({ defects }) => defects.length > 0).length
  const spare = leaves.filter(({ state }) => state === 'spare').length
  const aside = leaves.filter(({ state }) => state === 'set aside').length
  const gone = missing.reduce((sum, { count }) => sum + count, 0)
  return [
    leavesInWords(leaves.length),
    flawed ? `${flawed} with defects` : '',
    spare ? `${spare} spare` : '',
    aside ? `${aside} set aside` : '',
    gone ? `${gone} missing` : '',
  ]
    .filter((words) => words !== '')
    .join(', ')
}

/** `–` where there is none, else across and along. */
export function driftInWords({ x, y }: Point<'leaf'>, unit: LengthUnit): string {
  if (x === 0 && y === 0) return '–'
  return `${bareLength(x, unit, 'seam')}, ${bareLength(y, unit, 'seam')}`
}

/** A piece of a part that is cut from a leaf. */
export interface Taken {
  readonly part: PartId
  readonly name: string
  readonly cell: string
}

/** Which parts have taken wood from a leaf, in the order of the parts. */
export const takenFrom = (leaf: Leaf, flitch: Flitch, parts: readonly DerivedPart[]): readonly Taken[] =>
  parts.flatMap(({ part, pieces }) =>
    pieces
      .filter((piece) => piece.flitch.id === flitch.id && piece.leaf?.number === leaf.number)
      .map(({ cell }) => ({ part: part.id, name: part.name, cell: cell.id })),
  )

/** `1st`, `2nd`, `11th`. */
export function ordinal(n: number): string {
  const teen = n % 100 > 10 && n % 100 < 14
  const end = teen ? 'th' : (['th', 'st', 'nd', 'rd'][n % 10] ?? 'th')
  return `${n}${end}`
}
