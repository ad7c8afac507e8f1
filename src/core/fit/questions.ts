import type { Part } from '../job/job'
import type { PartFlitches } from '../job/part-flitches'
import type { Shop } from '../shop'
import type { Answers } from './answers'
import type { Stock } from './joint-ways'
import { proposalsInSteps, type FaceScore, type Proposals } from './proposals'
import { waysToFitInSteps, type FitAdvice } from './ways-to-fit'

/** What is asked about one part: how long the answer takes is felt, so it is found beside the page. */
export interface Question<K extends QuestionKind = QuestionKind> {
  readonly kind: K
  readonly part: Part
  readonly flitches: PartFlitches
  readonly shop: Shop
  /** What strips may be ripped from; left out where it is not known, or does not matter. */
  readonly stock?: Stock
}

export interface AnswerTo {
  readonly 'ways to fit': FitAdvice
  readonly proposals: Proposals
}

export type QuestionKind = keyof AnswerTo

/** What is known so far, and how much of the looking is done, 0 to 1: at 1 it is the answer. */
export interface AnswerStep<K extends QuestionKind = QuestionKind> {
  readonly share: number
  readonly answer: AnswerTo[K]
}

/** The steps to the answer of a question. `scores` is what else faces are judged by, as by their pictures. */
export function answerInSteps<K extends QuestionKind>(
  { kind, part, flitches, shop, stock }: Question<K>,
  answers: Answers,
  scores: readonly FaceScore[] = [],
): Generator<AnswerStep<K>, void, void> {
  const steps: { readonly [Q in QuestionKind]: () => Generator<AnswerStep<Q>, void, void> } = {
    'ways to fit': () => waysToFitInSteps(part, flitches, shop, answers, stock),
    proposals: () => proposalsInSteps(part, flitches, shop, answers, scores),
  }
  return steps[kind]()
}
