/** What a door needs of a worker; tests play it. */
export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>

/** A task that a worker of its own does, once. */
export interface TaskAside<Answer> {
  /** null when it was stopped before it was done. Rejects when the worker fails. */
  readonly done: Promise<Answer | null>
  readonly stop: () => void
}

/**
 * Has a task done beside the page by a worker that ends with it, however it ends. `hear` is told what the worker says,
 * and gives the answer when it is there; `missing` says what did not start.
 */
export function taskAside<Told, Answer>(
  worker: WorkerLike,
  task: unknown,
  missing: string,
  hear: (told: Told) => Answer | undefined,
): TaskAside<Answer> {
  let stop: () => void = () => undefined
  const done = new Promise<Answer | null>((resolve, reject) => {
    stop = () => resolve(null)
    worker.onmessage = ({ data }: MessageEvent<Told | Failed>) => {
      if (isFailed(data)) return reject(new Error(data.message))
      const answer = hear(data)
      if (answer !== undefined) resolve(answer)
    }
    worker.onerror = ({ message }) => reject(new Error(message || `${missing} did not start`))
  }).finally(() => worker.terminate())
  worker.postMessage(task)
  return { done, stop: () => stop() }
}

/** How every worker tells that it could not go on. */
export interface Failed {
  readonly kind: 'failed'
  readonly message: string
}

const isFailed = (told: unknown): told is Failed => (told as Partial<Failed>).kind === 'failed'
