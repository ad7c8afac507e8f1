import type { Question } from '../core/fit/questions'
import type { Asked, Solver } from '../store/slow-answers.svelte'
import type { FromSlowWorker, ToSlowWorker } from './slow-worker'
import type { WorkerLike } from './one-task'
import type { WoodSource } from './wood-source'

const startSlowWorker = (): WorkerLike => new Worker(new URL('./slow-worker.ts', import.meta.url), { type: 'module' })

interface Waiting {
  readonly id: number
  readonly asked: Asked
}

/** Fetches the pictures by which a question is answered; null where there are none, or they don't matter. */
export type PicturesFor = (question: Question) => Promise<WoodSource> | null

/**
 * Finds slow answers beside the page, one at a time in the order in which they were asked. A question that is given up
 * while it is worked on ends the worker; the next one starts another.
 */
export function createSolver(
  picturesFor: PicturesFor = () => null,
  startWorker: () => WorkerLike = startSlowWorker,
): Solver {
  let worker: WorkerLike | null = null
  let waiting: readonly Waiting[] = []
  let nextId = 1

  const ended = (): void => {
    worker?.terminate()
    worker = null
  }

  function next(): void {
    const [first] = waiting
    if (!first) return
    const fetching = picturesFor(first.asked.question)
    if (!fetching) return begin(first, null)
    // without its pictures the question has an answer all the same
    void fetching.catch(() => null).then((source) => begin(first, source))
  }

  function begin(mine: Waiting, source: WoodSource | null): void {
    // it may have been given up while its pictures were fetched
    if (waiting[0] !== mine) return
    worker ??= opened()
    const message: ToSlowWorker = { id: mine.id, question: mine.asked.question, source }
    worker.postMessage(message)
  }

  function finished(id: number, tell: (asked: Asked) => void): void {
    const found = waiting.find((one) => one.id === id)
    if (!found) return
    waiting = waiting.filter((one) => one !== found)
    tell(found.asked)
    next()
  }

  function opened(): WorkerLike {
    const started = startWorker()
    started.onmessage = ({ data }: MessageEvent<FromSlowWorker>) => {
      if (data.kind === 'step') waiting.find(({ id }) => id === data.id)?.asked.onStep(data.step)
      else if (data.kind === 'done') finished(data.id, ({ onDone }) => onDone())
      else finished(data.id, ({ onFailed }) => onFailed(data.message))
    }
    started.onerror = ({ message }) => {
      const [first] = waiting
      ended()
      if (first) finished(first.id, ({ onFailed }) => onFailed(message))
    }
    return started
  }

  return (asked) => {
    const mine: Waiting = { id: nextId++, asked }
    waiting = [...waiting, mine]
    if (waiting[0] === mine) next()
    return () => {
      const wasFirst = waiting[0] === mine
      waiting = waiting.filter((one) => one !== mine)
      if (!wasFirst) return
      ended()
      next()
    }
  }
}
