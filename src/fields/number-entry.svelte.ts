import {
  numberSentence,
  readNumber,
  showNumber,
  type NumberKind,
  type NumberLimits,
  type NumberTrouble,
} from '../core/units/read-number'
import type { StepSize } from '../core/units/step'
import { ok } from '../core/result'
import { Entry } from './entry.svelte'

/** What a field of numbers with a unit is given; the value and its limits in the unit in which they are kept. */
export interface NumberTerms extends NumberLimits {
  readonly label: string
  readonly kind: NumberKind
  /** null: nothing stands there, which only a field that may be empty allows. */
  readonly value: number | null
  /** Whether it may be left empty. */
  readonly empty?: boolean | undefined
  /** From where stepping starts when nothing stands there; kept unit. */
  readonly usual?: number | undefined
  readonly onchange: (value: number | null) => void
}

const STEPS: Readonly<Record<StepSize, number>> = { plain: 1, large: 10, small: 0.1 }

/** A number with a unit being typed, stepped in the unit shown, or left out. */
export class NumberEntry extends Entry<number | null, NumberTrouble> {
  readonly #numberTerms: () => NumberTerms

  constructor(terms: () => NumberTerms) {
    super(() => {
      const { label: name, value, kind, least, most, empty = false, onchange } = terms()
      return {
        value,
        show: (number) => (number === null ? '' : showNumber(number, kind)),
        read: (text) => (empty && text.trim() === '' ? ok(null) : readNumber(text, kind, { least, most })),
        say: (trouble) => numberSentence(trouble, { name, kind, least, most }),
        onchange,
      }
    })
    this.#numberTerms = terms
  }

  /** One press of an arrow key, in the unit shown; a step beyond a limit ends on it. */
  step(direction: 1 | -1, size: StepSize): void {
    const { kind, least, most, usual } = this.#numberTerms()
    const [unit] = kind.units
    // a unit without decimals steps by whole ones however small the step
    const by = direction * (unit.places === 0 ? Math.max(1, STEPS[size]) : STEPS[size])
    this.alter((number) => {
      const shown = unit.toShown(number ?? usual ?? least)
      const places = 10 ** Math.max(unit.places, 1)
      return Math.min(most, Math.max(least, unit.toKept(Math.round((shown + by) * places) / places)))
    })
  }
}
