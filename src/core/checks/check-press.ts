import type { PartId } from '../ids'
import type { PressFinding, PressRemedy } from '../press/of-job/press-finding'
import type { PressPlan, PressTask } from '../press/press-plan'

/** What is seriously wrong with the gluing of a part, the gravest first. */
export function checkPress(part: PartId, task: PressTask, plan: PressPlan): readonly PressFinding[] {
  return [...wrongGlue(part, task, plan), ...doesNotFit(part, plan), ...unbalanced(part, plan)]
}

/** The fittest glue as things are, if need be with care; nothing where none will do. */
const fittest = ({ glue }: PressPlan): readonly PressRemedy[] => {
  const best = glue.all.find(({ verdict }) => verdict !== 'no')
  return best && best.glue !== glue.verdict.glue ? [{ remedy: 'glue', glue: best.glue }] : []
}

function wrongGlue(part: PartId, { room }: PressTask, plan: PressPlan): PressFinding[] {
  const { verdict, inUse } = plan.glue
  const [glue, least] = [inUse.name, inUse.leastTemperature.value]
  const remedies = fittest(plan)
  if (room.coreTemperature < least) return [{ code: 'cold', part, glue, core: room.coreTemperature, least, remedies }]
  return verdict.verdict === 'no' ? [{ code: 'glue', part, glue, why: verdict.reasons[0] ?? '', remedies }] : []
}

function doesNotFit(part: PartId, { fit }: PressPlan): PressFinding[] {
  const [worst] = [...fit].sort((a, b) => b.over - a.over)
  return worst ? [{ code: 'fit', part, trouble: worst, remedies: [{ remedy: 'method', method: 'cauls' }] }] : []
}

function unbalanced(part: PartId, { balance }: PressPlan): PressFinding[] {
  const [lack] = balance.lacks
  if (balance.verdict !== 'unbalanced' || !lack) return []
  return [{ code: 'unbalanced', part, lack, remedies: lack.lack === 'backer' ? [{ remedy: 'backer' }] : [] }]
}
