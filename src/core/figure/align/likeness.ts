import type { GreyPicture } from './grey'

/** A shift of the second picture against the first, in pixels: the spot at (i, j) of the first is compared with (i + across, j + along) of the second. */
export interface PixelShift {
  readonly across: number
  readonly along: number
}

/** How far shifts are tried, pixels, from and to included. */
export interface ShiftRange {
  readonly across: readonly [from: number, to: number]
  readonly along: readonly [from: number, to: number]
}

/** A smaller share of the first picture's wood in common says nothing. */
const LEAST_SHARE = 0.3

/**
 * How alike two pictures are at one shift, −1 to 1: the correlation over what is known in both; null where they have too
 * little wood in common.
 */
export function likenessAt(one: GreyPicture, other: GreyPicture, { across, along }: PixelShift): number | null {
  const [fromI, toI] = [Math.max(0, -across), Math.min(one.width, other.width - across)]
  const [fromJ, toJ] = [Math.max(0, -along), Math.min(one.height, other.height - along)]
  let [n, a, b, aa, bb, ab] = [0, 0, 0, 0, 0, 0]
  for (let j = fromJ; j < toJ; j++) {
    let p = j * one.width + fromI
    let q = (j + along) * other.width + fromI + across
    for (let i = fromI; i < toI; i++, p++, q++) {
      if (one.known[p] === 0 || other.known[q] === 0) continue
      const x = one.values[p]!
      const y = other.values[q]!
      n++
      a += x
      b += y
      aa += x * x
      bb += y * y
      ab += x * y
    }
  }
  if (n < LEAST_SHARE * knownCount(one)) return null
  const spread = Math.sqrt((aa - (a * a) / n) * (bb - (b * b) / n))
  return spread > 1e-9 * n ? (ab - (a * b) / n) / spread : null
}

const counts = new WeakMap<Uint8Array, number>()

function knownCount({ known }: GreyPicture): number {
  const before = counts.get(known)
  if (before !== undefined) return before
  const count = known.reduce((sum, here) => sum + here, 0)
  counts.set(known, count)
  return count
}

/** The likeness at every shift of a range, row by row along, null where it says nothing. */
export interface LikenessMap {
  readonly range: ShiftRange
  readonly at: (shift: PixelShift) => number | null
}

export function likenessMap(one: GreyPicture, other: GreyPicture, range: ShiftRange): LikenessMap {
  const columns = range.across[1] - range.across[0] + 1
  const rows = range.along[1] - range.along[0] + 1
  const scores = Array.from({ length: columns * rows }, (_, i) =>
    likenessAt(one, other, {
      across: range.across[0] + (i % columns),
      along: range.along[0] + Math.floor(i / columns),
    }),
  )
  const at = ({ across, along }: PixelShift): number | null => {
    const [i, j] = [across - range.across[0], along - range.along[0]]
    return i < 0 || j < 0 || i >= columns || j >= rows ? null : scores[j * columns + i]!
  }
  return { range, at }
}
