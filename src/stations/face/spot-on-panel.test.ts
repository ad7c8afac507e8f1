import { describe, expect, it } from 'vitest'
import { spotAsDrawn, spotOnPanel } from './spot-on-panel'

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
