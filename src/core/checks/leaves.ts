import type { Finding } from '../finding'
import { fieldPieces, flitchesOf, type LaidFace, type Piece } from '../fit/lay-face'
import type { Flitch } from '../leaves/flitch'
import { placeInSequence } from '../leaves/bundle'

/** Whether there are leaves for all cells, in the sequence of the log. */
export const checkLeaves = (face: LaidFace): readonly Finding[] => [
  ...noLeaf(face),
  ...brokenSequence(face),
  ...droppedNudges(face),
]

/** Of a border that is cut from another flitch than the field it is told by itself. */
function noLeaf(face: LaidFace): readonly Finding[] {
  const [own, ...others] = flitchesOf(face).map((flitch) => ({
    flitch,
    pieces: face.pieces.filter((piece) => piece.flitch.id === flitch.id),
  }))
  return [
    ...(own ? lackingIn(face, own.pieces, (lacking) => earlierStart(face, lacking)) : []),
    ...others.flatMap(({ flitch, pieces }) => lackingIn(face, pieces, () => [], flitch)),
  ]
}

function lackingIn(
  { part }: LaidFace,
  pieces: readonly Piece[],
  remedies: (lacking: number) => Finding['remedies'],
  ofBorder: Flitch | null = null,
): readonly Finding[] {
  const lacking = pieces.filter(({ leaf }) => leaf === null)
  if (lacking.length === 0) return []
  return [
    {
      code: 'no-leaf',
      grade: 'wrong',
      part: part.id,
      place: { on: 'cell', cell: lacking[0]!.cell.id },
      measured: pieces.length - lacking.length,
      limit: pieces.length,
      about: {
        lacking: lacking.length,
        needed: pieces.length,
        first: part.recipe.firstLeaf,
        ...(ofBorder && { ofFlitch: ofBorder.name }),
      },
      remedies: remedies(lacking.length),
    },
  ]
}

/** As many leaves further back as are lacking, if there are as many. */
function earlierStart({ flitch, part }: LaidFace, lacking: number): Finding['remedies'] {
  const inUse = flitch.leaves.filter(({ state }) => state === 'in use')
  const start = inUse.findIndex(({ number }) => number === part.recipe.firstLeaf)
  const earlier = inUse[start - lacking]
  return earlier ? [{ remedy: 'start at leaf', leaf: earlier.number }] : []
}

/** Leaves in the order of the run that do not follow each other in the log: missing, skipped, or swapped by hand. */
function brokenSequence(face: LaidFace): readonly Finding[] {
  if (face.part.recipe.pattern === 'planks' && face.part.recipe.order === 'shuffled') return []
  const inOrder = [...fieldPieces(face)]
    .sort((p, q) => p.cell.rank - q.cell.rank)
    .flatMap(({ leaf }) => (leaf ? [leaf] : []))
  const breaks = inOrder.slice(1).flatMap((leaf, i) => {
    const before = inOrder[i]!
    const step = placeInSequence(face.flitch, leaf.number) - placeInSequence(face.flitch, before.number)
    return step === 1 || (step === 0 && givesSeveral(face)) ? [] : [{ before: before.number, after: leaf.number, step }]
  })
  const first = breaks[0]
  if (!first) return []
  return [
    {
      code: 'sequence-broken',
      grade: 'note',
      part: face.part.id,
      place: { on: 'leaf', leaf: { flitch: face.flitch.id, leaf: first.after }, at: null },
      measured: first.step,
      limit: 1,
      about: { before: first.before, after: first.after, breaks: breaks.length },
      remedies: Object.keys(face.part.chosen).length ? [{ remedy: 'next in run' }] : [],
    },
  ]
}

/** Patterns of small pieces, of which a leaf gives several. */
const givesSeveral = ({ part: { recipe } }: LaidFace): boolean =>
  recipe.pattern === 'herringbone' || recipe.pattern === 'parquet'

const droppedNudges = (face: LaidFace): readonly Finding[] =>
  face.pieces
    .filter(({ nudgeDropped }) => nudgeDropped)
    .map(({ cell, leaf }) => ({
      code: 'nudge-dropped',
      grade: 'note',
      part: face.part.id,
      place: { on: 'cell', cell: cell.id },
      measured: null,
      limit: null,
      about: { cell: cell.id, leaf: leaf?.number ?? 0, was: face.part.nudges[cell.id]!.leaf },
      remedies: [],
    }))
