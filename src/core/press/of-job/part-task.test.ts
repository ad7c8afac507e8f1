/** [W41] Seams that are drawn on the core are measured from the edge of the core as pressed, not of the finished panel. */
import { describe, expect, it } from 'vitest'
import { derive } from '../../derive'
import { withoutMemory } from '../../fit/answers'
import { demoJob } from '../../figure/demo-job'
import { SAWN_AFTER } from '../edges'

const [face] = derive(demoJob(), withoutMemory).parts
const firstLine = (left: number): string => {
  const job = demoJob()
  const parts = job.parts.map((part) => ({
    ...part,
    core: { ...part.core, left },
    pressing: { ...part.pressing, method: 'leaf by leaf' as const, glue: 'hide' as const },
  }))
  return derive({ ...job, parts: parts.slice(0, 1) }, withoutMemory).parts[0]!.press.press[0]!
}

describe('[W41] seams drawn on the core', () => {
  const middle = face!.part.width / 2

  it.each([
    ['the core as large as the panel', 0, middle],
    ['a core with something to saw off', SAWN_AFTER.value, middle + SAWN_AFTER.value],
    ['a core that leaves room for a lipping', -8, middle - 8],
  ])('%s', (_, left, at) => {
    expect(face!.plan.columns).toHaveLength(2)
    expect(firstLine(left)).toBe(`Draw the seams on the core, from its left edge: ${at} mm.`)
  })
})
