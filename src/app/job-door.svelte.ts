import { getContext, setContext } from 'svelte'
import { demoJob } from '../core/figure/demo-job'
import { picturesOf } from '../core/commands/photo-commands'
import { invariant } from '../core/invariant'
import type { Job } from '../core/job/job'
import { emptyJob } from '../core/job/usual'
import { fileNameFor, openFile, saveFile, type FileHandle } from '../store/file-door'
import { jobFileSentence, packJob, unpackJob } from '../store/job-file'
import { Keeper } from '../store/keeper.svelte'
import { PhotoShelf } from '../store/photo-shelf'
import type { Workshop } from '../store/workshop.svelte'

/** How jobs come into the program and leave it: kept in this browser, opened from files, saved to them. */
export class JobDoor {
  readonly keeper: Keeper
  #handle: FileHandle = null

  /** The pictures of leaves, which come and go with their job. */
  readonly shelf = new PhotoShelf(() => this.keeper.base)

  constructor(readonly workshop: Workshop) {
    this.keeper = new Keeper(workshop.jobs)
  }

  /** Whether another tab has the job. */
  readonly isElsewhere = $derived.by(() => this.keeper.keeping.keeping === 'elsewhere')

  /** What to tell of the keeping. */
  readonly kept = $derived.by((): string => {
    const { keeping } = this.keeper
    switch (keeping.keeping) {
      case 'kept':
        return 'Every change is kept in this browser, and nowhere else.'
      case 'under way':
        return 'Keeping…'
      case 'failed':
        return `This browser could not keep the job: ${keeping.why} Save it as a file.`
      case 'elsewhere':
        return 'Another tab has this job; changes made here are not kept.'
    }
  })

  /** Takes up the job kept last, and keeps every change from now on. */
  async begin(): Promise<void> {
    const restored = await this.keeper.start()
    if (restored.found === 'broken')
      this.workshop.trouble = `The job kept in this browser could not be read and was put aside. ${restored.why}`
  }

  async takeOver(): Promise<void> {
    await this.keeper.takeOver('theirs')
    this.#forget()
  }

  async save(): Promise<void> {
    await this.#watched('saved', async () => {
      const { job } = this.workshop
      const saved = await saveFile(
        packJob(job, await this.shelf.readAll(picturesOf(job))),
        fileNameFor(job.name),
        this.#handle,
      )
      if (saved.outcome !== 'saved') return
      this.#handle = saved.handle
      this.workshop.said = `Saved as ${saved.name}`
    })
  }

  async open(): Promise<void> {
    await this.#watched('opened', async () => {
      const opening = await openFile()
      if (opening.outcome === 'gone away') return
      if (opening.outcome === 'too large') {
        this.workshop.trouble = `The file is ${Math.round(opening.bytes / 1e6)} MB; a job file is 500 MB at most.`
        return
      }
      const { file } = opening
      const unpacked = unpackJob(file.bytes)
      if (!unpacked.ok) {
        this.workshop.trouble = `“${file.name}” was not opened. ${jobFileSentence(unpacked.reason)}`
        return
      }
      await this.shelf.takeIn(unpacked.value.photos)
      this.replace(unpacked.value.job, `Open “${file.name}”`)
      this.#handle = file.handle
      const { mended } = unpacked.value
      if (mended) this.workshop.trouble = `“${file.name}” was opened, and mended: ${mended.join(' ')}`
    })
  }

  startNew(): void {
    this.replace(emptyJob('New job'), 'New job')
    this.workshop.session.station = 'flitch'
  }

  showDemo(): void {
    this.replace(demoJob(), 'Open the demonstration job')
    this.workshop.session.station = 'face'
  }

  /** Another job is one more step, so that the job before is not lost. */
  replace(job: Job, label: string): void {
    this.workshop.jobs.commit(label, job)
    this.#handle = null
    this.#forget()
  }

  #forget(): void {
    const { session } = this.workshop
    session.part = null
    session.flitch = null
    this.workshop.trouble = null
  }

  async #watched(done: string, action: () => Promise<void>): Promise<void> {
    try {
      await action()
    } catch (error) {
      this.workshop.trouble = `The file could not be ${done}: ${error instanceof Error ? error.message : String(error)}`
    }
  }
}

const KEY = Symbol('job door')

export const provideJobDoor = (door: JobDoor): void => {
  setContext(KEY, door)
}

export function useJobDoor(): JobDoor {
  const door = getContext<JobDoor | undefined>(KEY)
  invariant(door, 'there is no way to open jobs here')
  return door
}
