import { getContext, setContext } from 'svelte'
import { commandSentence } from '../core/commands/command-trouble'
import type { Next } from '../core/commands/change-within'
import { holdCuts } from '../core/commands/hold-cuts'
import { deriveParts, type DerivedPart } from '../core/derive'
import { flitchesOf } from '../core/fit/lay-face'
import type { Stock } from '../core/fit/joint-ways'
import type { Question, QuestionKind } from '../core/fit/questions'
import { jobRests, leafRest, type LeafRest } from '../core/ledger/offcuts'
import { stockOf } from '../core/ledger/stock'
import type { FlitchId, LeafRef, PartId } from '../core/ids'
import type { Job, Part } from '../core/job/job'
import type { Flitch } from '../core/leaves/flitch'
import { showLength } from '../core/units/show-length'
import { invariant } from '../core/invariant'
import type { JobStore } from './job-store.svelte'
import { rememberingAnswers } from './memory'
import { Session } from './session.svelte'
import { SlowAnswers, type Solver } from './slow-answers.svelte'

/** What the stations work with: the job, what follows from it, and the one door for changes. */
export class Workshop {
  readonly session = new Session()
  readonly #answers = rememberingAnswers()

  /** Why the last thing asked for was not done; null when it was. */
  trouble = $state.raw<string | null>(null)
  /** What was last done, for those who can't see it. */
  said = $state.raw('')

  /** What takes too long for the page itself. */
  readonly slow: SlowAnswers

  constructor(
    readonly jobs: JobStore,
    solver?: Solver,
  ) {
    this.slow = new SlowAnswers(solver)
  }

  readonly job = $derived.by((): Job => this.jobs.job)
  readonly unit = $derived.by(() => this.job.unit)
  #isWhole = $state(false)

  /** Whether all parts have been looked at: at the start only the one that is shown. */
  get isWhole(): boolean {
    return this.#isWhole
  }

  readonly derived = $derived.by(() =>
    deriveParts(this.job, this.#isWhole ? this.job.parts : withPartners(this.job, this.part), this.#answers),
  )

  readonly part = $derived.by((): Part | null => {
    const { parts } = this.job
    return parts.find(({ id }) => id === this.session.part) ?? parts[0] ?? null
  })
  readonly face = $derived.by((): DerivedPart | null => (this.part ? this.faceOf(this.part.id) : null))
  readonly flitch = $derived.by((): Flitch | null => {
    const wanted = this.session.flitch ?? this.part?.flitch
    return this.job.flitches.find(({ id }) => id === wanted) ?? this.job.flitches[0] ?? null
  })

  /** Looks at the other parts too, one at a time, with a pause before each in which the page can be drawn and used. */
  async considerAll(pause: () => Promise<void>): Promise<void> {
    for (const part of this.job.parts) {
      await pause()
      deriveParts(this.job, [part], this.#answers)
    }
    this.#isWhole = true
  }

  faceOf(id: PartId): DerivedPart | null {
    return this.derived.parts.find(({ part }) => part.id === id) ?? null
  }

  flitchOf(id: FlitchId): Flitch | null {
    return this.job.flitches.find((flitch) => flitch.id === id) ?? null
  }

  /** What is left of the leaves of a face; none until all parts have been looked at, for what others take is not left. */
  restsOf(face: DerivedPart): readonly LeafRest[] {
    return this.#isWhole ? jobRests(this.derived.parts, this.job.shop, this.#answers, face) : []
  }

  /** What is left of one leaf; null while that is not known, or where nothing is taken from it. */
  restOf({ flitch: id, leaf }: LeafRef): LeafRest | null {
    const flitch = this.#isWhole ? this.flitchOf(id) : null
    return flitch && leafRest(this.derived.parts, this.job.shop, this.#answers, flitch, leaf)
  }

  /** A question about a face as it is decided now. */
  question<K extends QuestionKind>(kind: K, face: DerivedPart): Question<K> {
    const { part, flitch, border } = face
    const asked = { kind, part, flitches: { field: flitch, border: border?.flitch ?? flitch }, shop: this.job.shop }
    return kind === 'ways to fit' && this.#isWhole ? { ...asked, stock: this.#stockFor(face) } : asked
  }

  /** What the other faces leave, for strips; the same as long as they are. */
  #stockFor({ part, flitch }: DerivedPart): Stock {
    const { shop } = this.job
    const others = this.derived.parts.filter((face) => face.part.id !== part.id)
    // by what was decided: a face is told anew where another one takes the same wood
    const decided = others.flatMap((face) => [face.part, ...flitchesOf(face)])
    return this.#answers('stock', [flitch, shop, ...decided], () => stockOf(others, flitch, shop, this.#answers))
  }

  /** A face as it would be if its part were decided thus. */
  tryPart(part: Part): DerivedPart | null {
    const parts = this.job.parts.map((one) => (one.id === part.id ? part : one))
    return deriveParts({ ...this.job, parts }, [part], this.#answers).parts[0] ?? null
  }

  /** Takes a decision: one undo step, or a sentence that says why not. */
  act(label: string, next: Next): boolean {
    const done = this.#taken(next)
    if (done) {
      this.jobs.commit(label, done)
      this.said = label
    } else this.jobs.cancel()
    return done !== null
  }

  /** Shows what a decision would do, while a pointer moves. */
  preview(next: Next): void {
    const shown = this.#taken(next)
    if (shown) this.jobs.preview(shown)
  }

  cancel(): void {
    this.jobs.cancel()
  }

  undo(): void {
    this.said = this.jobs.undoLabel ? `Undone: ${this.jobs.undoLabel}` : ''
    this.jobs.undo()
    this.trouble = null
  }

  redo(): void {
    this.said = this.jobs.redoLabel ? `Done again: ${this.jobs.redoLabel}` : ''
    this.jobs.redo()
    this.trouble = null
  }

  #taken(wanted: Next): Job | null {
    const next = holdCuts(this.jobs.decided, wanted, this.#answers)
    this.trouble = next.ok ? null : commandSentence(next.reason, (length) => showLength(length, this.unit, 'seam'))
    return next.ok ? next.value : null
  }
}

/** A part and those that hang beside it: what is known of a pair is known of both. */
function withPartners({ parts, pairs }: Job, part: Part | null): readonly Part[] {
  if (!part) return []
  const beside = pairs.flatMap(({ first, second }) =>
    first === part.id ? [second] : second === part.id ? [first] : [],
  )
  return parts.filter((one) => one === part || beside.includes(one.id))
}

const KEY = Symbol('workshop')

export const provideWorkshop = (workshop: Workshop): void => {
  setContext(KEY, workshop)
}

/** The workshop of the page; only within the app. */
export function useWorkshop(): Workshop {
  const workshop = getContext<Workshop | undefined>(KEY)
  invariant(workshop, 'a station stands outside the workshop')
  return workshop
}
