import type { DerivedPart } from '../core/derive'
import { asksFlattening, jobTimeline } from '../core/press/of-job/job-timeline'
import type { PressRoom } from '../core/press/pressing'

/** How a job is pressed, as numbers: for each part its core, glue and bow, then the loads and the hours of all parts. */
export function summarisePressing(faces: readonly DerivedPart[], room: PressRoom) {
  const { loads, tooLarge, steps, hands, days } = jobTimeline(faces, room, asksFlattening(faces))
  return {
    parts: faces.map(({ part, press, pressFindings }) => ({
      id: part.id,
      method: part.pressing.method,
      glue: part.pressing.glue,
      grams: press.glue.need.grams,
      millilitres: press.glue.need.millilitres,
      thickness: press.total,
      core: press.pressed,
      balance: press.balance.verdict,
      bow: { driest: press.warp.driest.warp, dampest: press.warp.dampest.warp },
      edgeStrips: press.strips && { count: press.strips.count, width: press.strips.width, leaves: press.strips.leaves },
      findings: pressFindings.map(({ code }) => code),
    })),
    loads,
    tooLarge,
    hours: { hands, days, steps: steps.map(({ step, hands: byHand, waits }) => ({ step, hands: byHand, waits })) },
  }
}
