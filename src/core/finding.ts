import type { Side } from './geometry/box'
import type { Point } from './geometry/point'
import type { CellId, LeafRef, PartId, WindowGroup } from './ids'
import type { MakeUp } from './job/make-up'

/**
 * Something the maker must judge, or may be glad of: never an exception. `measured` and `limit` are mm unless
 * the table in docs/rules.md says otherwise. The words are made in checks/wording.ts alone.
 */
export interface Finding {
  readonly code: FindingCode
  readonly grade: 'good' | 'note' | 'wrong'
  readonly part: PartId
  readonly place: Place
  readonly measured: number | null
  readonly limit: number | null
  /** What the sentence needs besides. */
  readonly about: Readonly<Record<string, number | string>>
  readonly remedies: readonly Remedy[]
}

export type FindingCode =
  | 'centred'
  | 'off-centre'
  | 'play-empty'
  | 'short'
  | 'narrow'
  | 'sliver'
  | 'odd-count'
  | 'even-count'
  | 'defect-in-face'
  | 'used-twice'
  | 'sequence-broken'
  | 'overhang-small'
  | 'outside-play'
  | 'no-leaf'
  | 'figure-breaks'
  | 'figure-meets'
  | 'nothing-asked'
  | 'diamond-off'
  | 'offsets-unequal'
  | 'count-lowered'
  | 'nudge-dropped'
  | 'bare-width'
  | 'seam-long'
  | 'scarf-step'
  | 'strip-beside'
  | 'make-up-void'
  | 'up-end-down'
  | 'pair-meets'
  | 'pair-void'
  | 'border-step'

export type Place =
  | { readonly on: 'face' }
  | { readonly on: 'cell'; readonly cell: CellId }
  | { readonly on: 'seam'; readonly letter: string }
  | { readonly on: 'edge'; readonly side: Side }
  | { readonly on: 'leaf'; readonly leaf: LeafRef; readonly at: Point<'leaf'> | null }

/** One change that would mend a finding; a command turns it into a new job. */
export type Remedy =
  | { readonly remedy: 'part the pair'; readonly first: PartId; readonly second: PartId }
  | { readonly remedy: 'less overhang'; readonly side: Side; readonly by: number }
  | { readonly remedy: 'move window'; readonly by: Point<'leaf'>; readonly group: WindowGroup }
  | { readonly remedy: 'first position'; readonly group: WindowGroup }
  | { readonly remedy: 'start at leaf'; readonly leaf: number }
  | { readonly remedy: 'count'; readonly count: number; readonly of?: 'wedges' }
  /** Each piece of a sunburst from two leaves that were booked before. */
  | { readonly remedy: 'booked pairs' }
  /** Each piece of a diamond or a box from so many leaves that were slipped and joined before. */
  | { readonly remedy: 'slipped sheets'; readonly leaves: number }
  | { readonly remedy: 'other leaf'; readonly cell: CellId; readonly leaf: number }
  | { readonly remedy: 'next in run' }
  | { readonly remedy: 'overhang'; readonly side: Side; readonly to: number }
  /** Another arrangement of the same pattern. */
  | { readonly remedy: 'arrangement'; readonly arrangement: 'running' | 'balance' | 'centre balance' }
  /** The leaf lies in the cell no longer made up, or is made up thus; `cell` may be the whole run. */
  /** `offcut`: the label of the one that the strip comes from, if it is one. */
  | {
      readonly remedy: 'make up'
      readonly cell: CellId
      readonly makeUp: MakeUp | null
      readonly offcut?: string | undefined
    }
