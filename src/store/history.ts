/**
 * Every state that a thing has had, with what led from one to the next. Whole states are kept: they share all that did
 * not change between them, so that a step costs no more than the change itself.
 */
export interface History<T> {
  readonly past: readonly Step<T>[]
  readonly present: T
  readonly future: readonly Step<T>[]
}

/** A state to go back or forward to, and the name of the change between it and its neighbour towards the present. */
export interface Step<T> {
  readonly label: string
  readonly state: T
}

/** Older states are forgotten. */
export const MOST_STEPS = 500

export const startHistory = <T>(present: T): History<T> => ({ past: [], present, future: [] })

/** One more step; what had been undone can't be done again after it. Nothing happens if nothing changed. */
export function commitStep<T>({ past, present, future }: History<T>, label: string, next: T): History<T> {
  if (next === present) return { past, present, future }
  return { past: [...past, { label, state: present }].slice(-MOST_STEPS), present: next, future: [] }
}

export function undoStep<T>(history: History<T>): History<T> {
  const last = history.past.at(-1)
  if (!last) return history
  return {
    past: history.past.slice(0, -1),
    present: last.state,
    future: [{ label: last.label, state: history.present }, ...history.future],
  }
}

export function redoStep<T>(history: History<T>): History<T> {
  const [next, ...future] = history.future
  if (!next) return history
  return { past: [...history.past, { label: next.label, state: history.present }], present: next.state, future }
}

/** What undoing would undo; null if there is nothing. */
export const undoLabel = <T>({ past }: History<T>): string | null => past.at(-1)?.label ?? null

/** What would be done again; null if there is nothing. */
export const redoLabel = <T>({ future }: History<T>): string | null => future[0]?.label ?? null
