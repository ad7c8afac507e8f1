/**
 * [V20] The section shows every sheet once, from the show face down, and what is glued to its edges where it lies:
 * edges put on first stand beside the core alone, those put on last beside every layer.
 * [V21] A bow that is hollow on the show face hangs down in the drawing, and one scale holds for all curves.
 */
import { describe, expect, it } from 'vitest'
import type { EdgeWork, Layer, Pressing } from '../../core/press/pressing'
import { usualPressing } from '../../core/press/usual-pressing'
import { backedAlike, crossBanded, nominalName, ofStuff, stuffOf, STUFFS } from './layer-choices'
import { sectionRows } from './section-look'
import { bowPath, bowScale, bowWords, CURVE } from './warp-curve'

const plain = usualPressing('black walnut', 0.6)
const withLeft = (left: EdgeWork): Pressing => ({ ...plain, edges: { ...plain.edges, left } })

describe('[V20] the section', () => {
  it('has the face above and the backer below, each thin sheet drawn thick enough to be seen', () => {
    const rows = sectionRows(plain, 'mm')
    expect(rows.map(({ name, thickness }) => `${name} ${thickness}`)).toEqual([
      'face 0.6 mm',
      'MDF 18 mm',
      'backer 0.6 mm',
    ])
    expect(rows.map(({ line }) => line)).toEqual([
      'black walnut, flat cut, grain along the length',
      'no grain',
      'black walnut, flat cut, grain along the length',
    ])
    expect(Math.min(...rows.map(({ height }) => height))).toBeGreaterThan(10)
  })

  it.each<[EdgeWork, string[]]>([
    [{ edge: 'bare' }, ['none', 'none', 'none']],
    [{ edge: 'lipped before', thickness: 8 }, ['none', 'lipping', 'none']],
    [{ edge: 'edge veneer first', thickness: 0.6 }, ['none', 'veneer', 'none']],
    [{ edge: 'lipped after', thickness: 8 }, ['lipping', 'lipping', 'lipping']],
    [{ edge: 'edge veneer last', thickness: 0.6 }, ['veneer', 'veneer', 'veneer']],
  ])('$edge', (work, left) => {
    const rows = sectionRows(withLeft(work), 'mm')
    expect(rows.map((row) => row.left)).toEqual(left)
    expect(rows.map((row) => row.right)).toEqual(['none', 'none', 'none'])
  })

  it('marks a glue line that was made before', () => {
    const rows = sectionRows({ ...plain, gluedBefore: [1] }, 'mm')
    expect(rows.map(({ glue }) => glue)).toEqual([null, 'this pressing', 'before'])
  })
})

describe('[V21] the curves', () => {
  it('hang down where the show face is hollow', () => {
    const depth = (bow: number) => Number(/Q \S+ (\S+)/.exec(bowPath(bow, 10))![1]) - CURVE.half
    expect(depth(1)).toBeCloseTo(20, 6)
    expect(depth(-1)).toBeCloseTo(-20, 6)
    expect(bowWords(1, 'mm')).toBe('about 1 mm at most, hollow on the show face')
    expect(bowWords(-0.3, 'in')).toBe('about 1/32 in at most, round on the show face')
  })

  it('keep small bows small beside large ones, and all within the drawing', () => {
    const warp = (acrossWidth: number) => ({ acrossWidth, alongLength: 0, twist: 0 })
    expect(bowScale([warp(0.5)])).toBe(bowScale([warp(0.1)]))
    expect(bowScale([warp(0.5), warp(-40)]) * 40).toBeLessThanOrEqual(CURVE.half)
  })
})

describe('layers', () => {
  const [face, core] = plain.layers as [Layer, Layer, Layer]

  it.each(STUFFS.map(({ value }) => value))('can be made %s and stay so', (stuff) => {
    for (const layer of plain.layers) expect(stuffOf(ofStuff(layer, stuff, 'white oak'))).toBe(stuff)
  })

  it('put the front behind the core in the other order', () => {
    const band: Layer = { ...face, thickness: 1.2 }
    expect(backedAlike([face, band, core])).toEqual([face, band, core, band, face])
    expect(backedAlike([core, face])).toBeNull()
  })

  it('take cross-bands as a pair', () => {
    const banded = crossBanded(plain.layers, 'white oak')!
    expect(banded.map((layer) => 'grain' in layer && layer.grain)).toEqual([90, 0, 90, 0, 90])
    expect(crossBanded([face, core], 'white oak')).toBeNull()
  })

  it('have nominal thicknesses as they are called and as they measure', () => {
    expect(nominalName(25.4 / 42, 'in')).toBe('1/42 in, 0.6 mm')
    expect(nominalName(5, 'in')).toBe('5 mm, 0.1969 in')
    expect(nominalName(18, 'mm')).toBe('18 mm')
  })
})
