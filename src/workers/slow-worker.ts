/// <reference lib="webworker" />
import { answerInSteps, type AnswerStep, type Question } from '../core/fit/questions'
import { rememberingAnswers } from '../store/memory'

export interface ToSlowWorker {
  readonly id: number
  readonly question: Question
}

export type FromSlowWorker =
  | { readonly kind: 'step'; readonly id: number; readonly step: AnswerStep }
  | { readonly kind: 'done'; readonly id: number }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromSlowWorker): void => scope.postMessage(message)

// one question at a time: whoever wants none of it any more ends the worker
scope.onmessage = ({ data: { id, question } }: MessageEvent<ToSlowWorker>) => {
  try {
    for (const step of answerInSteps(question, rememberingAnswers())) tell({ kind: 'step', id, step })
    tell({ kind: 'done', id })
  } catch (error) {
    tell({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) })
  }
}
