import type { Finding } from '../finding'
import { otherFlitch, type LaidFace, type Piece } from '../fit/lay-face'

/** What is to be told of a leaf that is not of the field's flitch: the name of its own. */
export function ofOther(face: LaidFace, piece: Piece): Finding['about'] {
  const name = otherFlitch(face, piece)
  return name === null ? {} : { ofFlitch: name }
}
