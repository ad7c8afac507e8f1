/**
 * Rules.
 * H4 A drag is one step however many moves it had, and none when it is cancelled.
 * H5 A change in place throws where it is made, in development.
 * H6 Whoever keeps the job hears of every decided state, and of none that is only previewed.
 */
import { describe, expect, it } from 'vitest'
import { SAMPLE } from '../../tests/generators/sample-job'
import type { Job } from '../core/job/job'
import { freezeDeep } from './freeze'
import { JobStore } from './job-store.svelte'

const named = (name: string): Job => ({ ...SAMPLE, name })

describe('the job store', () => {
  it('[H4] takes one step for a drag', () => {
    const store = new JobStore(SAMPLE)
    for (const name of ['a', 'b', 'c']) store.preview(named(name))
    expect(store.job.name).toBe('c')
    expect(store.decided).toBe(SAMPLE)
    expect(store.isPreviewing).toBe(true)
    store.commit('Move the window', store.job)
    expect(store.undoLabel).toBe('Move the window')
    store.undo()
    expect(store.job).toBe(SAMPLE)
    expect(store.undoLabel).toBeNull()
    expect(store.redoLabel).toBe('Move the window')
    store.redo()
    expect(store.job.name).toBe('c')
  })

  it('[H4] takes none for a drag that is cancelled, or that ends where it began', () => {
    const store = new JobStore(SAMPLE)
    store.preview(named('a'))
    store.cancel()
    expect(store.job).toBe(SAMPLE)
    store.preview(named('a'))
    store.commit('Move the window', SAMPLE)
    expect(store.job).toBe(SAMPLE)
    expect(store.isPreviewing).toBe(false)
    expect(store.undoLabel).toBeNull()
  })

  it('drops a preview when something is undone meanwhile', () => {
    const store = new JobStore(SAMPLE)
    store.commit('Rename', named('a'))
    store.preview(named('b'))
    store.undo()
    expect(store.job).toBe(SAMPLE)
  })

  it('[H5] freezes what it is given, but not in production', () => {
    const store = new JobStore(structuredClone(SAMPLE))
    const part = store.job.parts[0] as { width: number }
    expect(() => (part.width = 3)).toThrow(TypeError)
    store.commit('Rename', structuredClone(named('a')))
    expect(() => ((store.job.flitches[0]!.leaves[2]!.drift as { x: number }).x = 3)).toThrow(TypeError)
    const free = new JobStore(structuredClone(SAMPLE), { freeze: false })
    expect(Object.isFrozen(free.job)).toBe(false)
  })

  it('[H5] freezes what is new and does not visit what is shared', () => {
    const shared = freezeDeep({ deep: { a: 1 } })
    const next = freezeDeep({ shared, fresh: [{ b: 2 }] })
    expect(Object.isFrozen(next.fresh[0])).toBe(true)
    expect(next.shared).toBe(shared)
  })

  it('[H6] tells of every decided job', () => {
    const store = new JobStore(SAMPLE)
    const heard: string[] = []
    const stop = store.onDecided(({ name }) => heard.push(name))
    store.preview(named('moved'))
    store.commit('Move', named('a'))
    store.commit('Nothing', store.job)
    store.undo()
    store.redo()
    store.open(named('other'))
    stop()
    store.commit('Unheard', named('b'))
    expect(heard).toEqual(['a', 'Sideboard', 'a', 'other'])
  })

  it('begins a new history with another job', () => {
    const store = new JobStore(SAMPLE)
    store.commit('Rename', named('a'))
    store.open(named('other'))
    expect([store.undoLabel, store.redoLabel]).toEqual([null, null])
  })
})
