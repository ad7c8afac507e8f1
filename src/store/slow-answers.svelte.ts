import { answerInSteps, type AnswerTo, type Question, type QuestionKind } from '../core/fit/questions'
import { rememberingAnswers } from './memory'

/** How far the looking has come, 0 to 1, and what is known so far: null before anything is. */
export interface ToldStep {
  readonly share: number
  readonly answer: AnswerTo[QuestionKind] | null
}

/** A question on its way to whoever finds slow answers. */
export interface Asked {
  readonly question: Question
  readonly onStep: (step: ToldStep) => void
  readonly onDone: () => void
  readonly onFailed: (message: string) => void
}

/** Begins to find an answer; what it gives ends that. */
export type Solver = (asked: Asked) => () => void

/** How a slow answer stands. */
export type Slow<K extends QuestionKind> =
  | { readonly state: 'pending'; readonly share: number; readonly answer: AnswerTo[K] | null }
  | { readonly state: 'found'; readonly answer: AnswerTo[K] }
  | { readonly state: 'failed'; readonly message: string }

/** Answers kept; the oldest is forgotten first. */
const KEPT = 40

/**
 * Answers that are found beside the page, kept under what they are about: decisions are never changed in place, so the
 * part, the flitch and the shop stand for their content. Another decision is another question; what was found for the
 * one before is still there after an undo.
 */
export class SlowAnswers {
  readonly #solver: Solver
  readonly #numbers = new WeakMap<object, number>()
  #nextNumber = 1
  #known = $state.raw<ReadonlyMap<string, Slow<QuestionKind>>>(new Map())
  readonly #endings = new Map<string, () => void>()

  constructor(solver: Solver = solveHere) {
    this.#solver = solver
  }

  /** null when it has not been asked, or was given up. */
  of<K extends QuestionKind>(question: Question<K>): Slow<K> | null {
    return (this.#known.get(this.#key(question)) as Slow<K> | undefined) ?? null
  }

  ask(question: Question): void {
    const key = this.#key(question)
    const before = this.#known.get(key)
    if (before && before.state !== 'failed') return
    this.#keep(key, { state: 'pending', share: 0, answer: null })
    const end = this.#solver({
      question,
      onStep: ({ share, answer }) => this.#keep(key, { state: 'pending', share, answer }),
      onDone: () => {
        this.#endings.delete(key)
        const last = this.#known.get(key)
        if (last?.state === 'pending' && last.answer) this.#keep(key, { state: 'found', answer: last.answer })
      },
      onFailed: (message) => {
        this.#endings.delete(key)
        this.#keep(key, { state: 'failed', message })
      },
    })
    if (this.#known.get(key)?.state === 'pending') this.#endings.set(key, end)
  }

  /** Gives a question up, if its answer is still being looked for. */
  cancel(question: Question): void {
    const key = this.#key(question)
    const end = this.#endings.get(key)
    if (!end) return
    end()
    this.#endings.delete(key)
    this.#known = new Map([...this.#known].filter(([other]) => other !== key))
  }

  #keep(key: string, slow: Slow<QuestionKind>): void {
    const others = [...this.#known].filter(([other]) => other !== key)
    this.#known = new Map([...others, [key, slow] as const].slice(-KEPT))
  }

  #key({ kind, part, flitches, shop, stock }: Question): string {
    return [
      kind,
      ...[part, flitches.field, flitches.border, shop, ...(stock ? [stock] : [])].map((thing) => this.#numberOf(thing)),
    ].join(' ')
  }

  #numberOf(thing: object): number {
    const known = this.#numbers.get(thing)
    if (known) return known
    this.#numbers.set(thing, this.#nextNumber)
    return this.#nextNumber++
  }
}

/** Where there is no worker: all at once, in the page. */
const solveHere: Solver = ({ question, onStep, onDone }) => {
  for (const step of answerInSteps(question, rememberingAnswers())) onStep(step)
  onDone()
  return () => undefined
}
