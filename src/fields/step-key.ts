import type { StepSize } from '../core/units/step'

/** The keys held while a key is pressed, as a keyboard event has them. */
export interface PressedKey {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly altKey: boolean
}

/** The step that an up or down arrow means: large with Shift, small with Ctrl; null for any other key. */
export function stepOfKey({
  key,
  shiftKey,
  ctrlKey,
  altKey,
}: PressedKey): { direction: 1 | -1; size: StepSize } | null {
  if (altKey || (key !== 'ArrowUp' && key !== 'ArrowDown')) return null
  return { direction: key === 'ArrowUp' ? 1 : -1, size: shiftKey ? 'large' : ctrlKey ? 'small' : 'plain' }
}
