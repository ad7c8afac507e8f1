import type { Finding } from '../finding'
import type { LaidFace, Piece } from '../fit/lay-face'
import { jointsWithin, placeOnLeaf } from '../fit/piece-parts'
import { between, type Point } from '../geometry/point'
import type { CellId } from '../ids'
import { WHOLE_RUN } from '../job/make-up'
import type { Cut } from '../leaves/flitch'
import type { MadeSeam } from '../scarf/made-up-leaf'
import { stepLook, type StepLook, type SteppedFigure } from '../scarf/step-shows'

/** What shows of leaves that were made longer or wider, and those that could not be made up as decided. */
export const checkMadeUp = (face: LaidFace): readonly Finding[] => [
  ...face.pieces.filter(({ makeUpVoid }) => makeUpVoid !== null).map((piece) => voidFinding(face, piece)),
  ...oncePerMakeUp(face).flatMap((piece) => jointFindings(face, piece)),
]

/** The packet of a run is one decision: it is said once, at its first piece. */
function oncePerMakeUp({ pieces }: LaidFace): readonly Piece[] {
  const inRun = [...pieces].sort((p, q) => p.cell.rank - q.cell.rank)
  return inRun.filter(({ made }, i) => made && inRun.findIndex((other) => other.made?.makeUp === made.makeUp) === i)
}

function jointFindings(face: LaidFace, piece: Piece): readonly Finding[] {
  if (face.part.showClass === 'hidden') return []
  const joints = jointsWithin(piece, piece.windowOnLeaf)
  const scarf = joints.find(({ kind }) => kind === 'scarf')
  const strip = joints.find(({ kind }) => kind === 'strip')
  return [
    ...(scarf ? stepFinding(face, piece, scarf) : []),
    ...(strip ? [plain(face, piece, 'strip-beside', strip)] : []),
  ]
}

function stepFinding(face: LaidFace, piece: Piece, scarf: MadeSeam): readonly Finding[] {
  const { spacing } = piece.made!.makeUp
  const figure = steppedFigure(face.flitch.cut, spacing)
  const look: StepLook | null = figure && stepLook(scarf.step ?? 0, figure, face.part.showClass !== 'hidden')
  const base = plain(face, piece, 'scarf-step', scarf)
  return [
    {
      ...base,
      grade: look?.kind === 'meets' ? 'good' : 'note',
      measured: scarf.step,
      limit: spacing,
      about: {
        ...base.about,
        look: look?.kind ?? 'spacing not known',
        passed: look && 'passed' in look ? look.passed : 0,
        missed: look && 'share' in look && spacing !== null ? look.share * spacing : 0,
      },
    },
  ]
}

/** Flat and rotary cut leaves show crowns; the others stripes, whose spacing someone has to measure. */
export const showsStripes = (cut: Cut): boolean => cut !== 'flat' && cut !== 'half round' && cut !== 'rotary'

function steppedFigure(cut: Cut, spacing: number | null): SteppedFigure | null {
  if (!showsStripes(cut)) return { kind: 'crown' }
  return spacing === null ? null : { kind: 'stripe', spacing }
}

function plain(face: LaidFace, piece: Piece, code: Finding['code'], { edge }: MadeSeam): Finding {
  const at: Point<'leaf'> = placeOnLeaf(piece, between(edge.a, edge.b, 0.5))
  return {
    code,
    grade: 'note',
    part: face.part.id,
    place: { on: 'leaf', leaf: { flitch: face.flitch.id, leaf: piece.leaf!.number }, at },
    measured: null,
    limit: null,
    about: { leaf: piece.leaf!.number, run: isOfRun(piece) ? 1 : 0 },
    remedies: [],
  }
}

const isOfRun = ({ made }: Piece): boolean => made?.makeUp.leaf === null

function voidFinding({ part, flitch }: LaidFace, { cell, leaf, makeUpVoid }: Piece): Finding {
  const key: CellId = part.madeUp[cell.id] ? cell.id : WHOLE_RUN
  return {
    code: 'make-up-void',
    grade: makeUpVoid === 'no joint' ? 'wrong' : 'note',
    part: part.id,
    place: { on: 'leaf', leaf: { flitch: flitch.id, leaf: leaf!.number }, at: null },
    measured: null,
    limit: null,
    about: { leaf: leaf!.number, cell: cell.id, why: makeUpVoid!, was: part.madeUp[key]?.leaf ?? 0 },
    remedies: [{ remedy: 'make up', cell: key, makeUp: null }],
  }
}
