/**
 * [A6] Grain and figure are two claims: where one that a pattern makes breaks, there is a finding with the size of it, and
 *      where nothing is claimed that is said.
 */
import { describe, expect, it } from 'vitest'
import {
  boxed,
  codesOf,
  diamond,
  faceOf,
  findingsOf,
  flitchOf,
  fourWay,
  herringbone,
  parquet,
  partOf,
  plainLeaves,
  planks,
  radial,
  strips,
} from '../../../tests/properties/job-builders'
import { point } from '../geometry/point'
import { compose, identity, reflection, rotation } from '../geometry/transform'
import { rectangle } from '../job/usual'
import type { Recipe } from '../patterns/recipe'
import { diamondMiss, grainMiss } from '../seams/grain-at-seam'
import { findingSentence } from './wording'

const wide = flitchOf({ outline: rectangle(900, 1800), leaves: plainLeaves(32) })
const burl = { ...wide, figure: 'burl' as const }
const face = (recipe: Recipe, [width, length] = [400, 400], flitch = wide) =>
  faceOf(partOf({ width, length, recipe }), flitch)
const said = (found: ReturnType<typeof face>, code: Parameters<typeof findingsOf>[1]) =>
  findingsOf(found, code).map((finding) => findingSentence(finding, 'mm'))

describe('the grain law', () => {
  const seam = { a: point<'panel'>(0, 0), b: point<'panel'>(300, 200) }
  const leaf = compose(rotation<'panel'>(0.3), rotation<'leaf', 'panel'>(0.4))

  it('holds for a mirror in the seam, and for the same turned by half', () => {
    const mirrored = compose(reflection<'panel'>(seam.a, seam.b), leaf)
    expect(grainMiss(seam, leaf, mirrored)).toBeCloseTo(0, 9)
    expect(grainMiss(seam, leaf, compose(mirrored, rotation<'leaf'>(Math.PI)))).toBeCloseTo(0, 9)
    expect(grainMiss(seam, leaf, compose(mirrored, rotation<'leaf'>(0.2)))).toBeCloseTo((0.2 * 180) / Math.PI, 9)
  })

  it.each([
    [300, 300, 0],
    [400, 300, 90 - (2 * Math.atan2(300, 400) * 180) / Math.PI],
    [300, 900, 2 * ((Math.atan2(900, 300) * 180) / Math.PI) - 90],
  ])('[A6] breaks at a mitre from corner to corner of %i x %i by %f°: why mitres are cut at 45°', (w, l, miss) => {
    // grain along the edges: upright on one side of the mitre, level on the other
    const toCorner = { a: point<'panel'>(0, 0), b: point<'panel'>(w, l) }
    const [upright, level] = [identity<'leaf'>(), rotation<'leaf'>(Math.PI / 2)] as const
    expect(grainMiss(toCorner as never, upright as never, level as never)).toBeCloseTo(miss, 9)
  })
})

describe('[A6] where a claim breaks', () => {
  it('an odd sunburst: the grain mirrors, the figure jumps at one seam by the width of a wedge', () => {
    const odd = face(radial({ count: 9, cutFull: 0 }))
    const [found, ...more] = findingsOf(odd, 'figure-breaks')
    expect(more).toEqual([])
    expect(found!.about).toMatchObject({ promised: 'grain', why: 'odd ring' })
    // both sides show the leaf's own edge: the chord of two half wedges at the end of the seam
    const seam = odd.seams.find(({ letter }) => letter === found!.about['letter'])!
    const reach = Math.max(...[seam.edge.a, seam.edge.b].map(({ x, y }) => Math.hypot(x, y)))
    expect(found!.measured).toBeCloseTo(2 * reach * Math.sin(Math.PI / 9), 6)
    expect(said(odd, 'figure-breaks')[0]).toMatch(
      /the grain mirrors, but the figure jumps by up to [\d.]+ mm: an odd number of wedges/,
    )
    expect(codesOf(face(radial({ count: 8 })))).not.toContain('figure-breaks')
    // burl has no grain to speak of
    expect(said(face(radial({ count: 9 }), [400, 400], burl), 'figure-breaks')[0]).not.toContain('grain')
  })

  it('a box that is not square: the grain mirrors, the figure jumps', () => {
    expect(said(face(boxed(), [400, 500]), 'figure-breaks')[0]).toMatch(
      /the grain mirrors, but .*box that is not square/,
    )
    expect(said(face(boxed(), [400, 500], burl), 'figure-breaks')[0]).toMatch(/^At seam \w the figure jumps .* square/)
  })

  it('a leaf that was shifted: the grain still mirrors', () => {
    const part = partOf({
      width: 400,
      recipe: strips({ count: 2 }),
      nudges: { R1: { leaf: 2, by: point(0, 5) }, L1: { leaf: 2, by: point(0, 5) } },
    })
    expect(said(faceOf(part, wide), 'figure-breaks')).toEqual([
      expect.stringMatching(/does not mirror at seam A: it jumps 5 mm there\. The grain does\./),
    ])
  })

  it.each([
    [
      'round',
      60,
      400,
      400,
      'end',
      200 - 200 / Math.tan(Math.PI / 3),
      /middle of a side meets the end 84.5 mm off its middle/,
    ],
    ['round', 45, 400, 600, 'side', 100, /middle of an end meets the side 100 mm off its middle\..* At 56.31° it fits/],
    ['to the centre', 45, 400, 600, 'side', 100, /through the centre it meets the side 100 mm off the corner/],
  ] as const)('a diamond %s at %i° on %i x %i', (runs, angle, width, length, on, by, words) => {
    expect(diamondMiss({ width, length }, angle)).toEqual({ on, by: expect.closeTo(by, 9) })
    const found = face(diamond({ runs, angle }), [width, length])
    expect(findingsOf(found, 'diamond-off')[0]!.measured).toBeCloseTo(by, 9)
    expect(said(found, 'diamond-off')[0]).toMatch(words)
    expect(codesOf(found)).toContain('figure-meets')
  })

  it('a diamond that fits says nothing of it', () => {
    for (const angle of ['mid-sides', 45] as const)
      expect(codesOf(face(diamond({ angle })))).not.toContain('diamond-off')
    expect(codesOf(face(diamond({ angle: 30 }), [400, 400], burl))).not.toContain('diamond-off')
  })

  it('a herringbone of more leaves than strips', () => {
    const found = face(herringbone({ columns: 2, stripWidth: 200, count: 40 }), [300, 300])
    const [lowered] = findingsOf(found, 'count-lowered')
    expect(lowered!.measured).toBe(found.count)
    expect(found.count).toBe(found.pieces.length)
    expect(said(found, 'count-lowered')[0]).toMatch(/^40 leaves are asked for, but there are no more than \d+ pieces/)
    const exact = face(herringbone({ columns: 2, stripWidth: 200, count: found.count }), [300, 300])
    expect(codesOf(exact)).not.toContain('count-lowered')
  })

  it('a four-way face with unequal offsets along a seam', () => {
    const t = wide.thickness
    const from = (laying: 'by spine' | 'left to right' | 'right to left') => face(fourWay({ laying }), [400, 600])
    expect(codesOf(from('by spine'))).not.toContain('offsets-unequal')
    const found = (['left to right', 'right to left'] as const).flatMap((way) =>
      findingsOf(from(way), 'offsets-unequal'),
    )
    // 1 shown on its near face: at the cross seam 2 and 3 are faces of one cut, 1 and 4 lie four leaves apart
    expect(found.map(({ measured, about }) => [measured, about['least'], about['most']])).toEqual([
      [expect.closeTo(4 * t, 9), expect.closeTo(0, 9), expect.closeTo(4 * t, 9)],
    ])
    expect(findingSentence(found[0]!, 'mm')).toMatch(/lie from 0 mm to 2.4 mm apart in the log/)
  })
})

describe('[A6] where nothing is asked of the figure it is said', () => {
  it.each([
    ['reverse slip', strips({ match: 'reverse slip', count: 4 })],
    ['parquet', parquet({ count: 4 })],
    ['basket', parquet({ count: 4, strips: 3 })],
    ['as they come', planks({ count: 3 })],
    ['shuffled', planks({ count: 3, order: 'shuffled' })],
    ['slip ring', radial({ match: 'slip' })],
  ])('%s', (what, recipe) => {
    const found = face(recipe)
    expect(findingsOf(found, 'nothing-asked').map(({ about }) => about['what'])).toEqual([what])
    expect(codesOf(found)).not.toContain('figure-breaks')
    expect(said(found, 'nothing-asked')[0]).toMatch(/not (is )?asked|is the figure asked to meet/)
  })

  it('a herringbone counts its column seams only', () => {
    const found = face(herringbone({ columns: 4, stripWidth: 80 }), [600, 500])
    expect(said(found, 'figure-meets')[0]).toMatch(
      /^The figure mirrors at all 3 column seams.* Between the strips of a column nothing is asked of it\./,
    )
  })
})
