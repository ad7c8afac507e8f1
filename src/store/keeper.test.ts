/**
 * Rules.
 * H7 Every decided job is kept: the first after a rest at once, the last within 300 ms, and all when the page goes.
 * H8 A kept job that can't be read is put aside and said so; nothing overwrites it.
 * H10 A second tab knows that it is one; two tabs never overwrite one another's work unseen.
 */
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { SAMPLE } from '../../tests/generators/sample-job'
import type { Job } from '../core/job/job'
import { emptyJob } from '../core/job/usual'
import { readJob } from '../core/job/read-job'
import { writeJob } from '../core/job/write-job'
import { jobsAside, removeAside } from './autosave'
import { JobStore } from './job-store.svelte'
import { Keeper } from './keeper.svelte'
import { openLocalBase, type LocalBase } from './local-base'
import { keepPhoto, keepPhotos, readPhoto, readPhotos } from './photos'
import type { Locks } from './tab-lock'

let base: LocalBase
let count = 0
beforeEach(async () => {
  base = await openLocalBase(`test ${++count}`)
})
afterEach(() => {
  vi.useRealTimers()
  base.close()
})

const named = (name: string): Job => ({ ...SAMPLE, name })

async function keptName(): Promise<string | null> {
  const kept = await base.get('job', 'current')
  const read = kept && readJob(kept.text)
  return read?.ok ? read.value.name : null
}

/** One tab of the browser: its own store and keeper on the one base. */
function openTab(tab: string, locks?: Locks, openBase = () => Promise.resolve(base)) {
  const jobs = new JobStore(emptyJob('new'))
  const page = new EventTarget()
  return { jobs, page, keeper: new Keeper(jobs, { openBase, locks, page, tab }) }
}

/** Locks as browsers give them: one holder; to take by force ends the holder's request in an error. */
function browserLocks(): Locks {
  let release: ((error: Error) => void) | null = null
  const request = async (_name: string, options: LockOptions, answer: (lock: object | null) => unknown) => {
    if (release && options.ifAvailable) return answer(null)
    release?.(new Error('stolen'))
    const stolen = new Promise<never>((_, reject) => (release = reject))
    return Promise.race([stolen, answer({})])
  }
  return { request } as unknown as Locks
}

describe('the keeper', () => {
  it('[H7] brings back the job that was decided last', async () => {
    const first = openTab('one')
    expect(await first.keeper.start()).toEqual({ found: 'nothing' })
    first.jobs.commit('Open', SAMPLE)
    first.jobs.preview(named('only tried'))
    await vi.waitFor(async () => expect(await keptName()).toBe('Sideboard'))
    const second = openTab('two')
    expect(await second.keeper.start()).toEqual({ found: 'job', job: SAMPLE })
    expect(second.jobs.job).toEqual(SAMPLE)
    expect(second.jobs.undoLabel).toBeNull()
  })

  it('[H7] keeps the first change at once and the last of a burst within 300 ms', async () => {
    const { jobs, keeper } = openTab('one')
    await keeper.start()
    jobs.commit('1', named('1'))
    expect(keeper.keeping).toEqual({ keeping: 'under way' })
    await vi.waitFor(async () => expect(await keptName()).toBe('1'), { interval: 1, timeout: 150 })
    for (let i = 2; i <= 30; i++) jobs.commit(String(i), named(String(i)))
    const began = performance.now()
    await vi.waitFor(async () => expect(await keptName()).toBe('30'), { interval: 5 })
    expect(performance.now() - began).toBeLessThan(330)
    await vi.waitFor(() => expect(keeper.keeping).toEqual({ keeping: 'kept' }))
    expect((await base.get('job', 'current'))?.turn).toBe(2)
  })

  it('[H7] keeps what is waiting when the page goes', async () => {
    const { jobs, keeper, page } = openTab('one')
    await keeper.start()
    jobs.commit('1', named('1'))
    jobs.commit('2', named('2'))
    page.dispatchEvent(new Event('pagehide'))
    await vi.waitFor(async () => expect(await keptName()).toBe('2'), { interval: 1, timeout: 120 })
  })

  it.each([
    { stored: '{ "format": "leafturn job", "ver', why: /not well-formed JSON/ },
    { stored: writeJob(SAMPLE).replace('"version": 1', '"version": 7'), why: /A newer Leafturn is needed/ },
    { stored: writeJob(SAMPLE).replace('"width": 500', '"width": -500'), why: /width is -500 mm/ },
  ])('[H8] puts aside what it can not read: $why', async ({ stored, why }) => {
    await base.put('job', { text: stored, tab: 'before', turn: 4 }, 'current')
    const { jobs, keeper } = openTab('one')
    const restored = await keeper.start()
    expect(restored).toEqual({ found: 'broken', why: expect.stringMatching(why) as string })
    expect(jobs.job.name).toBe('new')
    jobs.commit('Open', SAMPLE)
    await vi.waitFor(async () => expect(await keptName()).toBe('Sideboard'))
    const [aside] = await jobsAside(base)
    expect(aside).toMatchObject({ text: stored })
    await removeAside(base, aside!.key)
    expect(await jobsAside(base)).toEqual([])
  })

  it('[H7] says when the browser does not keep, and keeps on trying', async () => {
    const { jobs, keeper } = openTab('one')
    await keeper.start()
    const put = vi.spyOn(base, 'transaction').mockImplementationOnce(() => {
      throw new DOMException('The disk is full.', 'QuotaExceededError')
    })
    jobs.commit('1', named('1'))
    await vi.waitFor(() => expect(keeper.keeping).toEqual({ keeping: 'failed', why: 'The disk is full.' }))
    expect(put).toHaveBeenCalledOnce()
    await vi.waitFor(async () => expect(await keptName()).toBe('1'))
    await vi.waitFor(() => expect(keeper.keeping).toEqual({ keeping: 'kept' }))
  })

  it('says when the browser keeps nothing at all', async () => {
    const { jobs, keeper } = openTab('one', undefined, () => Promise.reject(new Error('No storage here.')))
    expect(await keeper.start()).toEqual({ found: 'nothing' })
    expect(keeper.keeping).toEqual({ keeping: 'failed', why: 'No storage here.' })
    jobs.commit('1', named('1'))
    expect(jobs.job.name).toBe('1')
  })
})

describe('a second tab', () => {
  async function twoTabs() {
    const locks = browserLocks()
    const [first, second] = [openTab('one', locks), openTab('two', locks)]
    await first.keeper.start()
    first.jobs.commit('1', named('first'))
    await vi.waitFor(async () => expect(await keptName()).toBe('first'))
    await second.keeper.start()
    return { first, second }
  }

  it('[H10] is known at once, and keeps nothing', async () => {
    const { first, second } = await twoTabs()
    expect(first.keeper.keeping).toEqual({ keeping: 'kept' })
    expect(second.keeper.keeping).toEqual({ keeping: 'elsewhere' })
    second.jobs.commit('2', named('second'))
    await new Promise((resolve) => setTimeout(resolve, 320))
    expect(await keptName()).toBe('first')
  })

  it('[H10] takes over with the job of the first', async () => {
    const { first, second } = await twoTabs()
    first.jobs.commit('1b', named('first, later'))
    await vi.waitFor(async () => expect(await keptName()).toBe('first, later'))
    await second.keeper.takeOver('theirs')
    expect(second.jobs.job.name).toBe('first, later')
    await vi.waitFor(() => expect(second.keeper.keeping).toEqual({ keeping: 'kept' }))
    await vi.waitFor(() => expect(first.keeper.keeping).toEqual({ keeping: 'elsewhere' }))
    second.jobs.commit('2', named('second'))
    await vi.waitFor(async () => expect(await keptName()).toBe('second'))
    first.jobs.commit('1c', named('first, too late'))
    await new Promise((resolve) => setTimeout(resolve, 320))
    expect(await keptName()).toBe('second')
  })

  it('[H10] that has changed something puts its job aside before it takes up that of the first', async () => {
    const { second } = await twoTabs()
    second.jobs.commit('2', named('second'))
    await second.keeper.takeOver('theirs')
    expect(second.jobs.job.name).toBe('first')
    expect((await jobsAside(base)).map(({ text }) => text)).toEqual([writeJob(named('second'))])
  })

  it('[H10] takes over with its own job, and that of the first is put aside', async () => {
    const { second } = await twoTabs()
    second.jobs.commit('2', named('second'))
    await second.keeper.takeOver('mine')
    expect(await keptName()).toBe('second')
    const [aside] = await jobsAside(base)
    expect(aside?.text).toBe(writeJob(named('first')))
    expect(second.keeper.keeping).toEqual({ keeping: 'kept' })
  })

  it('[H10] where the browser has no locks, the tab that comes too late stands back', async () => {
    const [first, second] = [openTab('one'), openTab('two')]
    await first.keeper.start()
    await second.keeper.start()
    first.jobs.commit('1', named('first'))
    await vi.waitFor(async () => expect(await keptName()).toBe('first'))
    second.jobs.commit('2', named('second'))
    await vi.waitFor(() => expect(second.keeper.keeping).toEqual({ keeping: 'elsewhere' }))
    expect(await keptName()).toBe('first')
    await second.keeper.takeOver('mine')
    expect(await keptName()).toBe('second')
    first.jobs.commit('1b', named('first, later'))
    await vi.waitFor(() => expect(first.keeper.keeping).toEqual({ keeping: 'elsewhere' }))
    expect(await keptName()).toBe('second')
  })
})

describe('photos', () => {
  const bytes = (text: string) => new TextEncoder().encode(text) as Uint8Array<ArrayBuffer>

  it('are kept once under the hash of what they hold', async () => {
    const name = await keepPhoto(base, bytes('leaf one'), 'webp')
    expect(name).toMatch(/^[0-9a-f]{32}\.webp$/)
    expect(await keepPhoto(base, bytes('leaf one'), 'webp')).toBe(name)
    expect(await keepPhoto(base, bytes('leaf two'), 'webp')).not.toBe(name)
    expect(await readPhoto(base, name)).toEqual(bytes('leaf one'))
    expect(await readPhoto(base, 'none.webp')).toBeNull()
  })

  it('come and go with a job', async () => {
    await keepPhotos(base, new Map([['a.webp', bytes('a')]]))
    expect(await readPhotos(base, ['a.webp', 'b.webp'])).toEqual(new Map([['a.webp', bytes('a')]]))
  })
})
