import { fitSentence, fitTroubles } from '../../core/press/bag-advice'
import { sizeWith } from '../../core/press/edges'
import type { PressPlan } from '../../core/press/press-plan'
import type { Part } from '../../core/job/job'
import type { PressRoom } from '../../core/press/pressing'
import type { LengthUnit } from '../../core/units/unit'

/** Something about a pressing that the maker must judge; the grave ones would spoil the panel. */
export interface PressNote {
  readonly grave: boolean
  readonly words: string
}

/** A platen and a caul of 3/4 in each lie in the bag with the work. */
const BESIDES_THE_WORK = 38.1

/** What to mind about a part’s pressing, the gravest first; the balance has a place of its own. */
export function pressNotes(part: Part, plan: PressPlan, room: PressRoom, unit: LengthUnit): PressNote[] {
  const { verdict } = plan.glue
  const glue = verdict.verdict === 'suits' ? [] : verdict.reasons.slice(0, 1)
  return [...fitNotes(part, room, unit), ...glue.map((words) => ({ grave: verdict.verdict === 'no', words }))].sort(
    (a, b) => Number(b.grave) - Number(a.grave),
  )
}

function fitNotes({ pressing, width, length, core }: Part, room: PressRoom, unit: LengthUnit): PressNote[] {
  if (pressing.method !== 'bag') return []
  const stack = pressing.layers.reduce((sum, { thickness }) => sum + thickness, 0) + BESIDES_THE_WORK
  return fitTroubles(sizeWith({ width, length }, core), stack, room).map((trouble) => ({
    grave: true,
    words: fitSentence(trouble, unit),
  }))
}
