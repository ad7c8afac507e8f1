import { describe, expect, it } from 'vitest'
import { boxed, endMatch, faceOf, fourWay, partOf, radial, strips } from '../../../tests/properties/job-builders'
import type { Part } from '../job/job'
import { storyStrips } from './story-strip'

const stripsOf = (over: Partial<Part>) => storyStrips(faceOf(partOf(over)))

describe('[T43] the story strip', () => {
  it('has every line of a straight face, from the sheet’s left edge', () => {
    // 600 wide, the core 5 over and the sheet 10 over that on the left, 8 on the right
    const [strip, ...more] = stripsOf({
      recipe: strips({ count: 4, equal: 'after trimming' }),
      core: { top: 0, right: 5, bottom: 0, left: 5 },
      overhang: { top: 10, right: 8, bottom: 10, left: 10 },
    })
    expect(more).toEqual([])
    expect(strip!.length).toBe(628)
    expect(strip!.marks.map(({ at, lines, letters }) => [at, lines.join(' '), letters.join(' ')])).toEqual([
      [0, 'sheet', ''],
      [10, 'core', ''],
      [15, 'trim', ''],
      [165, 'seam', 'A'],
      [315, 'centre seam', 'B'],
      [465, 'seam', 'C'],
      [615, 'trim', ''],
      [620, 'core', ''],
      [628, 'sheet', ''],
    ])
  })

  it.each([
    { what: 'a four-way match', recipe: fourWay({ count: 4 }), axes: ['across', 'along'] },
    { what: 'an end match', recipe: endMatch({ count: 8, rows: 2 }), axes: ['across', 'along'] },
    { what: 'a sunburst', recipe: radial({ count: 12 }), axes: [] },
    { what: 'a mitred box', recipe: boxed(), axes: [] },
    { what: 'one leaf', recipe: strips({ arrangement: 'balance', count: 1 }), axes: [] },
  ])('$what: $axes', ({ recipe, axes }) => {
    expect(
      stripsOf({ recipe, width: axes.length === 0 && recipe.pattern === 'strips' ? 150 : 600 }).map(({ axis }) => axis),
    ).toEqual(axes)
  })
})
