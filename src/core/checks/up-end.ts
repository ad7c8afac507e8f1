import type { Finding } from '../finding'
import { flitchesOf, type LaidFace, type Piece } from '../fit/lay-face'
import type { Flitch } from '../leaves/flitch'

/**
 * Crotch has an end that is up. Tells the pieces whose figure would lie upside down in the panel as it is drawn; where
 * pieces lie round a centre or on the slant there is no such end to keep.
 */
export const checkUpEnd = (face: LaidFace): readonly Finding[] =>
  flitchesOf(face).flatMap((flitch) => upsideDown(face, flitch))

function upsideDown(face: LaidFace, flitch: Flitch): readonly Finding[] {
  if (flitch.figure !== 'crotch') return []
  const pieces = face.pieces.filter((piece) => piece.flitch.id === flitch.id)
  const upright = pieces.filter(({ leaf, cell }) => leaf !== null && cell.turn.spun !== null)
  const down = upright.filter((piece) => liesUpsideDown(piece, flitch.upEnd))
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
        of: pieces.length,
        cells: down.map(({ cell }) => cell.id).join(', '),
        end: flitch.upEnd,
      },
      remedies: [],
    },
  ]
}

/** The numbered end is up in the panel unless the leaf is spun, or turned over and spun. */
const liesUpsideDown = ({ cell }: Piece, upEnd: 'numbered' | 'far'): boolean =>
  (cell.turn.spun === true) !== (upEnd === 'far')
