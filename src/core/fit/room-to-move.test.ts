/** [V4] the room is measured to the first border on the way; [V5] the band is everything the piece can cover. */
import { describe, expect, it } from 'vitest'
import { point } from '../geometry/point'
import { regionArea, regionCovers, type Region, type Ring } from '../geometry/polygon'
import { reach, roomToMove } from './room-to-move'

const ring = (...flat: number[]): Ring<'leaf'> =>
  Array.from({ length: flat.length / 2 }, (_, i) => point<'leaf'>(flat[2 * i]!, flat[2 * i + 1]!))

const play: Region<'leaf'> = [[ring(0, 0, 60, 0, 60, 400, 0, 400), ring(0, 100, 0, 120, 20, 120, 20, 100)]]
const piece = [point<'window'>(-10, -30), point<'window'>(10, -30), point<'window'>(10, 40), point<'window'>(-10, 40)]

describe('the room of a window', () => {
  it.each([
    { at: point<'leaf'>(40, 50), room: { toNumberedEnd: 50, toFarEnd: 350, toLeft: 40, toRight: 20 } },
    { at: point<'leaf'>(10, 50), room: { toNumberedEnd: 50, toFarEnd: 50, toLeft: 10, toRight: 50 } },
    { at: point<'leaf'>(10, 300), room: { toNumberedEnd: 180, toFarEnd: 100, toLeft: 10, toRight: 50 } },
    { at: point<'leaf'>(70, 300), room: { toNumberedEnd: 0, toFarEnd: 0, toLeft: 0, toRight: 0 } },
  ])('[V4] at $at.x, $at.y', ({ at, room }) => {
    expect(roomToMove(play, at)).toEqual(room)
  })

  it('[V5] the band of an oblong in an oblong play', () => {
    const band = reach([[ring(0, 0, 60, 0, 60, 400, 0, 400)]], piece)
    expect(regionArea(band)).toBeCloseTo(80 * 470, 3)
    expect(regionCovers(band, point(-9, -29))).toBe(true)
    expect(regionCovers(band, point(-11, 0))).toBe(false)
    expect(regionCovers(band, point(30, 441))).toBe(false)
  })
})
