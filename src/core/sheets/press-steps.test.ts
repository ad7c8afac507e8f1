/**
 * [T48] On the press sheet the order of hands is that of the way of pressing and of the edges, and every caution of the
 * press stands once, at the first step where it holds.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../derive'
import { withoutMemory } from '../fit/answers'
import { demoJob } from '../figure/demo-job'
import type { Part } from '../job/job'
import type { EdgeWork, Pressing } from '../press/pressing'
import { pressSteps } from './press-steps'

const job = demoJob()
const ALL = (work: EdgeWork): Pressing['edges'] => ({ top: work, right: work, bottom: work, left: work })

function stepsWith(patch: Partial<Pressing>, coreTemperature = 21) {
  const pressRoom = { ...job.pressRoom, coreTemperature }
  const parts: Part[] = job.parts.slice(0, 1).map((part) => ({ ...part, pressing: { ...part.pressing, ...patch } }))
  const [face] = derive({ ...job, pressRoom, parts }, withoutMemory).parts
  return { steps: pressSteps(face!.part.pressing, face!.press, pressRoom), plan: face!.press }
}
const at = (steps: readonly { readonly words: string }[], words: string): number =>
  steps.findIndex((step) => step.words.includes(words))

describe('[T48] the order of hands', () => {
  it('goes from the core by the rehearsal to the bag', () => {
    const { steps } = stepsWith({})
    const order = [
      'Cut the board',
      'Draw centre lines',
      'Rehearse',
      'Mix',
      'Glue on the core',
      'Two pins',
      'Pump on',
      '13 h under pressure',
      'Saw to size',
      'scrape',
    ]
    const places = order.map((words) => at(steps, words))
    expect(places).not.toContain(-1)
    expect(places).toEqual([...places].sort((a, b) => a - b))
  })

  it('puts a lipping before or after the press, as it was decided', () => {
    const place = (edge: 'lipped before' | 'lipped after') => {
      const { steps } = stepsWith({ edges: ALL({ edge, thickness: 8 }) })
      return at(steps, 'Glue lippings') - at(steps, 'under pressure')
    }
    expect(place('lipped before')).toBeLessThan(0)
    expect(place('lipped after')).toBeGreaterThan(0)
  })

  it('has nothing of the bag between cauls or by the hammer', () => {
    for (const method of ['cauls', 'leaf by leaf'] as const) {
      const { steps } = stepsWith({ method, glue: 'hide' })
      const words = steps.flatMap((step) => [step.words, ...step.cautions]).join(' ')
      expect(words).not.toMatch(/\bbag|platen|pump/i)
    }
    expect(at(stepsWith({ method: 'leaf by leaf', glue: 'hide' }).steps, 'Cut through both leaves')).toBeGreaterThan(0)
  })

  it('says that a cold glue won’t cure, and no press time', () => {
    const { steps } = stepsWith({}, 12)
    expect(at(steps, 'it won’t cure')).toBeGreaterThan(0)
    expect(at(steps, 'under pressure with cores')).toBe(-1)
  })
})

it.each(['plastic resin, powder', 'epoxy', 'polyurethane', 'hide'] as const)(
  '[T48] the cautions of %s, once',
  (glue) => {
    const { steps, plan } = stepsWith({ glue })
    const told = steps.flatMap(({ cautions }) => cautions)
    expect(new Set(told).size).toBe(told.length)
    for (const { words } of [...plan.cautions.rehearse, ...plan.cautions.press]) expect(told).toContain(words)
  },
)
