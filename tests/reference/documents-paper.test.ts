/**
 * [D6] Papers have the sizes of their standards.
 *
 * ISO 216: sides as 1 to √2, A0 of 1 m²; each size is the one before halved across its long side, whole
 * millimetres, rounded down. ANSI/ASME Y14.1: Letter, Tabloid (A and B), architectural C, D, E, in inches.
 */
import { describe, expect, it } from 'vitest'
import { customPaper, isoPaper, LARGEST_PAGE, pageOn, paperOf, PAPERS } from '../../src/documents/paper'

describe('papers', () => {
  // the table printed in ISO 216
  it.each([
    ['a0', 841, 1189],
    ['a1', 594, 841],
    ['a2', 420, 594],
    ['a3', 297, 420],
    ['a4', 210, 297],
  ])('[D6] %s is %d x %d mm', (id, width, height) => {
    expect(paperOf(id)).toMatchObject({ width, height })
  })

  it('[D6] each A size is half the one before, a millimetre at most lost', () => {
    for (let step = 0; step < 4; step++) {
      const [large, small] = [isoPaper(step), isoPaper(step + 1)]
      expect(small.height).toBe(large.width)
      expect(large.height - 2 * small.width).toBeGreaterThanOrEqual(0)
      expect(large.height - 2 * small.width).toBeLessThanOrEqual(1)
    }
    expect(Math.abs(isoPaper(0).width * isoPaper(0).height - 1e6)).toBeLessThan(1000)
  })

  it.each([
    ['letter', 8.5, 11],
    ['legal', 8.5, 14],
    ['tabloid', 11, 17],
    ['arch-c', 18, 24],
    ['arch-d', 24, 36],
    ['arch-e', 36, 48],
  ])('[D6] %s is %d x %d in', (id, width, height) => {
    expect(paperOf(id)!.width / 25.4).toBeCloseTo(width, 9)
    expect(paperOf(id)!.height! / 25.4).toBeCloseTo(height, 9)
  })

  it('every id is there once, every sheet upright', () => {
    expect(new Set(PAPERS.map(({ id }) => id)).size).toBe(PAPERS.length)
    for (const { width, height } of PAPERS) expect(height ?? Infinity).toBeGreaterThan(width)
    expect(paperOf('b5')).toBeNull()
  })

  it('a paper of one’s own is refused by name of the side that is wrong', () => {
    expect(customPaper(300, 250)).toEqual({
      ok: true,
      value: { id: 'custom', name: 'Custom', width: 250, height: 300 },
    })
    expect(customPaper(300, 6000)).toEqual({
      ok: false,
      reason: { reason: 'paper size', length: 6000, least: 100, most: LARGEST_PAGE },
    })
    expect(customPaper(Number.NaN, 300).ok).toBe(false)
  })

  it.each([
    { is: 'goes across either way: pulled by its short side', width: 300, height: 500, length: 340 },
    { is: 'goes on one way only: pulled by its long side', width: 500, height: 2000, length: 2040 },
    { is: 'goes on in strips: pulled by its long side', width: 900, height: 2000, length: 2040 },
    { is: 'longer than a page may be', width: 300, height: 9000, length: 5080 },
  ])('a roll 610 wide, $width x $height $is', ({ width, height, length }) => {
    const roll = paperOf('roll-610')!
    expect(pageOn(roll, { width, height }, 40)).toEqual({ width: 610, height: length })
    expect(pageOn(roll, { width: height, height: width }, 40)).toEqual({ width: 610, height: length })
  })
})
