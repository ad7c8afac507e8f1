/** [A1] Neighbours that lie the other side up shine the other way, and change places when the light does. */
import { describe, expect, it } from 'vitest'
import { derive } from '../../core/derive'
import { demoJob } from '../../core/figure/demo-job'
import { withoutMemory } from '../../core/fit/answers'
import { faceOf, flitchOf, partOf, radial, strips } from '../../../tests/properties/job-builders'
import type { BoardColours } from '../board-types'
import { faceScene } from './face-scene'
import type { LightFrom } from '../../store/session.svelte'

// no colour has to do with it
const colours = {} as BoardColours

const shines = (face: ReturnType<typeof faceOf>, shine: number, lightFrom: LightFrom = 'top') =>
  faceScene(face, { unit: 'mm', colours, finished: { shine, lightFrom } }).cells.map((cell) => cell.shine)

describe('the shine of turned leaves', () => {
  const book = faceOf(partOf({ width: 900, recipe: strips({ count: 6 }) }))

  it('[A1] alternates in a book match, the more the higher the slider', () => {
    const full = shines(book, 1)
    expect(full.slice(1).every((one, i) => Math.sign(one) === -Math.sign(full[i]!))).toBe(true)
    expect(full.every((one) => Math.abs(one) > 0.3 && Math.abs(one) <= 1)).toBe(true)
    expect(shines(book, 0.5)).toEqual(full.map((one) => one / 2))
    expect(shines(book, 0).every((one) => one === 0)).toBe(true)
  })

  it('[A1] changes places when the light comes from the other end', () => {
    const [from, to] = [shines(book, 1, 'top'), shines(book, 1, 'bottom')]
    expect(to.every((one, i) => Math.sign(one) === -Math.sign(from[i]!))).toBe(true)
  })

  it('[A1] is alike for all leaves of a slip match, and unlike for spun ones', () => {
    expect(new Set(shines(faceOf(partOf({ width: 900, recipe: strips({ match: 'slip', count: 6 }) })), 1)).size).toBe(1)
    const spun = shines(faceOf(partOf({ width: 900, recipe: strips({ match: 'reverse slip', count: 6 }) })), 1)
    expect(new Set(spun.map(Math.sign)).size).toBe(2)
  })

  it('[A1] goes by the light on the drawing, whichever way the face lies', () => {
    const [top] = derive(demoJob(), withoutMemory).parts.filter(({ part }) => part.lying)
    const cells = shines(top!, 1, 'left')
    expect(Math.abs(cells[0]!)).toBeCloseTo(
      Math.abs(shines(faceOf(partOf({ recipe: strips({ count: 2 }) })), 1)[0]!),
      9,
    )
  })

  it('[A1] alternates round a sunburst where the light comes along the grain', () => {
    const cells = shines(faceOf(partOf({ width: 400, length: 400, recipe: radial() }), flitchOf()), 1)
    // the wedges below and above the centre point down and up
    expect(Math.sign(cells[2]!)).not.toBe(Math.sign(cells[3]!))
  })
})
