import { cutLines } from '../fit/cut-lines'
import type { Piece } from '../fit/lay-face'
import { boxRing } from '../geometry/box'
import { unite } from '../geometry/clip'
import { grown } from '../geometry/offset'
import { add, point } from '../geometry/point'
import type { Region } from '../geometry/polygon'
import { leafOutline } from '../leaves/bundle'
import type { Shop } from '../shop'

/**
 * What is gone of each leaf when a made-up one is put together, beyond the wood that comes to lie in the piece: along
 * the lines that are cut, what truing takes off both faces; of a strip, the whole offcut that it is made of. By leaf, in
 * leaf mm; empty for a leaf as it is.
 */
export function lostWood(piece: Piece, { betweenPieces }: Shop): ReadonlyMap<number, Region<'leaf'>> {
  const { made, leaf, flitch } = piece
  if (!made || !leaf) return new Map()
  const { makeUp } = made
  const [sawn, ...others] = cutLines(piece, leafOutline(flitch, leaf))
  if (makeUp.how === 'longer') {
    const lines = sawn ? [sawn, ...others] : others
    const by = Math.max(makeUp.cut.loss, betweenPieces / 2)
    return new Map([[leaf.number, unite(...lines.map(({ a, b }) => grown({ shape: 'line', from: a, to: b }, by)))]])
  }
  const along = sawn ? grown({ shape: 'line', from: sawn.a, to: sawn.b }, betweenPieces / 2) : []
  const moved = makeUp.from === null && makeUp.leaf === null ? leaf.drift : point<'leaf'>(0, 0)
  const { min, max } = makeUp.offcut
  const offcut: Region<'leaf'> = [[boxRing({ min: add(min, moved), max: add(max, moved) })]]
  const source = makeUp.from ?? leaf.number
  return source === leaf.number
    ? new Map([[source, unite(along, offcut)]])
    : new Map([
        [leaf.number, along],
        [source, offcut],
      ])
}
