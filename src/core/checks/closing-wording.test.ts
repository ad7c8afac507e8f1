/** [S25] Of a sunburst that does not close it is said by how much, what truing it costs, and how to cut the wedges. */
import { describe, expect, it } from 'vitest'
import { closingSentence, cutFullSentence } from './closing-wording'

const first = (count: number, error: number, unit: 'mm' | 'in' = 'mm') =>
  closingSentence({ count, radius: unit === 'mm' ? 450 : 18 * 25.4 }, error, unit)

describe('[S25] words for the last joint', () => {
  it.each([
    [12, 0, '12 wedges of 30° close all the way.'],
    [
      12,
      0.2,
      '12 wedges each 0.2° too wide overlap by 19 mm at 450 mm from the centre. Join them in two halves and true those: 4.5 mm comes off each half edge there, and nothing at the centre.',
    ],
    [
      12,
      -0.1,
      '12 wedges each 0.1° too narrow gape by 9.5 mm at 450 mm from the centre. To true the halves a strip of 2.5 mm comes off each at the centre, and the centre is lost. Better cut the wedges anew.',
    ],
    [
      9,
      0.1,
      '9 wedges each 0.1° too wide overlap by 7 mm at 450 mm from the centre. An odd number has no joint straight across: trim the last wedge to fit.',
    ],
  ])('%i wedges wrong by %f°', (count, error, sentence) => {
    expect(first(count, error)).toBe(sentence)
  })

  it('in inches', () => {
    expect(first(12, 0.2, 'in')).toContain('≈ 3/16 in comes off each half edge')
  })

  it.each([
    [
      12,
      0.05,
      'Each wedge is cut 0.05° full, to 30.05°, alike on both sides of its middle. Each half of 6 then stands 0.3° over straight. Plane that off along its last seam, 2.5 mm at 450 mm from the centre, shared between its two edges, and nothing at the centre.',
    ],
    [
      12,
      0,
      'Each wedge is cut to its share, 30°: nothing is left to plane, and one that comes out narrow costs the centre. Common practice is 0.05° to 0.1° full.',
    ],
    [
      9,
      0.1,
      'Each wedge is cut 0.1° full, to 40.1°, alike on both sides of its middle. An odd number has no joint straight across: the last wedge is trimmed by 0.9°, 7 mm at 450 mm from the centre.',
    ],
  ])('%i wedges cut %f° full', (count, full, words) => {
    expect(cutFullSentence({ count, radius: 450 }, full, 'mm')).toBe(words)
  })
})
