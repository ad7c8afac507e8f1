import { checkFace } from './checks/check-face'
import { checkPress } from './checks/check-press'
import { checkUsedTwice } from './checks/used-twice'
import type { Finding } from './finding'
import type { Answers } from './fit/answers'
import { layFace, type LaidFace } from './fit/lay-face'
import type { PartId } from './ids'
import type { Job } from './job/job'
import { partTask, taskDependsOn } from './press/of-job/part-task'
import type { PressFinding } from './press/of-job/press-finding'
import { planPressing, type PressPlan } from './press/press-plan'
import { planRepairs, type RepairPlan } from './repairs/repairs'
import { centreOfSeams, type Centre } from './seams/centring'
import { reportSeams, type SeamReport } from './seams/seam-report'

/** Everything that follows from the decisions about one part. */
export interface DerivedPart extends JudgedPart, PressedPart {}

/** Its face. */
interface JudgedPart extends LaidFace {
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
export function derive(job: Job, answers: Answers): DerivedJob {
  const faces = job.parts.flatMap((part) => {
    const flitch = job.flitches.find(({ id }) => id === part.flitch)
    if (!flitch) return []
    const face = answers('face', [part, flitch, job.shop], () =>
      judgedFace(layFace(part, flitch, job.shop, answers), job),
    )
    const press = pressOf(face, job, answers)
    return [answers('part', [face, press], () => ({ ...face, ...press }))]
  })
  const shared = checkUsedTwice(faces)
  return { parts: faces.map((face) => withShared(face, shared)) }
}

/** How a part is glued up hangs on little of its face: a drag of the window leaves it as it was. */
function pressOf({ part, flitch, plan }: LaidFace, job: Job, answers: Answers): PressedPart {
  const task = partTask(part, flitch, job, plan.columns)
  return answers('press', [part.id, ...taskDependsOn(task)], () => {
    const press = planPressing(task)
    return { press, pressFindings: checkPress(part.id, task, press) }
  })
}

function judgedFace(face: LaidFace, { shop }: Job): JudgedPart {
  const seams = reportSeams(face)
  const centre = centreOfSeams(seams)
  return { ...face, seams, centre, findings: checkFace(face, seams, centre, shop), repairs: planRepairs(face, shop) }
}

function withShared(face: DerivedPart, shared: ReadonlyMap<PartId, readonly Finding[]>): DerivedPart {
  const more = shared.get(face.part.id)
  return more ? { ...face, findings: [...more, ...face.findings] } : face
}
