/**
 * Parts that are read as one across a gap: what a pair makes of its two parts, before they are laid.
 *
 * Input: parts as decided. Output: the same parts, with the edges their pairs ask for; the second with leaves, turns and
 * place from the first; the first, where nobody has put its window, at the place where both have most room. Failure: a
 * pair that can't hold leaves its parts as they were decided.
 */
import { WINDOW } from '../faces/window-group'
import { intersect } from '../geometry/clip'
import type { Point } from '../geometry/point'
import { transformRegion } from '../geometry/polygon'
import { translation } from '../geometry/transform'
import type { PartId } from '../ids'
import type { Job, Pair, Part } from '../job/job'
import { partFlitches } from '../job/part-flitches'
import type { Answers } from './answers'
import { layFace, type LaidFace } from './lay-face'
import { meetingEdges, pairVoid, withMeetingEdge } from './pair-edges'
import { followed, windowsApart } from './pair-follow'
import { firstPosition } from './play'

/** A part as its pairs have it, and the face that it follows. */
export interface PairedPart<F extends LaidFace> {
  readonly part: Part
  readonly follows: { readonly first: F; readonly pair: Pair } | null
}

/** A part as its pairs have it; the same one where no pair holds. `lay` lays another part of the job, its pairs held. */
export function pairedPart<F extends LaidFace>(
  part: Part,
  job: Job,
  lay: (part: Part) => F | null,
  answers: Answers,
): PairedPart<F> {
  const mine = job.pairs.filter(({ first, second }) => first === part.id || second === part.id)
  if (mine.length === 0) return { part, follows: null }
  const edged = edgedPart(part, job, answers)
  const asSecond = mine.find(({ second }) => second === part.id)
  const leader = asSecond && partOf(job, asSecond.first)
  const first = leader && lay(leader)
  if (asSecond && first) {
    const next = answers('following part', [asSecond, first, edged], () => followed(asSecond, first, edged))
    if (typeof next === 'object') return { part: next, follows: { first, pair: asSecond } }
  }
  const asFirst = mine.find((pair) => pair.first === part.id)
  return { part: asFirst ? placedForBoth(asFirst, edged, job, answers) : edged, follows: null }
}

/** Every edge at a gap as its pair has it; other parts are asked only whether the pair can hold. */
function edgedPart(part: Part, job: Job, answers: Answers): Part {
  return job.pairs.reduce((edged, pair) => {
    if (pair.first !== part.id && pair.second !== part.id) return edged
    const [first, second] = [partOf(job, pair.first), partOf(job, pair.second)]
    if (!first || !second || pairVoid(pair, first, second)) return edged
    const side = meetingEdges(pair)[pair.first === part.id ? 'first' : 'second']
    return answers('edge of a pair', [pair, edged, side], () => withMeetingEdge(edged, pair, side))
  }, part)
}

const partOf = (job: Job, id: PartId): Part | null => job.parts.find((one) => one.id === id) ?? null

/** Where nobody has put the window of the first, it lies where both parts have most room. */
function placedForBoth(pair: Pair, first: Part, job: Job, answers: Answers): Part {
  const second = partOf(job, pair.second)
  const flitches = partFlitches(first, job.flitches)
  if (!second || !flitches || first.positions[WINDOW] || pairVoid(pair, first, second)) return first
  const other = edgedPart(second, job, answers)
  // both are cut from one flitch: with a border there is no pair
  return answers('place for a pair', [pair, first, other, flitches.field, job.shop], () => {
    const laid = layFace(first, flitches, job.shop, answers)
    const next = followed(pair, laid, other)
    const at = typeof next === 'object' ? roomForBoth(laid, layFace(next, flitches, job.shop, answers)) : null
    return at ? { ...first, positions: { ...first.positions, [WINDOW]: at } } : first
  })
}

/** The place for the window of the first farthest from every border of what both allow; null where they allow none. */
function roomForBoth(first: LaidFace, second: LaidFace): Point<'leaf'> | null {
  const { x, y } = windowsApart(first, second)
  const theirs = transformRegion(translation<'leaf'>(-x, -y), second.play.region)
  const region = first.play.region.length > 0 && theirs.length > 0 ? intersect(first.play.region, theirs) : []
  return region.length > 0 ? firstPosition({ region, exact: false }) : null
}
