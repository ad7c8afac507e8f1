/**
 * [X0] Corner to corner a scarf that gains g with a loss j leaves W − g·W/L − 2j·√(1 + (W/L)²); at 1:k edge to edge
 * W − g/k − 2j·√(1 + 1/k²); the figure steps by the width lost.
 * [X1] What is asked for is found if there is any; if not, the most is said, and is itself found when asked for.
 * [X2] Warned is of what shows: the step against the spacing of the stripe; nothing where it is hidden, no promise in
 * crown figure.
 * [X3] A bevel through the thickness and a diagonal splice in the plane are two joints with two sums.
 *
 * Sources beside each check.
 */
import { describe, expect, it } from 'vitest'
import {
  cornerSlope,
  figureStep,
  flattestSlope,
  scarfedSize,
  scarfForSize,
  slideAlongCut,
} from '../../src/core/scarf/extension'
import { bevelLength, bevelSpliceLength, diagonalSplice } from '../../src/core/scarf/splice'
import { stepLook } from '../../src/core/scarf/step-shows'
import { chanceFrom, spread } from '../fixtures/geometry/shapes'

describe('worked scarfs', () => {
  // worked by hand: 9 − 6·9/48 = 7.875; 200 − 150·200/1200 = 175; areas 48·9 = 54·7.875 + 9·6²/48
  it.each([
    { of: '48 x 9 in by 6', sound: { width: 9, length: 48 }, gain: 6, width: 7.875, length: 54, waste: 6.75 },
    { of: '1200 x 200 by 150', sound: { width: 200, length: 1200 }, gain: 150, width: 175, length: 1350, waste: 3750 },
  ])('[X0] $of gives $length x $width', ({ sound, gain, width, length, waste }) => {
    const size = scarfedSize(sound, { slope: cornerSlope(sound), gain, loss: 0 })
    expect(size.width).toBeCloseTo(width, 9)
    expect(size.length).toBeCloseTo(length, 9)
    expect(sound.width * sound.length - size.width * size.length).toBeCloseTo(waste, 6)
  })

  it('[X0] 1200 x 200 by 150 with 1.5 mm trued off each face: the figure steps 28.04 mm', () => {
    // by hand: 150/6 + 3·√(1 + 1/36) = 25 + 3·1.013794
    const sound = { width: 200, length: 1200 }
    const scarf = { slope: cornerSlope(sound), gain: 150, loss: 1.5 }
    expect(figureStep(scarf)).toBeCloseTo(28.0414, 4)
    expect(scarfedSize(sound, scarf).width).toBeCloseTo(171.9586, 4)
  })

  it('[X0] at 1 in 4 edge to edge, 1200 x 200 by 100 with 1.5 mm', () => {
    // by hand: 200 − 25 − 3·√(17)/4 = 171.9077
    const size = scarfedSize({ width: 200, length: 1200 }, { slope: 1 / 4, gain: 100, loss: 1.5 })
    expect(size.width).toBeCloseTo(175 - (3 * Math.sqrt(17)) / 4, 9)
  })

  it('[X0] the slide along the cut and the closing across it make up the move', () => {
    const scarf = { slope: 1 / 6, gain: 150, loss: 1.5 }
    // Pythagoras: the slide and the 3 mm of closing stand square to each other
    const move = Math.hypot(figureStep(scarf), scarf.gain)
    expect(Math.hypot(slideAlongCut(scarf), 2 * scarf.loss)).toBeCloseTo(move, 9)
  })
})

describe('a wanted size', () => {
  const sound = { width: 200, length: 1200 }

  it('[X1] 1350 x 170 from 1200 x 200: corner to corner, and between the slopes given', () => {
    const found = scarfForSize(sound, { width: 170, length: 1350 }, 1.5)
    expect(found.ok).toBe(true)
    if (!found.ok) return
    expect(found.value.slope).toBeCloseTo(1 / 6, 12)
    expect(found.value.size.width).toBeCloseTo(171.9586, 4)
    const atSteepest = scarfedSize(sound, { slope: found.value.steepest, gain: 150, loss: 1.5 })
    expect(atSteepest.width).toBeCloseTo(170, 9)
    expect(found.value.flattest).toBeLessThan(1 / 6)
  })

  it('[X1] none for 1350 x 185, and the most is said', () => {
    const found = scarfForSize(sound, { width: 185, length: 1350 }, 0)
    // without loss, by hand: 200·(1 − 150/1200) = 175; the gain that leaves 185 is 1200·15/200 = 90
    expect(found.ok).toBe(false)
    if (found.ok || found.reason.kind !== 'too long') throw new Error('another reason was given')
    expect(found.reason.mostWidth).toBeCloseTo(175, 9)
    expect(found.reason.mostLength).toBeCloseTo(1290, 9)
  })

  it.each([
    { wanted: { width: 150, length: 1100 }, kind: 'not needed' },
    { wanted: { width: 210, length: 1300 }, kind: 'too narrow' },
    { wanted: { width: 210, length: 1100 }, kind: 'too narrow' },
    { wanted: { width: 20, length: 2500 }, kind: 'too long' },
  ])('[X1] $wanted.length x $wanted.width: $kind', ({ wanted, kind }) => {
    const found = scarfForSize(sound, wanted, 1.5)
    expect(found.ok ? 'found' : found.reason.kind).toBe(kind)
  })

  it('[X1] whatever is found gives the size, and the most said is found', () => {
    const chance = chanceFrom(11)
    for (let n = 0; n < 1000; n++) {
      const leaf = { width: spread(chance, 60, 400), length: spread(chance, 500, 3000) }
      const loss = spread(chance, 0, 3)
      const wanted = { width: spread(chance, 30, leaf.width), length: leaf.length + spread(chance, 1, 1000) }
      const found = scarfForSize(leaf, wanted, loss)
      if (found.ok) {
        expect(found.value.size.width).toBeGreaterThanOrEqual(wanted.width - 1e-6)
        expect(found.value.slope).toBeGreaterThanOrEqual(flattestSlope(leaf, loss) - 1e-12)
        expect(found.value.slope).toBeLessThanOrEqual(found.value.steepest + 1e-12)
      } else if (found.reason.kind === 'too long' && found.reason.mostLength > leaf.length + 1e-3) {
        const most = { width: wanted.width, length: found.reason.mostLength - 1e-6 }
        expect(scarfForSize(leaf, most, loss).ok).toBe(true)
        expect(scarfForSize(leaf, { ...most, length: most.length + 1e-3 }, loss).ok).toBe(false)
      }
    }
  })
})

describe('what shows', () => {
  it.each([
    { step: 28, figure: { kind: 'stripe', spacing: 12 }, seen: false, look: { kind: 'hidden' } },
    { step: 28, figure: { kind: 'crown' }, seen: true, look: { kind: 'no promise' } },
    { step: 28, figure: { kind: 'even' }, seen: true, look: { kind: 'no lines' } },
    // 28 = 2·12 + 4: a third of the spacing off; 25 = 2·12 + 1: a twelfth; 0.5 of 12: a twenty-fourth
    { step: 28, figure: { kind: 'stripe', spacing: 12 }, seen: true, look: { kind: 'breaks', passed: 2 } },
    { step: 25, figure: { kind: 'stripe', spacing: 12 }, seen: true, look: { kind: 'meets', passed: 2 } },
    { step: 0.5, figure: { kind: 'stripe', spacing: 12 }, seen: true, look: { kind: 'meets', passed: 0 } },
    { step: 6, figure: { kind: 'stripe', spacing: 12 }, seen: true, look: { kind: 'breaks', share: 0.5 } },
  ] as const)('[X2] a step of $step in $figure, seen $seen: $look.kind', ({ step, figure, seen, look }) => {
    expect(stepLook(step, figure, seen)).toMatchObject(look)
  })
})

describe('two leaves end to end', () => {
  it('[X3] a bevel of 1:12 through 0.6 mm, two leaves of 1000: 1992.8 mm', () => {
    // by hand: 2000 − 12·0.6
    expect(bevelSpliceLength(1000, 1000, 0.6, 12)).toBeCloseTo(1992.8, 9)
    expect(bevelLength(0.6, 12)).toBeCloseTo(7.2, 9)
  })

  it.each([
    // by hand: 120 − 8·9 and 120 − 4·4
    { width: 9, k: 8, length: 48, pointless: true },
    { width: 4, k: 4, length: 104, pointless: false },
  ])('[X3] two leaves of 60 in, $width wide, 1:$k: $length in', ({ width, k, length, pointless }) => {
    expect(diagonalSplice(60, 60, width, k)).toEqual({ length, pointless })
  })
})
