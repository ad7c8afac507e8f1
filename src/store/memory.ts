import type { Answers } from '../core/fit/answers'

/** Answers kept of one kind; the oldest is forgotten first. */
const KEPT = 400

/**
 * Remembers what the core has found. Decisions are never changed in place, so an object stands for its content: each is
 * given a number when it is first seen, and the numbers make the key.
 */
export function rememberingAnswers(): Answers {
  const numbers = new WeakMap<object, number>()
  let next = 1
  const numberOf = (thing: object): number => {
    const known = numbers.get(thing)
    if (known) return known
    numbers.set(thing, next)
    return next++
  }
  const kinds = new Map<string, Map<string, unknown>>()
  return (kind, about, find) => {
    const key = about.map((thing) => (typeof thing === 'object' ? `#${numberOf(thing)}` : String(thing))).join('|')
    const kept = kinds.get(kind) ?? new Map<string, unknown>()
    kinds.set(kind, kept)
    if (kept.has(key)) return kept.get(key) as ReturnType<typeof find>
    const found = find()
    kept.set(key, found)
    const oldest = kept.keys().next()
    if (kept.size > KEPT && !oldest.done) kept.delete(oldest.value)
    return found
  }
}
