/**
 * How a number is known. *Seen*: read in the source named. *From memory*: believed to stand there, not seen.
 * *Memory, checked*: from memory, and agreeing exactly with another table through the formula that joins them.
 * *Common practice*: several makers say so, nobody vouches. *Derived*: worked out here from the others.
 */
export type Mark = 'seen' | 'from memory' | 'memory, checked' | 'common practice' | 'derived'

/** A number with where it is from; its unit is that of the table it stands in. */
export interface Sourced {
  readonly value: number
  readonly mark: Mark
}

/** From least to most. */
export interface SourcedRange {
  readonly least: number
  readonly most: number
  readonly mark: Mark
}

export const seen = (value: number): Sourced => ({ value, mark: 'seen' })
export const memory = (value: number): Sourced => ({ value, mark: 'from memory' })
export const checked = (value: number): Sourced => ({ value, mark: 'memory, checked' })
export const practice = (value: number): Sourced => ({ value, mark: 'common practice' })

export const between = (least: number, most: number, mark: Mark): SourcedRange => ({ least, most, mark })
