import type { Job } from '../core/job/job'
import { emptyJob } from '../core/job/usual'
import { freezeDeep } from './freeze'
import { commitStep, redoLabel, redoStep, startHistory, undoLabel, undoStep, type History } from './history'

/** Holds the place until the constructor has the job. */
const NOTHING = emptyJob('')

type Listener = (job: Job) => void

/**
 * The job being worked on, with its history: the one door through which it changes. A drag shows what it would do with
 * `preview` at each move, and then commits once or cancels; nothing that is only previewed is kept.
 */
export class JobStore {
  #history: History<Job> = $state.raw(startHistory(NOTHING))
  #previewed: Job | null = $state.raw(null)
  #listeners: readonly Listener[] = []
  readonly #checked: (job: Job) => Job

  /** In development jobs are frozen: a change in place is a mistake, and is found where it is made. */
  constructor(job: Job, { freeze = import.meta.env.DEV }: { freeze?: boolean } = {}) {
    this.#checked = freeze ? freezeDeep : (given) => given
    this.#history = startHistory(this.#checked(job))
  }

  /** What is to be shown: the job as previewed, or as it was last decided. */
  readonly job = $derived(this.#previewed ?? this.#history.present)

  /** The job as it was last decided. */
  readonly decided = $derived(this.#history.present)

  readonly isPreviewing = $derived(this.#previewed !== null)

  /** What undo would take back and redo would bring back, for the menu; null if there is nothing. */
  readonly undoLabel = $derived(undoLabel(this.#history))
  readonly redoLabel = $derived(redoLabel(this.#history))

  /** One step that can be undone, called `label`; none if `next` is the job as it is. */
  commit(label: string, next: Job): void {
    this.#goTo(commitStep(this.#history, label, this.#checked(next)))
  }

  /** Shows `next` until it is committed, cancelled, or followed by another. */
  preview(next: Job): void {
    this.#previewed = this.#checked(next)
  }

  cancel(): void {
    this.#previewed = null
  }

  undo(): void {
    this.#goTo(undoStep(this.#history))
  }

  redo(): void {
    this.#goTo(redoStep(this.#history))
  }

  /** Another job in place of this one, with a history of its own. */
  open(job: Job): void {
    this.#goTo(startHistory(this.#checked(job)))
  }

  /** Calls `listener` with every newly decided job; gives the way to stop that. */
  onDecided(listener: Listener): () => void {
    this.#listeners = [...this.#listeners, listener]
    return () => {
      this.#listeners = this.#listeners.filter((other) => other !== listener)
    }
  }

  #goTo(history: History<Job>): void {
    const before = this.#history.present
    this.#previewed = null
    this.#history = history
    if (history.present !== before) this.#listeners.forEach((listener) => listener(history.present))
  }
}
