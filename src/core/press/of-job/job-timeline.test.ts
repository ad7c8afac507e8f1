/**
 * [W42] Every part of a job is in one load of the press, or named as too large for the platen; what shares a load shares
 * its glue. [W43] What is laid leaf by leaf or pressed between cauls goes by itself, and never into the bag.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../../derive'
import { withoutMemory } from '../../fit/answers'
import { demoJob } from '../../figure/demo-job'
import type { Job } from '../../job/job'
import type { Pressing } from '../pressing'
import { jobTimeline, pressLoadSentence } from './job-timeline'

const job = demoJob()
const timeOf = ({ pressRoom, ...rest }: Job, wavy = false) =>
  jobTimeline(derive({ pressRoom, ...rest }, withoutMemory).parts, pressRoom, wavy)
const allWith = (patch: Partial<Pressing>): Job => ({
  ...job,
  parts: job.parts.map((part) => ({ ...part, pressing: { ...part.pressing, ...patch } })),
})
const names = job.parts.map(({ name }) => name).sort()

describe('[W42] loads', () => {
  const { loads, tooLarge, steps, days } = timeOf(job)

  it('hold every part once', () => {
    expect(loads.flatMap(({ parts }) => parts).sort()).toEqual(names)
    expect(tooLarge).toEqual([])
    expect(loads.length).toBeLessThan(job.parts.length)
    expect(pressLoadSentence(loads[0]!, 1)).toMatch(/^Load 1, in the bag: /)
  })

  it('do not mix glues', () => {
    const [first, ...others] = job.parts
    const mixed = { ...job, parts: [{ ...first!, pressing: { ...first!.pressing, glue: 'PVA' as const } }, ...others] }
    expect(timeOf(mixed).loads.filter(({ glue }) => glue === 'PVA')).toEqual([
      { method: 'bag', glue: 'PVA', parts: [first!.name] },
    ])
  })

  it('grow in number on a smaller platen, and name what fits no more', () => {
    const small = timeOf({ ...job, pressRoom: { ...job.pressRoom, platen: { width: 450, length: 900 } } })
    expect(small.loads.length).toBeGreaterThan(loads.length)
    expect([...small.loads.flatMap(({ parts }) => parts), ...small.tooLarge].sort()).toEqual(names)
    expect(small.tooLarge).toContain('Top')
    expect(small.days).toBeGreaterThanOrEqual(days)
  })

  it('take the time of wavy leaves only where they are wavy', () => {
    expect(steps.map(({ step }) => step)).not.toContain('flatten')
    const wavy = timeOf(job, true)
    expect(wavy.steps.map(({ step }) => step)).toContain('flatten')
    expect(wavy.days).toBeGreaterThan(days)
  })
})

describe('[W43] without a bag', () => {
  it.each(['cauls', 'leaf by leaf'] as const)('%s', (method) => {
    const { loads } = timeOf(allWith({ method }))
    expect(loads.map(({ parts }) => parts.length)).toEqual(job.parts.map(() => 1))
    expect(loads.every((load) => !pressLoadSentence(load, 1).includes('bag'))).toBe(true)
  })
})
