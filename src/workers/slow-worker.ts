/// <reference lib="webworker" />
import { pictureScores } from '../core/fit/picture-scores'
import type { FaceScore } from '../core/fit/proposals'
import { answerInSteps, type Question } from '../core/fit/questions'
import { rememberingAnswers } from '../store/memory'
import type { ToldStep } from '../store/slow-answers.svelte'
import { figuresOfLeaves } from './figures-of-leaves'
import type { WoodSource } from './wood-source'

export interface ToSlowWorker {
  readonly id: number
  readonly question: Question
  /** Where pictures of the leaves come from, if the answer goes by them. */
  readonly source: WoodSource | null
}

export type FromSlowWorker =
  | { readonly kind: 'step'; readonly id: number; readonly step: ToldStep }
  | { readonly kind: 'done'; readonly id: number }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

const scope = self as unknown as DedicatedWorkerGlobalScope
const tell = (message: FromSlowWorker): void => scope.postMessage(message)

/** The share of the work that looking at the pictures takes. */
const LOOKING = 0.4

// one question at a time: whoever wants none of it any more ends the worker
scope.onmessage = async ({ data: { id, question, source } }: MessageEvent<ToSlowWorker>) => {
  try {
    const scores = source ? await scoresFrom(source, { id, question }) : []
    const before = source ? LOOKING : 0
    for (const { share, answer } of answerInSteps(question, rememberingAnswers(), scores))
      tell({ kind: 'step', id, step: { share: before + share * (1 - before), answer } })
    tell({ kind: 'done', id })
  } catch (error) {
    tell({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) })
  }
}

async function scoresFrom(
  source: WoodSource,
  { id, question }: Pick<ToSlowWorker, 'id' | 'question'>,
): Promise<readonly FaceScore[]> {
  const looked = (share: number) => tell({ kind: 'step', id, step: { share: LOOKING * share, answer: null } })
  return pictureScores(await figuresOfLeaves(source, question.flitches.field, looked))
}
