import { lengthSentence } from '../core/units/length-sentence'
import { lengthRange, readLength, type LengthLimits, type LengthTrouble } from '../core/units/read-length'
import { showLength, type Grain } from '../core/units/show-length'
import { stepLength, type StepSize } from '../core/units/step'
import { toNanometre, type LengthUnit } from '../core/units/unit'
import { Entry } from './entry.svelte'

/** What a length field is given; lengths in mm. */
export interface LengthTerms extends LengthLimits {
  readonly label: string
  readonly value: number
  readonly unit: LengthUnit
  readonly grain: Grain
  readonly onchange: (length: number) => void
}

/** A length being typed in the shop's unit, or stepped by the arrow keys within its limits. */
export class LengthEntry extends Entry<number, LengthTrouble> {
  readonly #lengthTerms: () => LengthTerms

  constructor(terms: () => LengthTerms) {
    super(() => {
      const given = terms()
      const { label: name, value, unit, grain, onchange } = given
      return {
        value,
        show: (length) => showLength(length, unit, grain),
        read: (text) => readLength(text, unit, given),
        say: (trouble) => lengthSentence(trouble, { name, unit }),
        onchange,
      }
    })
    this.#lengthTerms = terms
  }

  /** One press of an arrow key; a step beyond a limit ends on it. */
  step(direction: 1 | -1, size: StepSize): void {
    const terms = this.#lengthTerms()
    const { min, max } = lengthRange(terms)
    const by = direction * stepLength(terms.unit, size)
    this.alter((length) => Math.min(max, Math.max(min, toNanometre(length + by))))
  }
}
