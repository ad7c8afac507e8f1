import type { Point } from '../../core/geometry/point'

/** A drag in progress. */
export interface Session {
  readonly move: (at: Point<'screen'>) => void
  readonly complete: (at: Point<'screen'>) => void
  /** Everything is to be as it was before. */
  readonly cancel: () => void
}

/** What a pointer that goes down at a spot begins; null when this gesture has no business there. */
export type Gesture = (at: Point<'screen'>, press: Press) => Session | null

export interface Press {
  readonly touch: boolean
  readonly button: number
}
