import { checkFace, inOrder } from './checks/check-face'
import { checkPair, withinPairs } from './checks/pairs'
import { checkPress } from './checks/check-press'
import { checkUsedTwice } from './checks/used-twice'
import type { Finding } from './finding'
import type { Answers } from './fit/answers'
import { layFace, type LaidFace } from './fit/lay-face'
import { windowsApart, type Follows } from './fit/pair-follow'
import { pairedPart } from './fit/pairs'
import { add } from './geometry/point'
import type { PartId } from './ids'
import type { Job, Pair, Part } from './job/job'
import { partFlitches } from './job/part-flitches'
import { partTask, taskDependsOn } from './press/of-job/part-task'
import type { PressFinding } from './press/of-job/press-finding'
import { planPressing, type PressPlan } from './press/press-plan'
import { planRepairs, type RepairPlan } from './repairs/repairs'
import { centreOfSeams, type Centre } from './seams/centring'
import { reportPair, type PairReport } from './seams/pair-report'
import { reportSeams, type SeamReport } from './seams/seam-report'

/** Everything that follows from the decisions about one part. */
export interface DerivedPart extends JudgedPart, PressedPart {
  /** The pairs it is one of, where the other part was looked at too. */
  readonly pairs: readonly PairReport[]
}

/** Its face. The part is as its pairs have it: what is decided stands in the job. */
interface JudgedPart extends LaidFace {
  readonly follows: Follows | null
  readonly seams: readonly SeamReport[]
  readonly centre: Centre
  readonly findings: readonly Finding[]
  readonly repairs: RepairPlan
}

/** How it is glued up, and what is seriously wrong with that. */
interface PressedPart {
  readonly press: PressPlan
  readonly pressFindings: readonly PressFinding[]
}

export interface DerivedJob {
  readonly parts: readonly DerivedPart[]
}

/**
 * The spine: from what has been decided to what follows from it. Parts whose flitch is not in the job are left out (a
 * job that was read or changed by the commands has none). `answers` may remember what was found before.
 */
export const derive = (job: Job, answers: Answers): DerivedJob => deriveParts(job, job.parts, answers)

/** As `derive`, for some parts alone: what only the others know of them, such as wood used twice, is not found. */
export function deriveParts(job: Job, parts: readonly Part[], answers: Answers): DerivedJob {
  const faces = parts.flatMap((part) => derivedPart(part, job, answers) ?? [])
  const paired = withPairs(faces, job.pairs, answers)
  const shared = checkUsedTwice(paired)
  return { parts: paired.map((face) => withShared(face, shared)) }
}

function derivedPart(part: Part, job: Job, answers: Answers): DerivedPart | null {
  const face = faceOf(part, job, answers)
  if (!face) return null
  const press = pressOf(face, job, answers)
  return answers('part', [face, press], () => ({ ...face, ...press, pairs: [] }))
}

/** A face by itself, laid as its pairs have it. */
function faceOf(decided: Part, job: Job, answers: Answers): JudgedPart | null {
  const { part, follows } = pairedPart(decided, job, (other) => faceOf(other, job, answers), answers)
  const flitches = partFlitches(part, job.flitches)
  // no pair of its own that holds leaves a part as it was decided
  const pairs = part === decided ? NO_PAIRS : job.pairs
  if (!flitches) return null
  return answers('face', [part, flitches.field, flitches.border, job.shop, pairs], () => {
    const face = judgedFace(layFace(part, flitches, job.shop, answers), job, pairs, follows?.pair ?? null)
    return follows ? { ...face, follows: followsOf(face, follows.first, follows.pair) } : face
  })
}

function followsOf(face: LaidFace, first: JudgedPart, { meet }: Pair): Follows {
  const apart = windowsApart(first, face)
  const { part, cells } = first.follows ?? { part: first.part.id, cells: first.part.id }
  return {
    part,
    apart: first.follows ? add(first.follows.apart, apart) : apart,
    cells: meet === 'same leaves' ? cells : face.part.id,
  }
}

const NO_PAIRS: readonly Pair[] = []

/** How a part is glued up hangs on little of its face: a drag of the window leaves it as it was. */
function pressOf({ part, flitch, plan }: LaidFace, job: Job, answers: Answers): PressedPart {
  const task = partTask(part, flitch, job, plan.columns)
  return answers('press', [part.id, ...taskDependsOn(task)], () => {
    const press = planPressing(task)
    return { press, pressFindings: checkPress(part.id, task, press) }
  })
}

function judgedFace(face: LaidFace, { shop }: Job, pairs: readonly Pair[], following: Pair | null): JudgedPart {
  const seams = reportSeams(face)
  const centre = centreOfSeams(seams)
  const findings = withinPairs(checkFace(face, seams, centre, shop), face, pairs, following)
  return { ...face, seams, centre, findings, repairs: planRepairs(face, shop), follows: null }
}

/** Both parts of a pair are told what becomes of the figure between them. */
function withPairs(faces: readonly DerivedPart[], pairs: readonly Pair[], answers: Answers): readonly DerivedPart[] {
  return pairs.reduce((all, pair) => {
    const [first, second] = [pair.first, pair.second].map((id) => all.find(({ part }) => part.id === id))
    if (!first || !second) return all
    const told = answers('pair', [pair, first, second], () => pairTold(pair, first, second))
    return all.map((face) => (face === first ? told[0] : face === second ? told[1] : face))
  }, faces)
}

function pairTold(pair: Pair, first: DerivedPart, second: DerivedPart): readonly [DerivedPart, DerivedPart] {
  const [one, other] = reportPair(pair, first, second)
  return [withPair(first, second, one), withPair(second, first, other)]
}

const withPair = (face: DerivedPart, other: DerivedPart, report: PairReport): DerivedPart => ({
  ...face,
  pairs: [...face.pairs, report],
  findings: inOrder([...checkPair(face, other, report), ...face.findings]),
})

function withShared(face: DerivedPart, shared: ReadonlyMap<PartId, readonly Finding[]>): DerivedPart {
  const more = shared.get(face.part.id)
  return more ? { ...face, findings: [...more, ...face.findings] } : face
}
