import type { Finding } from '../finding'
import type { LaidFace, Piece } from '../fit/lay-face'

/**
 * Crotch has an end that is up. Tells the pieces whose figure would lie upside down in the panel as it is drawn; where
 * pieces lie round a centre or on the slant there is no such end to keep.
 */
export function checkUpEnd(face: LaidFace): readonly Finding[] {
  if (face.flitch.figure !== 'crotch') return []
  const upright = face.pieces.filter(({ leaf, cell }) => leaf !== null && cell.turn.spun !== null)
  const down = upright.filter((piece) => liesUpsideDown(piece, face.flitch.upEnd))
  if (down.length === 0) return []
  return [
    {
      code: 'up-end-down',
      grade: 'note',
      part: face.part.id,
      place: { on: 'face' },
      measured: down.length,
      limit: 0,
      about: {
        of: face.pieces.length,
        cells: down.map(({ cell }) => cell.id).join(', '),
        end: face.flitch.upEnd,
      },
      remedies: [],
    },
  ]
}

/** The numbered end is up in the panel unless the leaf is spun, or turned over and spun. */
const liesUpsideDown = ({ cell }: Piece, upEnd: 'numbered' | 'far'): boolean =>
  (cell.turn.spun === true) !== (upEnd === 'far')
