import { describe, expect, it } from 'vitest'
import { point } from '../core/geometry/point'
import { rectangle, usualFlitch, usualPart } from '../core/job/usual'
import { WINDOW } from '../core/faces/window-group'
import { moveLabel } from '../store/shown-window'
import { heldInPlay } from './window-drag'

const play = [[rectangle(100, 50)]] as const

describe('dragging the window', () => {
  it.each([
    { where: 'within the play', at: point<'leaf'>(40, 20), held: point(40, 20) },
    { where: 'just past its border', at: point<'leaf'>(40, 60), held: point(40, 50) },
    { where: 'pulled far past it', at: point<'leaf'>(40, 80), held: point(40, 80) },
  ])('[F10] $where', ({ at, held }) => {
    expect(heldInPlay(play, at)).toEqual(held)
  })
})

describe('what a moved window is called', () => {
  const flitch = usualFlitch('f', 'Walnut', rectangle(200, 900), [])
  const named = (id: string, name: string, leader: string | null) => ({
    part: usualPart(id, name, 300, 700, flitch),
    follows: leader === null ? null : { part: leader, apart: point<'leaf'>(0, 0), cells: id },
  })
  const [left, middle, right, top] = [
    named('a', 'Door, left', null),
    named('b', 'Door, middle', 'a'),
    named('c', 'Door, right', 'a'),
    named('d', 'Top', null),
  ] as const

  it.each([
    { face: top, label: 'Top: move the window' },
    { face: right, label: 'Door, left; Door, middle and Door, right: move the window' },
    { face: left, label: 'Door, left; Door, middle and Door, right: move the window' },
  ])('[A25] $label', ({ face, label }) => {
    expect(moveLabel(face, [left, middle, right, top], WINDOW)).toBe(label)
  })
})
