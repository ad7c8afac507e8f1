import { ok, type Result } from '../result'

/**
 * Each of some things as its check gives it, or the first refusal. If all come back as they were so does the list
 * itself, so that a job in order stays the very same object.
 */
export function checkEach<T, R>(
  things: readonly T[],
  check: (thing: T, nth: number) => Result<T, R>,
): Result<readonly T[], R> {
  const checked: T[] = []
  for (const [i, thing] of things.entries()) {
    const result = check(thing, i)
    if (!result.ok) return result
    checked.push(result.value)
  }
  return ok(checked.every((thing, i) => thing === things[i]) ? things : checked)
}
