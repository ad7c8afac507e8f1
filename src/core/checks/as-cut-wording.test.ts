/** [S23] How to lay a sheet is told in the order of doing, with sides named, to half a millimetre. */
import { describe, expect, it } from 'vitest'
import type { ThreeBoxes } from '../faces/face'
import { point } from '../geometry/point'
import { centreAsCut, plannedMeasures } from '../seams/as-cut'
import { asCutSentences, sizeSentence } from './as-cut-wording'
import { measurePlaces } from '../seams/sheet-measured'
import type { MeasuredAt } from '../job/job'

const about = (x: number, y: number) => ({ min: point<'panel'>(-x, -y), max: point<'panel'>(x, y) })
const DOOR: ThreeBoxes = { finished: about(186, 280), core: about(186, 280), sheet: about(192, 290) }
const LIMITS = { leastOverhang: 5, offCentre: 0.5 }

function told(top: readonly [number, number], bottom: readonly [number, number], unit: 'mm' | 'in' = 'mm') {
  const across = { top: { left: top[0], right: top[1] }, bottom: { left: bottom[0], right: bottom[1] } }
  return asCutSentences(centreAsCut({ across, along: null }, DOOR, LIMITS.leastOverhang), LIMITS, unit)
}

describe('[S23] words for a sheet as cut', () => {
  it('as planned', () => {
    expect(told([192, 192], [192, 192])).toEqual([
      'Laid by its edges, the sheet has its seam on the centre.',
      'The seam lies on the centre, and every edge stands at least 5 mm over the core.',
    ])
  })

  it('shifted alone, in inches', () => {
    expect(told([194.5, 191.5], [194.5, 191.5], 'in')).toEqual([
      'Laid by its edges, the sheet would have its centre seam ≈ 1/16 in right of the centre.',
      'From there move the sheet ≈ 1/16 in to the left.',
      'The seam lies on the centre, and every edge stands at least ≈ 13/64 in over the core.',
    ])
  })

  it('turned as well', () => {
    expect(told([192, 196], [196, 192]).slice(0, 2)).toEqual([
      'Laid by its edges, the sheet would have its centre seam 2 mm left of the centre at the top and 2 mm right of the centre at the bottom.',
      'From there move its top end 2 mm to the right and its bottom end 2 mm to the left, a turn of 0.4° clockwise.',
    ])
  })

  it('a compromise', () => {
    expect(told([201, 183], [201, 183]).slice(2)).toEqual([
      'With the seam on the centre an edge would stand less than 5 mm over; so every edge has that much.',
      'That leaves the centre seam 8 mm right of the centre; this shop allows 0.5 mm.',
    ])
    expect(told([193, 190.7], [193, 190.7]).at(-1)).toBe(
      'That leaves the centre seam 0.5 mm right of the centre, within the 0.5 mm this shop allows.',
    )
  })

  it('a lack, and bare wood', () => {
    expect(told([189, 189], [192, 192])[1]).toBe(
      'The sheet is too small for 5 mm over the core on both sides: the left edge has only 3 mm at the top, 2 mm too little; the right edge has only 3 mm at the top, 2 mm too little. What is lacking is split evenly. Tape on a strip, or cut the sheet anew.',
    )
    expect(told([184, 184], [184, 184])[1]).toContain('the left edge leaves the core bare by 2 mm at the top')
  })
})

describe('[A8] words for the size that came out', () => {
  const sized = (taken: Partial<Record<MeasuredAt, number>>, keeps = true, hasCross = false) =>
    sizeSentence(measurePlaces(taken, plannedMeasures(DOOR, hasCross)), keeps, 'mm')

  it.each([
    { came: 'as planned', taken: {}, told: '' },
    { came: 'shifted, of its size', taken: { 'top left': 190, 'top right': 194 }, told: '' },
    {
      came: 'narrower at one end',
      taken: { 'top left': 190.5 },
      told: 'The sheet came out 1.5 mm narrower at the top than planned. Its overhang takes that up.',
    },
    {
      came: 'narrower all along',
      taken: { 'top right': 190, 'bottom left': 190 },
      told: 'The sheet came out 2 mm narrower than planned. Its overhang takes that up.',
    },
    {
      came: 'wider',
      taken: { 'top left': 194, 'bottom left': 194 },
      told: 'The sheet came out 2 mm wider than planned.',
    },
    { came: 'not this sheet', taken: { 'top left': 150 }, told: '' },
  ] as const)('$came', ({ taken, told }) => expect(sized(taken)).toBe(told))

  it('shorter with a cross seam; of a lack it is not said that it is taken up', () => {
    expect(sized({ 'left above': 287, 'right above': 287, 'bottom left': 193 }, false, true)).toBe(
      'The sheet came out 1 mm wider at the bottom, and 3 mm shorter than planned.',
    )
  })
})
