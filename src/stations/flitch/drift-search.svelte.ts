import {
  driftLooks,
  figureWanders,
  registered,
  type DriftLook,
  type DriftMeaning,
  type Registration,
} from '../../core/figure/align/registration'
import type { FoundShift } from '../../core/figure/align/find-shift'
import type { Flitch } from '../../core/leaves/flitch'
import type { PhotoShelf } from '../../store/photo-shelf'
import { alignAside, type Aligning } from '../../workers/align-door'
import { woodOfFlitch } from '../../workers/wood-of-flitch'

interface Answer {
  readonly flitch: Flitch
  readonly looks: readonly DriftLook[]
  readonly found: readonly (FoundShift | null)[]
}

/** The search for drift in the pictures of a flitch: what was found, and how it is read until it is taken. */
export class DriftSearch {
  /** 0 to 1 while the pictures are being looked at, else null. */
  share = $state.raw<number | null>(null)
  #answer = $state.raw<Answer | null>(null)
  #chosen = $state.raw<ReadonlyMap<number, number>>(new Map())
  #meaning = $state.raw<DriftMeaning | null>(null)
  #aligning: Aligning | null = null

  constructor(
    private readonly shelf: PhotoShelf,
    private readonly flitch: () => Flitch,
  ) {}

  /** What was found, for the flitch as it is; of one that has been changed it says nothing. */
  readonly answer = $derived.by(() => (this.#answer?.flitch === this.flitch() ? this.#answer : null))
  readonly meaning = $derived.by((): DriftMeaning => this.#meaning ?? 'log')
  readonly registration = $derived.by((): Registration | null => {
    const answer = this.answer
    return answer && registered(answer.looks, answer.found, this.meaning, (pair) => this.chosenAt(pair))
  })
  readonly wanders = $derived.by(() => figureWanders(this.flitch().cut))

  chosenAt = (pair: number): number => this.#chosen.get(pair) ?? 0
  choose = (pair: number, candidate: number): void => {
    this.#chosen = new Map(this.#chosen).set(pair, candidate)
  }
  read = (meaning: DriftMeaning): void => {
    this.#meaning = meaning
  }
  stop = (): void => this.#aligning?.stop()
  forget = (): void => {
    this.#answer = null
  }

  async look(): Promise<void> {
    const flitch = this.flitch()
    this.share = 0
    try {
      const source = await woodOfFlitch(flitch, this.shelf)
      const looks = driftLooks(flitch, (leaf) => source.kind === 'log' || source.leaves.has(leaf))
      const task = { kind: 'drifts', looks: $state.snapshot(looks) as readonly DriftLook[] } as const
      this.#aligning = alignAside(source, task, (done) => (this.share = done))
      const found = await this.#aligning.done
      this.#chosen = new Map()
      if (found) this.#answer = { flitch, looks, found }
    } finally {
      this.share = null
      this.#aligning = null
    }
  }
}
