import { boxHeight, boxRing, boxWidth } from '../geometry/box'
import { add, point, type Point } from '../geometry/point'
import type { Ring } from '../geometry/polygon'
import { edgeLength } from '../geometry/segment'
import type { LaidFace, Piece } from '../fit/lay-face'
import type { Lengthening, SlantedCut, Widening } from '../job/make-up'
import { leafOutline } from '../leaves/bundle'
import type { Flitch } from '../leaves/flitch'
import { cutEnds, type CutEnd } from '../scarf/cut-marks'
import { figureStep, slideAlongCut } from '../scarf/extension'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { leavesInWords } from './leaf-words'

/** How leaves are made up, in the order of the work. */
export interface MakeUpWork {
  /** What is said above it: which leaves, made into what. */
  readonly title: string
  readonly steps: readonly string[]
  /** The first of the leaves it is done to, on which the marks are told. */
  readonly piece: Piece
  readonly pieces: readonly Piece[]
}

/** Every make-up of a face once, with all the pieces that it is for, in the order of the run. */
export function makeUpWork(face: LaidFace, unit: LengthUnit): readonly MakeUpWork[] {
  const inRun = [...face.pieces].sort((p, q) => p.cell.rank - q.cell.rank)
  const groups = new Map<object, Piece[]>()
  for (const piece of inRun) {
    if (!piece.made) continue
    groups.set(piece.made.makeUp, [...(groups.get(piece.made.makeUp) ?? []), piece])
  }
  return [...groups.values()].map((pieces) => workOn(face, pieces, unit))
}

function workOn(face: LaidFace, pieces: readonly Piece[], unit: LengthUnit): MakeUpWork {
  const piece = pieces[0]!
  const { makeUp } = piece.made!
  const whose = capital(leavesInWords(face, pieces))
  const say = sayIn(unit)
  const packet = pieces.length > 1 ? [PACKET] : []
  const steps =
    makeUp.how === 'longer'
      ? lengthenSteps(piece.flitch, piece, makeUp, say)
      : widenSteps(piece.flitch, piece, makeUp, say)
  return {
    title:
      makeUp.how === 'longer'
        ? `${whose}: made longer by a scarf`
        : `${whose}: made wider by a strip on the ${makeUp.side} edge`,
    steps: [...packet, ...steps],
    piece,
    pieces,
  }
}

const PACKET =
  'Lay the leaves up as one packet, numbered sides up, by the register lines across the bundle, and cut them in one go: the step of the figure then mirrors from leaf to leaf.'

interface Say {
  readonly place: (length: number) => string
  readonly fine: (length: number) => string
}

const sayIn = (unit: LengthUnit): Say => ({
  place: (length) => showLength(length, unit, 'place'),
  fine: (length) => showLength(length, unit, 'seam'),
})

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

const movedBy = (piece: Piece): Point<'leaf'> =>
  piece.made!.makeUp.leaf === null ? piece.leaf!.drift : point<'leaf'>(0, 0)

function lengthenSteps(flitch: Flitch, piece: Piece, { cut }: Lengthening, say: Say): readonly string[] {
  const outline = leafOutline(flitch, piece.leaf!)
  return [...cutSteps(outline, { ...cut, through: add(cut.through, movedBy(piece)) }, say), joinStep(piece, say)]
}

function cutSteps(outline: Ring<'leaf'>, cut: SlantedCut, say: Say): readonly string[] {
  const ends = cutEnds(outline, cut)
  const mark = ({ at, side, inFromEdge }: CutEnd) =>
    `${say.place(at.y)} from the numbered end, ${inFromEdge < 0.5 ? `on the ${side} edge` : `${say.place(inFromEdge)} in from the ${side} edge`}`
  return [
    ends
      ? `Numbered side up, mark a straight line from ${mark(ends[0])}, to ${mark(ends[1])}: 1 in ${(1 / cut.slope).toFixed(1)} to the grain.`
      : 'The line misses the leaf.',
    `Cut on the line and true both faces, ${say.fine(cut.loss)} off each.`,
    `Close the faces up squarely, then slide the far half ${say.place(slideAlongCut(cut))} along the cut, away from the numbered end: ${say.place(cut.gain)} longer, ${say.fine(figureStep(cut))} narrower.`,
  ]
}

const joinStep = (piece: Piece, say: Say): string =>
  `Glue and tape ${piece.made!.seams.length === 1 ? 'the joint' : 'the joints'}, ${say.place(jointLength(piece))} in a leaf. Cut the pieces by their templates only then.`

/** All joints of one made-up leaf. */
export const jointLength = ({ made }: Piece): number =>
  made ? made.seams.reduce((sum, { edge }) => sum + edgeLength(edge), 0) : 0

function widenSteps(flitch: Flitch, piece: Piece, makeUp: Widening, say: Say): readonly string[] {
  const { kept, side, offcut, cut, strip, from, loss } = makeUp
  const moved = movedBy(piece)
  const own = leafOutline(flitch, piece.leaf!)
  const left = Math.min(...own.map(({ x }) => x))
  const x = (side === 'right' ? kept.max.x : kept.min.x) + moved.x
  const stripMoved = from === null ? moved : point<'leaf'>(0, 0)
  const source = from === null || from === piece.leaf!.number ? 'the same leaf' : `leaf ${from}`
  const span = (low: number, high: number, by: number) => `${say.place(low + by)} to ${say.place(high + by)}`
  const offcutRing = boxRing({ min: add(offcut.min, stripMoved), max: add(offcut.max, stripMoved) })
  return [
    `Rip the leaf along the grain ${say.place(x - left)} from its left edge at the widest; keep what lies ${side === 'right' ? 'left' : 'right'} of it, ${span(kept.min.y, kept.max.y, moved.y)} from the numbered end.`,
    `From ${source}, ${span(offcut.min.y, offcut.max.y, stripMoved.y)} from its numbered end, take an offcut ${say.place(boxWidth(offcut))} wide.`,
    ...(cut ? cutSteps(offcutRing, { ...cut, through: add(cut.through, stripMoved) }, say) : []),
    `Rip the strip ${say.fine(boxWidth(strip))} wide and ${say.place(boxHeight(strip))} long, and true both faces, ${say.fine(loss)} off each.`,
    `Put the strip on the ${side} edge, numbered ends level and numbered sides up.`,
    joinStep(piece, say),
  ]
}
