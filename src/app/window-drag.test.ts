import { describe, expect, it } from 'vitest'
import { point } from '../core/geometry/point'
import { rectangle } from '../core/job/usual'
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
