import { describe, expect, it } from 'vitest'
import { facesOf, jobOf } from '../../../tests/cli/all-jobs'
import { faceOf, partOf, radial, strips } from '../../../tests/properties/job-builders'
import { ringCovers } from '../geometry/polygon'
import { allEdges } from '../../../tests/properties/job-builders'
import { edgeLength } from '../geometry/segment'
import { panelPins } from './panel-pins'

const pinsOf = (core: number, over: Parameters<typeof partOf>[0] = {}) => {
  const { sizes, seams } = faceOf(partOf({ core: allEdges(core), ...over }))
  return { sizes, pins: panelPins(sizes, seams) }
}

describe('[T46] pins that hold the taped sheet to its core', () => {
  it('stand half-way into the waste of both ends, beside the centre line', () => {
    const { pins, sizes } = pinsOf(12, { recipe: strips({ count: 4, equal: 'before trimming' }) })
    expect(pins?.map(({ side, beside, inside }) => ({ side, beside, inside }))).toEqual([
      { side: 'top', beside: 25, inside: 6 },
      { side: 'bottom', beside: 25, inside: 6 },
    ])
    for (const { at } of pins!) {
      expect(ringCovers(sizes.outlines.core.ring, at)).toBe(true)
      expect(ringCovers(sizes.outlines.finished.ring, at)).toBe(false)
    }
  })

  it('need waste in the core: none is found on one pressed at its size', () => {
    expect(pinsOf(0).pins).toBeNull()
    expect(pinsOf(5).pins).toBeNull()
  })

  it('go to the sides where only those have waste', () => {
    const { pins } = pinsOf(0, { core: { top: 0, bottom: 0, left: 14, right: 14 } })
    expect(pins?.map(({ side }) => side)).toEqual(['left', 'right'])
  })

  it('keep clear of the seams of every face there is', () => {
    let found = 0
    const faces = ['sideboard', 'radial-of-twelve-on-a-square-core', 'unequal-overhangs'].flatMap((name) =>
      facesOf(jobOf(name)),
    )
    for (const { sizes, seams } of [...faces, faceOf(partOf({ core: allEdges(12), recipe: radial() }))])
      for (const { at } of panelPins(sizes, seams) ?? []) {
        found += 1
        for (const { edge } of seams)
          expect(edgeLength({ a: edge.a, b: at }) + edgeLength({ a: at, b: edge.b })).toBeGreaterThan(
            edgeLength(edge) + 1e-3,
          )
      }
    expect(found).toBeGreaterThan(1)
  })
})
