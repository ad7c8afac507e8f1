import { ok } from '../core/result'
import { countSentence, readCount, type CountTrouble } from '../core/units/read-count'
import type { StepSize } from '../core/units/step'
import { Entry } from './entry.svelte'

/** What a field of whole numbers is given. */
export interface WholeTerms {
  readonly label: string
  /** null: the word stands instead of a number. */
  readonly value: number | null
  /** A word that may be chosen instead of a number, such as `fewest`. */
  readonly word?: string | undefined
  /** The number that the word comes to, from which stepping starts. */
  readonly found?: number | null | undefined
  readonly min: number
  readonly max: number
  /** Arrow keys go from one multiple of it to the next; 1 if nothing is said. */
  readonly every?: number | undefined
  readonly onchange: (value: number | null) => void
}

/** A count being typed, stepped, or left to a word. */
export class WholeEntry extends Entry<number | null, CountTrouble> {
  readonly #wholeTerms: () => WholeTerms

  constructor(terms: () => WholeTerms) {
    super(() => {
      const { label: name, value, word, min, max, onchange } = terms()
      const isWord = (text: string) => word !== undefined && text.trim().toLowerCase() === word.toLowerCase()
      const orWord = word === undefined ? '' : ` Or type ${word}.`
      return {
        value,
        show: (count) => (count === null ? (word ?? '') : String(count)),
        read: (text) => (isWord(text) ? ok(null) : readCount(text, { min, max })),
        say: (trouble) => countSentence(trouble, { name, min, max }) + orWord,
        onchange,
      }
    })
    this.#wholeTerms = terms
  }

  /** One press of an arrow key: one, or ten with Shift. From the word it starts at what the word comes to. */
  step(direction: 1 | -1, size: StepSize): void {
    const { min, max, found, every = 1 } = this.#wholeTerms()
    const by = direction * (size === 'large' ? 10 * every : every)
    this.alter((count) => {
      const from = count ?? found
      return from === null || from === undefined ? min : Math.min(max, Math.max(min, from + by))
    })
  }

  /** Leaves the number to the word, whatever was typed. */
  chooseWord(): void {
    this.restore()
    this.alter(() => null)
  }
}
