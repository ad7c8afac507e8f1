import type { Asked, Solver } from '../store/slow-answers.svelte'
import type { FromSlowWorker, ToSlowWorker } from './slow-worker'
import type { WorkerLike } from './one-task'

const startSlowWorker = (): WorkerLike => new Worker(new URL('./slow-worker.ts', import.meta.url), { type: 'module' })

interface Waiting {
  readonly id: number
  readonly asked: Asked
}

/**
 * Finds slow answers beside the page, one at a time in the order in which they were asked. A question that is given up
 * while it is worked on ends the worker; the next one starts another.
 */
export function createSolver(startWorker: () => WorkerLike = startSlowWorker): Solver {
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
    worker ??= opened()
    const message: ToSlowWorker = { id: first.id, question: first.asked.question }
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
