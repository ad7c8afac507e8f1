/** Throws when `condition` does not hold: a mistake in this program, never in what a person typed. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`Leafturn has made a mistake: ${message}`)
}

/** The value of something that must be there. */
export function present<T>(value: T | null | undefined, message: string): T {
  invariant(value !== null && value !== undefined, message)
  return value
}
