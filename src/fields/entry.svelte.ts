import type { Result } from '../core/result'

/** What an entry is told by its field, asked anew each time: the value that holds, and how it is shown and read. */
export interface EntryTerms<T, R> {
  readonly value: T
  readonly show: (value: T) => string
  readonly read: (text: string) => Result<T, R>
  readonly say: (reason: R) => string
  readonly onchange: (value: T) => void
}

/**
 * A value being typed. Typing is free; what is typed counts once it is committed, and what cannot be read stays as
 * it was typed, with the reason, until it is mended or taken back. A field that comes to stand for another thing
 * must be made anew (`{#key}`), or it would keep what was typed for the first.
 */
export class Entry<T, R> {
  readonly #terms: () => EntryTerms<T, R>
  #typed = $state<string | null>(null)
  #reason = $state.raw<{ readonly why: R } | null>(null)

  constructor(terms: () => EntryTerms<T, R>) {
    this.#terms = terms
  }

  /** What the field shows: what was typed and not yet taken, or else the value. */
  get text(): string {
    const { show, value } = this.#terms()
    return this.#typed ?? show(value)
  }

  /** Why the last commit was refused, in words; null when there is nothing to mend. */
  get sentence(): string | null {
    return this.#reason === null ? null : this.#terms().say(this.#reason.why)
  }

  type(text: string): void {
    this.#typed = text
    this.#reason = null
  }

  /** Takes what was typed; false when it cannot be read. The value's own text, typed again, changes nothing. */
  commit(): boolean {
    const read = this.#readTyped()
    if (read === null) return this.#settle()
    if (!read.ok) return this.#refuse(read.reason)
    this.#settle()
    this.#terms().onchange(read.value)
    return true
  }

  /** Forgets what was typed; false when there was nothing to forget. */
  restore(): boolean {
    if (this.#typed === null) return false
    return this.#settle()
  }

  /** Changes the value, or what was typed in its place, and commits that; false when what was typed cannot be read. */
  alter(change: (value: T) => T): boolean {
    const read = this.#readTyped()
    if (read !== null && !read.ok) return this.#refuse(read.reason)
    const { value, onchange } = this.#terms()
    const altered = change(read === null ? value : read.value)
    this.#settle()
    if (altered !== value) onchange(altered)
    return true
  }

  /** null when nothing was typed that differs from what is shown: a rounded text must not replace the exact value. */
  #readTyped(): Result<T, R> | null {
    const { read, show, value } = this.#terms()
    return this.#typed === null || this.#typed === show(value) ? null : read(this.#typed)
  }

  #settle(): true {
    this.#typed = null
    this.#reason = null
    return true
  }

  #refuse(why: R): false {
    this.#reason = { why }
    return false
  }
}
