/** Numbers in [0, 1) that depend on the seed alone (a 32-bit mixing generator). */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** One seed out of several whole numbers, so that a cell of a leaf of a log has chance of its own. */
export function mixedSeed(...parts: readonly number[]): number {
  let hash = 0x811c9dc5
  for (const part of parts) {
    hash = Math.imul(hash ^ (part | 0), 0x01000193)
    hash ^= hash >>> 13
    hash = Math.imul(hash, 0x5bd1e995)
    hash ^= hash >>> 15
  }
  return hash >>> 0
}

/** A bell-shaped number about 0 with a spread of 1 (the sum of twelve even ones, so never beyond 6). */
export function bellNumber(random: () => number): number {
  let sum = -6
  for (let i = 0; i < 12; i++) sum += random()
  return sum
}
