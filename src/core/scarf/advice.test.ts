/** [X8] Advice for a short leaf says where to mark, cut and slide, or that it needs none or gets none. */
import { describe, expect, it } from 'vitest'
import { boxRing } from '../geometry/box'
import { point } from '../geometry/point'
import type { FlitchId } from '../ids'
import { scarfAdvice } from './advice'

const leaf = { flitch: 'walnut' as FlitchId, leaf: 7 }
const outline = boxRing<'leaf'>({ min: point(0, 0), max: point(200, 1200) })
const wood = { usable: [[outline]] as const, outline }
const piece = (width: number, length: number) => boxRing<'leaf'>({ min: point(0, 0), max: point(width, length) })

describe('advice for a leaf of 1200 x 200', () => {
  it('[X8] 60 mm too short: a scarf, its marks on both edges of the leaf', () => {
    const advice = scarfAdvice(leaf, wood, piece(160, 1260))
    if (advice.kind !== 'scarf') throw new Error(`no scarf but ${advice.kind}`)
    const [near, far] = advice.ends
    expect(advice.found.width).toBeGreaterThanOrEqual(160)
    expect(near.side).not.toBe(far.side)
    // both marks lie on the cut: its slope is their distance across over that along
    expect(Math.abs(far.at.x - near.at.x) / (far.at.y - near.at.y)).toBeCloseTo(advice.found.cut.slope, 6)
    expect(advice.step).toBeCloseTo(200 - advice.found.width, 1)
    expect(Math.hypot(advice.slide, 3)).toBeCloseTo(Math.hypot(advice.step, advice.found.cut.gain), 6)
    expect(advice.seam).toBeGreaterThan(500)
  })

  it.each([
    { width: 160, length: 1100, kind: 'not needed' },
    { width: 199, length: 1260, kind: 'too narrow' },
    { width: 160, length: 2600, kind: 'too long' },
  ])('[X8] $length x $width: $kind', ({ width, length, kind }) => {
    expect(scarfAdvice(leaf, wood, piece(width, length)).kind).toBe(kind)
  })
})
