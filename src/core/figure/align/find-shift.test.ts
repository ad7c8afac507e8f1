import { describe, expect, it } from 'vitest'
import { topAbout } from './find-shift'
import type { LikenessMap, PixelShift } from './likeness'

/** A ridge of likeness about a top, slanted by `twist`; unknown where asked. */
const ridge = (top: PixelShift, twist: number, isKnown: (shift: PixelShift) => boolean = () => true): LikenessMap => ({
  range: { across: [-2, 2], along: [-2, 2] },
  at: ({ across, along }) => {
    const [x, y] = [across - top.across, along - top.along]
    return isKnown({ across, along }) ? 0.9 - 0.2 * x * x - 0.05 * y * y + twist * x * y : null
  },
})
const highest: PixelShift = { across: 0, along: 0 }

describe('[R1] the top between pixels', () => {
  it.each([0, 0.15, -0.15])('of a ridge slanted by %d', (twist) => {
    const found = topAbout(ridge({ across: 0.3, along: -0.8 }, twist), highest)
    expect(found.across).toBeCloseTo(0.3, 9)
    expect(found.along).toBeCloseTo(-0.8, 9)
  })

  it('each way by itself where not all about it is known', () => {
    const found = topAbout(
      ridge({ across: 0.3, along: -0.4 }, 0, ({ across, along }) => across < 1 || along < 1),
      highest,
    )
    expect(found.across).toBeCloseTo(0.3, 9)
    expect(found.along).toBeCloseTo(-0.4, 9)
  })
})
