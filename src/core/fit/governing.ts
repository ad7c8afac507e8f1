import { boxHeight, boxWidth, regionBox } from '../geometry/box'
import { add } from '../geometry/point'
import type { Region } from '../geometry/polygon'
import type { CellId } from '../ids'
import { withoutMemory, type Answers } from './answers'
import { fieldPieces, type LaidFace, type Piece } from './lay-face'
import { findPlay, groupsOfEqualPieces, type Fitting } from './play'

/** How far a play reaches along the leaf and across it. */
export interface Extent {
  readonly along: number
  readonly across: number
}

/** A leaf that takes room from the others of its run. */
export interface Governing {
  readonly cell: CellId
  readonly leaf: number
  /** The play of all the others; null where they too have no place in common. */
  readonly without: Extent | null
}

/**
 * Each leaf of a field with the play that the others would have without it, those first whose absence gives most room.
 * Leaves that take nothing away are left out.
 */
export function governingLeaves(face: LaidFace, answers: Answers = withoutMemory): readonly Governing[] {
  const pieces = fieldPieces(face).filter(({ leaf }) => leaf !== null)
  if (pieces.length < 2) return []
  const now = playExtent(face.play.region)
  return pieces
    .map((piece) => ({
      cell: piece.cell.id,
      leaf: piece.leaf!.number,
      without: playExtent(
        playOf(
          pieces.filter((other) => other !== piece),
          answers,
        ),
      ),
    }))
    .filter(({ without }) => room(without) > room(now) + 0.05)
    .sort((p, q) => room(q.without) - room(p.without))
}

export const playExtent = (region: Region<'leaf'>): Extent | null => {
  if (region.length === 0) return null
  const box = regionBox(region)
  return { along: boxHeight(box), across: boxWidth(box) }
}

const room = (extent: Extent | null): number => (extent ? 1 + extent.along + extent.across : 0)

export const fittingOf = ({ rough, usable, place }: Piece): Fitting => ({
  rough,
  usable,
  shift: add(place.drift, place.nudge),
})

const playOf = (pieces: readonly Piece[], answers: Answers): Region<'leaf'> =>
  findPlay(groupsOfEqualPieces(pieces.map(fittingOf), answers)).region
