/** A thread of the bench of photographs: composes the photograph it is told of, reads it and tells what it made of it. */
import { parentPort } from 'node:worker_threads'
import { composePhoto, type PhotoOptions } from '../photographs/compose'
import { judge, type Judgement } from '../photographs/judge'

export interface Trial {
  readonly found: Judgement
  /** Milliseconds that the reading took. */
  readonly took: number
}

parentPort?.on('message', (options: PhotoOptions) => {
  const photo = composePhoto(options)
  const before = performance.now()
  const found = judge(photo)
  parentPort?.postMessage({ found, took: performance.now() - before } satisfies Trial)
})
