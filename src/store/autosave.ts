import type { Job } from '../core/job/job'
import { readJob } from '../core/job/read-job'
import { jobSentence } from '../core/job/trouble-wording'
import { writeJob } from '../core/job/write-job'
import type { JobAside, LocalBase } from './local-base'

/** What the person should know about the keeping of the job. */
export type Keeping =
  | { readonly keeping: 'kept' }
  | { readonly keeping: 'under way' }
  /** The browser would not keep it, for instance because the disk is full. */
  | { readonly keeping: 'failed'; readonly why: string }
  /** Another tab has the job: nothing is kept from here until `takeOver`. */
  | { readonly keeping: 'elsewhere' }

export type Restored =
  | { readonly found: 'nothing' }
  | { readonly found: 'job'; readonly job: Job }
  /** It could not be read and has been put aside. */
  | { readonly found: 'broken'; readonly why: string }

export interface AutosaveOptions {
  /** Names this tab; different for each. */
  readonly tab: string
  readonly onKeeping: (keeping: Keeping) => void
  /** The least time between two keepings, ms; the first change after a rest is kept at once. */
  readonly pause?: number
}

/**
 * Keeps every decided job in this browser. Two tabs never overwrite one another's work unseen: what is kept carries the
 * tab and a turn, both are compared in the transaction that writes, and a tab that finds another's turn there stops.
 */
export class Autosave {
  /** The turn that this tab last wrote or took up. */
  #turn = 0
  #waiting: Job | null = null
  #timer: ReturnType<typeof setTimeout> | null = null
  #writing: Promise<void> = Promise.resolve()
  #isElsewhere = false

  constructor(
    private readonly base: LocalBase,
    private readonly options: AutosaveOptions,
  ) {}

  /** The job kept last. One that can't be read is put aside first, so that nothing overwrites it. */
  async restore(): Promise<Restored> {
    const kept = await this.base.get('job', 'current')
    this.#turn = kept?.turn ?? 0
    if (!kept) return { found: 'nothing' }
    const read = readJob(kept.text)
    if (read.ok) return { found: 'job', job: read.value }
    const why = jobSentence(read.reason)
    await this.base.add('aside', { text: kept.text, why })
    return { found: 'broken', why }
  }

  /** Keeps `job`, at once or as soon as the pause since the last time is over. */
  keep(job: Job): void {
    this.#waiting = job
    if (this.#isElsewhere) return this.options.onKeeping({ keeping: 'elsewhere' })
    this.options.onKeeping({ keeping: 'under way' })
    if (this.#timer !== null) return
    void this.flush()
    this.#timer = setTimeout(() => {
      this.#timer = null
      if (this.#waiting) this.keep(this.#waiting)
    }, this.options.pause ?? 250)
  }

  /** Keeps now what is waiting: for when the page goes. */
  flush(): Promise<void> {
    const job = this.#waiting
    if (job === null || this.#isElsewhere) return this.#writing
    this.#waiting = null
    this.#writing = this.#write(job, this.#writing)
    return this.#writing
  }

  /** Another tab has the job (see tab-lock.ts): from now on nothing is kept from here. */
  standBack(): void {
    this.#isElsewhere = true
    this.options.onKeeping({ keeping: 'elsewhere' })
  }

  /**
   * Makes this the tab that keeps. What another has kept meanwhile is given back to be taken up; if `mine` is given,
   * that is kept instead. What gives way is put aside.
   */
  async takeOver(mine: Job | null): Promise<Restored> {
    const unkept = this.#waiting
    this.#isElsewhere = false
    this.#waiting = null
    if (mine === null) {
      if (unkept)
        await this.base.add('aside', { text: writeJob(unkept), why: 'Changed while another tab had the job.' })
      const restored = await this.restore()
      this.options.onKeeping({ keeping: 'kept' })
      return restored
    }
    const theirs = await this.base.get('job', 'current')
    const isOthers = theirs && theirs.tab !== this.options.tab
    if (isOthers) await this.base.add('aside', { text: theirs.text, why: 'Kept by another tab.' })
    this.#turn = theirs?.turn ?? 0
    this.keep(mine)
    await this.flush()
    return { found: 'nothing' }
  }

  async #write(job: Job, before: Promise<void>): Promise<void> {
    try {
      await before
      if (await this.#written(job)) this.options.onKeeping({ keeping: this.#waiting ? 'under way' : 'kept' })
      else this.standBack()
    } catch (error) {
      this.#waiting ??= job
      this.options.onKeeping({ keeping: 'failed', why: error instanceof Error ? error.message : String(error) })
    }
  }

  /** False if another tab has kept something since this one last did. */
  async #written(job: Job): Promise<boolean> {
    const text = writeJob(job)
    const transaction = this.base.transaction('job', 'readwrite')
    const there = await transaction.store.get('current')
    const turn = there?.turn ?? 0
    if (turn !== this.#turn && there?.tab !== this.options.tab) {
      await transaction.done
      return false
    }
    await transaction.store.put({ text, tab: this.options.tab, turn: turn + 1 }, 'current')
    await transaction.done
    this.#turn = turn + 1
    return true
  }
}

/** Jobs that were put aside, the oldest first, with the key to remove each. */
export async function jobsAside(base: LocalBase): Promise<readonly (JobAside & { readonly key: number })[]> {
  const keys = await base.getAllKeys('aside')
  const jobs = await base.getAll('aside')
  return jobs.map((job, i) => ({ ...job, key: keys[i]! }))
}

export const removeAside = (base: LocalBase, key: number): Promise<void> => base.delete('aside', key)
