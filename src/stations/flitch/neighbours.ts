import type { Flitch } from '../../core/leaves/flitch'

/** The leaves from one to another in the sequence, both included, whichever comes first; `self` left out. */
export function neighbours({ leaves }: Flitch, self: number, from: number, to: number): readonly number[] {
  const numbers = leaves.map(({ number }) => number)
  const places = [numbers.indexOf(from), numbers.indexOf(to)]
  if (places.includes(-1)) return []
  return numbers.slice(Math.min(...places), Math.max(...places) + 1).filter((number) => number !== self)
}

/** `leaf 6`, `leaves 6 and 8`, `leaves 2 to 5`, `no leaf`. */
export function numbersInWords(numbers: readonly number[]): string {
  const [first, ...others] = numbers
  const last = others.at(-1)
  if (first === undefined) return 'no leaf'
  if (last === undefined) return `leaf ${first}`
  if (numbers.length === 2) return `leaves ${first} and ${last}`
  const isRun = numbers.every((number, i) => number === first + i)
  return isRun ? `leaves ${first} to ${last}` : `${numbers.length} leaves from ${first} to ${last}`
}
