import type { CellId } from '../ids'
import { invariant } from '../invariant'
import { leftOf, rightOf, type Bound, type Sizes } from './pattern'
import type { Laying, Spine } from './recipe'

/** What one leaf gives to a column, across: from `low` to `high` in its window. */
export interface Band {
  readonly low: number
  readonly high: number
}

/**
 * The borders of columns of equal width, from the left edge of the taped sheet to its right edge, `count` + 1 of them.
 * Equal before trimming: the columns of the taped sheet are equal, in centre balance within each half. Equal after: the
 * finished columns are equal and the outer ones wider by what the sheet stands over.
 */
export function equalColumns(
  { width, beyond }: Sizes,
  count: number,
  equal: 'before trimming' | 'after trimming',
  centred: boolean,
): readonly number[] {
  invariant(count >= 1 && Number.isInteger(count), `${count} columns`)
  const [left, right] = [-width / 2 - beyond.left, width / 2 + beyond.right]
  const border = (i: number): number => {
    if (i === 0) return left
    if (i === count) return right
    if (equal === 'after trimming') return -width / 2 + (i * width) / count
    if (!centred || count % 2 === 1) return left + (i * (right - left)) / count
    // each half has widths of its own where the two sides stand over by different amounts
    const half = count / 2
    return i <= half ? left * (1 - i / half) : (right * (i - half)) / half
  }
  return Array.from({ length: count + 1 }, (_, i) => border(i))
}

/** The seams that bound column i of these borders; the outermost columns are open outwards. */
export function columnBounds(borders: readonly number[], i: number): readonly Bound[] {
  const bounds: Bound[] = []
  if (i > 0) bounds.push({ edge: rightOf(borders[i]!), joint: 'side' })
  if (i < borders.length - 2) bounds.push({ edge: leftOf(borders[i + 1]!), joint: 'side' })
  return bounds
}

/** What stays of column i in the finished panel; from = to where nothing does. */
export function finishedColumn({ width }: Sizes, borders: readonly number[], i: number): { from: number; to: number } {
  const inside = (x: number) => Math.min(width / 2, Math.max(-width / 2, x))
  return { from: inside(borders[i]!), to: inside(borders[i + 1]!) }
}

/** Counted out from the centre: `L2 L1 R1 R2`, or `L1 C R1` for an odd count. */
export function columnId(i: number, count: number): CellId {
  const twiceOff = 2 * i + 1 - count
  if (twiceOff === 0) return 'C'
  const away = Math.floor((Math.abs(twiceOff) + 1) / 2)
  return `${twiceOff < 0 ? 'L' : 'R'}${away}`
}

/**
 * Which columns are turned over, when neighbours open like a book and the pair at seam `hinge` (columns hinge − 1 and
 * hinge) is opened on the spine edge: on the left edge of the leaves, the left one of the pair is turned over.
 */
export function bookTurns(count: number, hinge: number, spine: Spine): readonly boolean[] {
  const leftOfHinge = spine === 'left'
  return Array.from({ length: count }, (_, i) => ((hinge - 1 - i) % 2 === 0 ? leftOfHinge : !leftOfHinge))
}

/**
 * From which side the leaves are laid so that two neighbours show the two faces of one knife cut: the leaf whose
 * numbered face looks towards the other comes first when numbers face the next leaf, else second.
 */
export function layingBySpine(leftIsTurnedOver: boolean, numberFacesNext: boolean): Exclude<Laying, 'by spine'> {
  // turned over, a leaf shows its far face when numbers look back; the far face belongs to the earlier leaf of a pair
  const leftShowsFar = leftIsTurnedOver !== numberFacesNext
  return leftShowsFar ? 'left to right' : 'right to left'
}
