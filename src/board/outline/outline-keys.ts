import { stepLength, type StepSize } from '../../core/units/step'
import type { LengthUnit } from '../../core/units/unit'

/** What a key asks for on an outline. */
export type OutlineKey =
  | { readonly kind: 'next'; readonly by: 1 | -1 }
  /** In the directions of the screen, mm. */
  | { readonly kind: 'move'; readonly right: number; readonly down: number }
  | { readonly kind: 'remove' }
  | { readonly kind: 'insert' }
  | { readonly kind: 'finish' }
  | { readonly kind: 'leave' }

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** With Shift far, with Ctrl finely. */
const sizeOf = ({ shiftKey, ctrlKey, metaKey }: KeyboardEvent): StepSize =>
  shiftKey ? 'large' : ctrlKey || metaKey ? 'small' : 'plain'

/** null: the key is none of the board's business. */
export function outlineKey(event: KeyboardEvent, unit: LengthUnit): OutlineKey | null {
  const arrow = ARROWS[event.key]
  if (arrow) {
    const step = stepLength(unit, sizeOf(event))
    return { kind: 'move', right: arrow[0] * step, down: arrow[1] * step }
  }
  if (event.key === 'Tab') return { kind: 'next', by: event.shiftKey ? -1 : 1 }
  if (event.key === 'Delete' || event.key === 'Backspace') return { kind: 'remove' }
  if (event.key === 'Insert' || event.key === '+') return { kind: 'insert' }
  if (event.key === 'Enter') return { kind: 'finish' }
  return event.key === 'Escape' ? { kind: 'leave' } : null
}
