import { translation, compose, type Transform } from '../geometry/transform'

/** Where a piece comes from when leaves give several, one behind the other along the grain. */
export interface Share {
  /** Counted from 0. */
  readonly leaf: number
  /** How many pieces lie before it on its leaf. */
  readonly before: number
}

/** Piece `i` of `pieces`, dealt in order to `leaves` leaves (no more than there are pieces) as evenly as can be. */
export function shareOf(i: number, pieces: number, leaves: number): Share {
  const leaf = Math.floor((i * leaves) / pieces)
  return { leaf, before: i - Math.ceil((leaf * pieces) / leaves) }
}

/** A lay whose window lies so far along the grain behind the first one of its leaf. */
export const fartherAlong = (lay: Transform<'window', 'panel'>, by: number): Transform<'window', 'panel'> =>
  by === 0 ? lay : compose(lay, translation<'window'>(0, -by))

/** The fewest leaves by length alone, for `pieces` of which one begins every `pitch` mm; behind the last nothing is kept, so the room is longer by that. */
export const leavesByLength = (pieces: number, pitch: number, room: number): number =>
  Math.ceil(pieces / Math.max(1, Math.floor(room / pitch)))
