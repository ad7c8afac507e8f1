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
import { FigureLook } from '../face/figure-look.svelte'

interface Answer {
  readonly flitch: Flitch
  readonly looks: readonly DriftLook[]
  readonly found: readonly (FoundShift | null)[]
}

/** The search for drift in the pictures of a flitch: what was found, and how it is read until it is taken. */
export class DriftSearch extends FigureLook {
  /** How what is found is read. */
  meaning = $state.raw<DriftMeaning>('log')
  #answer = $state.raw<Answer | null>(null)
  #chosen = $state.raw<ReadonlyMap<number, number>>(new Map())

  constructor(
    shelf: PhotoShelf,
    private readonly flitch: () => Flitch,
  ) {
    super(shelf)
  }

  /** What was found, for the flitch as it is; of one that has been changed it says nothing. */
  readonly answer = $derived.by(() => (this.#answer?.flitch === this.flitch() ? this.#answer : null))
  readonly registration = $derived.by((): Registration | null => {
    const answer = this.answer
    return answer && registered(answer.looks, answer.found, this.meaning, (pair) => this.chosenAt(pair))
  })
  readonly wanders = $derived.by(() => figureWanders(this.flitch().cut))

  chosenAt = (pair: number): number => this.#chosen.get(pair) ?? 0
  choose = (pair: number, candidate: number): void => {
    this.#chosen = new Map(this.#chosen).set(pair, candidate)
  }

  async look(): Promise<void> {
    const flitch = this.flitch()
    let looks: readonly DriftLook[] = []
    const found = await this.lookAt(flitch, (source) => {
      looks = driftLooks(flitch, (leaf) => source.kind === 'log' || source.leaves.has(leaf))
      return { kind: 'drifts', looks }
    })
    this.#chosen = new Map()
    if (found) this.#answer = { flitch, looks, found }
  }
}
