/**
 * Rules kept here:
 * [H-slow-1] Questions are worked on one at a time, in the order asked; each step is told to whoever asked.
 * [H-slow-2] A question that is given up ends the worker if it was worked on, and no answer comes; the next is begun.
 * [H-slow-4] A question that goes by pictures is begun when they are there, or can't be had; not if it was given up.
 * [H-slow-3] A worker that breaks answers the question it had, and the next gets another worker.
 */
import { describe, expect, it } from 'vitest'
import { blankLeaf, rectangle, usualFlitch, usualPart } from '../core/job/usual'
import type { Question } from '../core/fit/questions'
import { USUAL_SHOP } from '../core/shop'
import { SlowAnswers } from '../store/slow-answers.svelte'
import type { WorkerLike } from './one-task'
import { createSolver, type PicturesFor } from './slow-door'
import type { WoodSource } from './wood-source'
import type { FromSlowWorker, ToSlowWorker } from './slow-worker'

const flitch = usualFlitch('f', 'Walnut', rectangle(200, 900), [blankLeaf(1), blankLeaf(2)])
const questionOf = (name: string): Question => ({
  kind: 'ways to fit',
  part: usualPart(name, name, 300, 700, flitch),
  flitches: { field: flitch, border: flitch },
  shop: USUAL_SHOP,
})
const none = { governing: [], ways: [], scarf: null }

/** Workers played by the test. */
function played(picturesFor?: PicturesFor) {
  const workers: (WorkerLike & { asked: ToSlowWorker[]; ended: boolean })[] = []
  const start = () => {
    const worker = {
      asked: [] as ToSlowWorker[],
      ended: false,
      onmessage: null as WorkerLike['onmessage'],
      onerror: null as WorkerLike['onerror'],
      postMessage: (message: ToSlowWorker) => void worker.asked.push(message),
      terminate: () => void (worker.ended = true),
    }
    workers.push(worker)
    return worker
  }
  const tell = (nth: number, data: FromSlowWorker) =>
    workers[nth]!.onmessage?.call(workers[nth] as unknown as Worker, { data } as MessageEvent)
  return { workers, tell, slow: new SlowAnswers(createSolver(picturesFor, start)) }
}

describe('slow answers', () => {
  it('[H-slow-1] one at a time, with progress, and kept for the same decisions', () => {
    const { workers, tell, slow } = played()
    const [door, lid] = [questionOf('door'), questionOf('lid')]
    expect(slow.of(door)).toBeNull()
    slow.ask(door)
    slow.ask(lid)
    slow.ask(door)
    expect(workers.map(({ asked }) => asked.map(({ question }) => question.part.id))).toEqual([['door']])
    tell(0, { kind: 'step', id: 1, step: { share: 0.4, answer: none } })
    expect(slow.of(door)).toEqual({ state: 'pending', share: 0.4, answer: none })
    tell(0, { kind: 'done', id: 1 })
    expect(slow.of(door)).toEqual({ state: 'found', answer: none })
    expect(workers[0]!.asked.map(({ question }) => question.part.id)).toEqual(['door', 'lid'])
    // another decision is another question, though it says the same
    expect(slow.of(questionOf('door'))).toBeNull()
  })

  it('[H-slow-2] given up while it waits, and while it is worked on', () => {
    const { workers, tell, slow } = played()
    const [door, lid, side] = [questionOf('door'), questionOf('lid'), questionOf('side')]
    for (const question of [door, lid, side]) slow.ask(question)
    slow.cancel(lid)
    expect(workers[0]!.ended).toBe(false)
    slow.cancel(door)
    expect([slow.of(door), slow.of(lid)]).toEqual([null, null])
    expect(workers.map(({ ended }) => ended)).toEqual([true, false])
    expect(workers[1]!.asked.map(({ question }) => question.part.id)).toEqual(['side'])
    // what the ended worker had still to say is not listened to
    tell(0, { kind: 'done', id: 1 })
    expect(slow.of(door)).toBeNull()
  })

  it('[H-slow-3] a broken worker', () => {
    const { workers, slow } = played()
    const [door, lid] = [questionOf('door'), questionOf('lid')]
    slow.ask(door)
    slow.ask(lid)
    workers[0]!.onerror?.call(workers[0] as unknown as Worker, { message: 'out of memory' } as ErrorEvent)
    expect(slow.of(door)).toEqual({ state: 'failed', message: 'out of memory' })
    expect(workers[1]!.asked.map(({ question }) => question.part.id)).toEqual(['lid'])
  })

  it('[H-slow-4] pictures are fetched first', async () => {
    const source: WoodSource = { kind: 'photographs', leaves: new Map() }
    const { workers, slow } = played(({ part }) =>
      part.id === 'torn' ? Promise.reject(new Error('gone')) : part.id === 'side' ? null : Promise.resolve(source),
    )
    const [door, lid, torn, side] = ['door', 'lid', 'torn', 'side'].map(questionOf)
    for (const question of [door, lid, torn, side]) slow.ask(question!)
    expect(slow.of(door!)).toEqual({ state: 'pending', share: 0, answer: null })
    slow.cancel(door!)
    await new Promise((done) => setTimeout(done))
    expect(workers[0]!.asked.map(({ question, source }) => [question.part.id, source])).toEqual([['lid', source]])
    slow.cancel(lid!)
    await new Promise((done) => setTimeout(done))
    expect(workers[1]!.asked.map(({ question, source }) => [question.part.id, source])).toEqual([['torn', null]])
  })

  it('[H-slow-1] without a worker the answer is found in the page', () => {
    const slow = new SlowAnswers()
    const question = questionOf('door')
    slow.ask(question)
    expect(slow.of(question)?.state).toBe('found')
  })
})
