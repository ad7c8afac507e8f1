import { describe, expect, it } from 'vitest'
import { centreSeams, measurePlaces } from './as-cut-places'
import { plannedMeasures } from '../../core/seams/as-cut'
import { USUAL_SHOP } from '../../core/shop'
import { faceOf, fourWay, partOf, radial, strips } from '../../../tests/properties/job-builders'
import { spotAsDrawn, spotOnPanel } from './spot-on-panel'

describe('the seams a sheet is laid by', () => {
  it.each([
    { face: 'two leaves', recipe: strips({ count: 2 }), width: 300, seams: { upright: true, level: false } },
    {
      face: 'three leaves',
      recipe: strips({ arrangement: 'balance', count: 3 }),
      width: 500,
      seams: { upright: false, level: false },
    },
    { face: 'four-way', recipe: fourWay(), width: 300, seams: { upright: true, level: true } },
    { face: 'sunburst', recipe: radial(), width: 300, seams: { upright: false, level: false } },
  ])('$face', ({ recipe, width, seams }) => {
    expect(centreSeams(faceOf(partOf({ width, recipe })), USUAL_SHOP)).toEqual(seams)
  })

  it('are measured at both ends, a cross seam at both sides too', () => {
    const { sizes } = faceOf(partOf({ width: 300, recipe: fourWay() }))
    expect(measurePlaces(plannedMeasures(sizes, false)).map(({ planned }) => planned)).toEqual([160, 160, 160, 160])
    expect(new Set(measurePlaces(plannedMeasures(sizes, true)).map(({ name }) => name)).size).toBe(8)
  })
})

describe('a spot on the drawing', () => {
  it.each([false, true])('[A2] is the same pointed at and typed, lying: %s', (lying) => {
    const part = { width: 420, length: 1500, lying }
    expect(spotAsDrawn(part, spotOnPanel(part, { left: 110, top: 37 }))).toEqual({ left: 110, top: 37 })
  })

  it('is taken to the panel, upright and lying', () => {
    const size = { width: 400, length: 1500 }
    expect(spotOnPanel({ ...size, lying: false }, { left: 10, top: 20 })).toEqual({ x: -190, y: -730 })
    // lying, the numbered end is at the left and the panel's left edge at the foot
    expect(spotOnPanel({ ...size, lying: true }, { left: 10, top: 20 })).toEqual({ x: 180, y: -740 })
  })
})
