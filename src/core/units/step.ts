import { MM_PER, type LengthUnit } from './unit'

/** One press of an arrow key: plain, with Shift (large) or with Ctrl (small). */
export type StepSize = 'plain' | 'large' | 'small'

const STEPS: Readonly<Record<LengthUnit, Readonly<Record<StepSize, number>>>> = {
  mm: { plain: 1, large: 10, small: 0.2 },
  in: { plain: MM_PER.in / 16, large: MM_PER.in / 2, small: MM_PER.in / 64 },
}

/** How far an arrow key moves a length or a window, in mm: 1, 10 or 0.2 mm; 1/16, 1/2 or 1/64 in. */
export const stepLength = (unit: LengthUnit, size: StepSize): number => STEPS[unit][size]
