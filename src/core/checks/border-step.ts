import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { SAME_THICKNESS } from '../press/balance'

/** A border from another flitch, thicker or thinner than the field: where they meet there is a step. */
export function checkBorderStep({ part, flitch, border }: LaidFace): readonly Finding[] {
  const step = border ? border.flitch.thickness - flitch.thickness : 0
  if (!border || Math.abs(step) <= SAME_THICKNESS) return []
  return [
    {
      code: 'border-step',
      grade: 'note',
      part: part.id,
      place: { on: 'face' },
      measured: step,
      limit: SAME_THICKNESS,
      about: { ofFlitch: border.flitch.name, border: border.flitch.thickness, field: flitch.thickness },
      remedies: [],
    },
  ]
}
