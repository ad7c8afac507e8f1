import type { Result } from '../core/result'

/** What a typed field is for: how its value is shown, read, changed by a key, and handed on. */
export interface Typed<T> {
  /** The value as text, when nobody is typing. */
  readonly shown: () => string
  /** The value of a text, or a sentence that says why it can't be taken. */
  readonly read: (text: string) => Result<T, string>
  readonly onchange: (value: T) => void
  /** The value one step further or back; null where there are no steps. */
  readonly stepped: ((by: 1 | -1, event: KeyboardEvent) => T | null) | null
}

/**
 * Typing is free: nothing is taken before Enter or before the field is left. What can't be taken stays as it was typed,
 * with the reason beside it; Escape brings the value back.
 */
export class Typing<T> {
  #text = $state<string | null>(null)
  /** Why the text is not taken. */
  trouble = $state<string | null>(null)

  constructor(private readonly typed: Typed<T>) {}

  get text(): string {
    return this.#text ?? this.typed.shown()
  }

  type(text: string): void {
    this.#text = text
    this.trouble = null
  }

  /** Takes what was typed, if anything was. */
  take(): void {
    const text = this.#text
    if (text === null) return
    // a value shown in rounded form is not changed by looking at it
    if (text.trim() === this.typed.shown()) return this.giveUp()
    const read = this.typed.read(text)
    if (!read.ok) {
      this.trouble = read.reason
      return
    }
    this.giveUp()
    this.typed.onchange(read.value)
  }

  giveUp(): void {
    this.#text = null
    this.trouble = null
  }

  key(event: KeyboardEvent): void {
    if (event.key === 'Enter') this.take()
    else if (event.key === 'Escape' && this.#text !== null) {
      event.stopPropagation()
      this.giveUp()
    } else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') this.#step(event)
  }

  #step(event: KeyboardEvent): void {
    const value = this.typed.stepped?.(event.key === 'ArrowUp' ? 1 : -1, event) ?? null
    if (value === null) return
    event.preventDefault()
    this.giveUp()
    this.typed.onchange(value)
  }
}
