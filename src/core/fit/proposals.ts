/**
 * Faces to pick from: the part laid on other leaves and elsewhere on them, the best by each of several aims.
 *
 * Input: a part on its flitch; a place that someone chose for the window is taken to be free. Output: for each aim the
 * part as it would be decided, with its measure; aims that come to the same face stand together. Tolerance: positions
 * are tried at the ends, the sides and the middle of the play, not everywhere. Failure: no proposals where nothing fits.
 */
import { regionArea, type Region } from '../geometry/polygon'
import type { Point } from '../geometry/point'
import type { Part } from '../job/job'
import type { PartFlitches } from '../job/part-flitches'
import type { Flitch } from '../leaves/flitch'
import type { Recipe } from '../patterns/recipe'
import { largestStrip, type GrainStrip } from '../scarf/strip'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import { hasPlace } from './fits'
import { largestFace, type FaceSize } from './largest-face'
import { layFace, type LaidFace } from './lay-face'
import { offCentre, remainder, splitDistance } from './proposal-measures'
import { positionsToTry } from './positions-to-try'
import { WINDOW } from '../faces/window-group'

export type Aim =
  | 'most play'
  | 'fewest leaves'
  | 'longest remainder'
  | 'clear of splits'
  | 'figure centred'
  | 'most symmetric'
  | 'liveliest'

export interface Proposal {
  readonly aims: readonly { readonly aim: Aim; readonly measure: number }[]
  /** As it would be decided. */
  readonly part: Part
}

export interface Proposals {
  readonly faces: readonly Proposal[]
  /** The largest of the part's shape that the run can give; null until it is known, or where there is none. */
  readonly largest: FaceSize | null
  /** The largest strip along the grain of each leaf of the face, of the flitch of its field. */
  readonly strips: readonly { readonly leaf: number; readonly strip: GrainStrip }[]
}

/** How a face does by an aim: the higher the better; null where it can't be told. Scores of pictures come in here. */
export interface FaceScore {
  readonly aim: Aim
  readonly of: (face: LaidFace) => number | null
  /** What is shown of a score. */
  readonly measure: (score: number) => number
}

const same = (score: number): number => score
const less = (score: number): number => Math.abs(score)

const SCORES: readonly FaceScore[] = [
  { aim: 'most play', of: ({ play }) => regionArea(play.region), measure: same },
  { aim: 'fewest leaves', of: (face) => -new Set(face.pieces.map(({ leaf }) => leaf)).size, measure: less },
  { aim: 'longest remainder', of: remainder, measure: same },
  { aim: 'clear of splits', of: (face) => splitDistance(face), measure: same },
  { aim: 'figure centred', of: (face) => -offCentre(face), measure: less },
]

export interface ProposalStep {
  readonly share: number
  readonly answer: Proposals
}

export function* proposalsInSteps(
  part: Part,
  flitches: PartFlitches,
  shop: Shop,
  answers: Answers,
  more: readonly FaceScore[] = [],
): Generator<ProposalStep, void, void> {
  const scores = [...SCORES, ...more]
  const best = new Map<Aim, Scored>()
  const starts = startsToTry(part, flitches.field)
  let largest: FaceSize | null = null
  let strips: Proposals['strips'] = []
  const answer = (): Proposals => ({ faces: together(best), largest, strips })
  for (const [i, start] of starts.entries()) {
    for (const face of facesFrom(start, flitches, shop, answers)) keepBest(best, scores, face)
    yield { share: (0.6 * (i + 1)) / starts.length, answer: answer() }
  }
  largest = largestFace(part, flitches, shop, answers)
  yield { share: 0.75, answer: answer() }
  const now = layFace({ ...part, positions: {} }, flitches, shop, answers)
  const ofFlitch = now.pieces.filter(({ flitch }) => flitch === now.flitch)
  const leaves = [...new Map(ofFlitch.flatMap(({ leaf, usable }) => (leaf ? [[leaf.number, usable] as const] : [])))]
  for (const [i, [leaf, usable]] of leaves.slice(0, MOST_STRIPS).entries()) {
    const strip = largestStrip(usable as Region<'leaf'>, 0)
    if (strip) strips = [...strips, { leaf, strip }]
    yield { share: 0.75 + (0.25 * (i + 1)) / (leaves.length + 1), answer: answer() }
  }
  yield { share: 1, answer: answer() }
}

const MOST_STRIPS = 24

interface Scored {
  readonly part: Part
  readonly score: number
  readonly measure: number
}

/** The part with nothing chosen but the leaf to start with; the one it has comes first, so that of equals it stays. */
function startsToTry(part: Part, flitch: Flitch): readonly Part[] {
  const free: Part = { ...part, positions: {}, chosen: {}, nudges: {} }
  const inUse = flitch.leaves.filter(({ state }) => state === 'in use').map(({ number }) => number)
  const others = inUse.filter((number) => number !== part.recipe.firstLeaf)
  return [free, ...others.map((firstLeaf): Part => ({ ...free, recipe: { ...part.recipe, firstLeaf } as Recipe }))]
}

/** A start with its window where there is most room, and at the ends and sides of its play. */
function facesFrom(start: Part, flitches: PartFlitches, shop: Shop, answers: Answers): readonly LaidFace[] {
  const first = layFace(start, flitches, shop, answers)
  if (!hasPlace(first)) return []
  const isRunning = start.recipe.pattern === 'strips' && start.recipe.arrangement === 'running'
  // in a running match another height is another division: only the one it finds by itself is proposed
  if (isRunning) return [first]
  const at = (position: Point<'leaf'>): Part => ({ ...start, positions: { [WINDOW]: position } })
  const elsewhere = positionsToTry(first).map((position) => layFace(at(position), flitches, shop, answers))
  return [first, ...elsewhere.filter(hasPlace)]
}

function keepBest(best: Map<Aim, Scored>, scores: readonly FaceScore[], face: LaidFace): void {
  for (const { aim, of, measure } of scores) {
    const score = of(face)
    const held = best.get(aim)
    if (score === null || (held && held.score >= score - 1e-6)) continue
    best.set(aim, { part: face.part, score, measure: measure(score) })
  }
}

/** One proposal for each face: aims that are met by the same leaves in the same place belong together. */
function together(best: ReadonlyMap<Aim, Scored>): readonly Proposal[] {
  const faces = new Map<string, Proposal>()
  for (const [aim, { part, measure }] of best) {
    const at = part.positions[WINDOW]
    const key = `${part.recipe.firstLeaf} ${at ? `${at.x.toFixed(1)} ${at.y.toFixed(1)}` : 'free'}`
    const aims = [...(faces.get(key)?.aims ?? []), { aim, measure }]
    faces.set(key, { part, aims })
  }
  return [...faces.values()]
}
