import { describe, expect, it } from 'vitest'
import { emptyPng } from '../../tests/photographs/png'
import { imageSize } from './image-size'

describe('the size of a picture, by the head of its file', () => {
  it('[I7] is read from a PNG', () =>
    expect(imageSize(emptyPng(10_000, 8_000))).toEqual({ width: 10_000, height: 8_000 }))

  it('[I7] is read from a JPEG, past what stands before its frame', () => {
    // ITU-T T.81: SOI, an APP1 segment of 6 bytes, then SOF0 with precision, height, width
    const bytes = [0xff, 0xd8, 0xff, 0xe1, 0, 6, 1, 2, 3, 4, 0xff, 0xc0, 0, 17, 8, 0x0b, 0xb8, 0x0f, 0xa0, 3]
    expect(imageSize(Uint8Array.from(bytes))).toEqual({ width: 4000, height: 3000 })
  })

  it('[I7] is not made up for anything else', () => {
    expect(imageSize(new TextEncoder().encode('a shopping list, named leaf.jpg'))).toBeNull()
    expect(imageSize(new Uint8Array(0))).toBeNull()
    expect(imageSize(Uint8Array.of(0xff, 0xd8, 0xff))).toBeNull()
  })
})
