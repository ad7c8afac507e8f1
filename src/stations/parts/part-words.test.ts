/**
 * Rules.
 * J20 Show faces first is a view: the order of the job stays, and parts of one class keep it.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../../core/derive'
import { demoJob } from '../../core/figure/demo-job'
import { withoutMemory } from '../../core/fit/answers'
import { changePart } from '../../core/commands/part-commands'
import type { Job } from '../../core/job/job'
import { copyName, partState, showFacesFirst } from './part-words'

const job = demoJob()

function stateOf(from: Job, id: string) {
  return partState(derive(from, withoutMemory).parts.find(({ part }) => part.id === id) ?? null)
}

describe('the state of a part', () => {
  it('says what lies on the centre', () => {
    expect(stateOf(job, 'door-1')).toEqual({ words: 'centre seam on the centre', mood: 'good' })
  })

  it('says first what is wrong', () => {
    const wide = changePart(job, 'door-1', { width: 3000 })
    if (!wide.ok) throw new Error('a wide door is no trouble by itself')
    expect(stateOf(wide.value, 'door-1')).toEqual({ words: 'does not fit these leaves', mood: 'wrong' })
    expect(partState(null).mood).toBe('wrong')
  })

  it('counts what is to be mended as the findings do', () => {
    for (const face of derive(job, withoutMemory).parts) {
      const wrong = face.findings.filter(({ grade }) => grade === 'wrong').length
      expect(partState(face).mood === 'wrong').toBe(wrong > 0 || face.play.region.length === 0)
    }
  })
})

describe('the list of parts', () => {
  it('[J20] shows show faces first and keeps the order within a class', () => {
    const mixed = [...job.parts].reverse()
    const shown = showFacesFirst(mixed)
    const names = (hidden: boolean) => mixed.filter((part) => (part.showClass === 'hidden') === hidden)
    expect(shown).toEqual([...names(false), ...names(true)])
    expect(mixed).toEqual([...job.parts].reverse())
  })

  it('finds a name for a copy that no part has', () => {
    const named = (...names: string[]) => names.map((name) => ({ ...job.parts[0]!, name }))
    expect(copyName('Door', named('Door'))).toBe('Door, copy')
    expect(copyName('Door', named('Door', 'Door, copy'))).toBe('Door, copy 2')
  })
})
