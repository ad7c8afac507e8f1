import type { Pixels } from '../../src/core/figure/log/leaf-pixels'

const COS = Float64Array.from({ length: 64 }, (_, i) => {
  const [k, n] = [Math.floor(i / 8), i % 8]
  return Math.cos(((2 * n + 1) * k * Math.PI) / 16) * (k === 0 ? Math.SQRT1_2 : 1) * 0.5
})

/** What a lossy file does to a picture: blocks of 8 pixels, their fine detail rounded the more the finer it is. */
export function blocky({ width, height, rgba }: Pixels, step: number): Pixels {
  const out = new Uint8ClampedArray(rgba)
  const block = new Float64Array(64)
  for (let c = 0; c < 3; c++)
    for (let y = 0; y + 8 <= height; y += 8)
      for (let x = 0; x + 8 <= width; x += 8) {
        for (let i = 0; i < 64; i++) block[i] = rgba[((y + (i >> 3)) * width + x + (i & 7)) * 4 + c]!
        roundDetail(block, step)
        for (let i = 0; i < 64; i++) out[((y + (i >> 3)) * width + x + (i & 7)) * 4 + c] = block[i]!
      }
  return { width, height, rgba: out }
}

function roundDetail(block: Float64Array, step: number): void {
  turn(block, HELD, true)
  turn(HELD, DETAIL, true)
  for (let i = 0; i < 64; i++) {
    const by = step * (0.4 + 0.2 * ((i >> 3) + (i & 7)))
    DETAIL[i] = Math.round(DETAIL[i]! / by) * by
  }
  turn(DETAIL, HELD, false)
  turn(HELD, block, false)
}

const HELD = new Float64Array(64)
const DETAIL = new Float64Array(64)

/** The cosine transform along the rows, or back, with rows and columns changed over. */
function turn(from: Float64Array, to: Float64Array, there: boolean): void {
  for (let row = 0; row < 8; row++)
    for (let k = 0; k < 8; k++) {
      let sum = 0
      for (let n = 0; n < 8; n++) sum += from[row * 8 + n]! * (there ? COS[k * 8 + n]! : COS[n * 8 + k]!)
      to[k * 8 + row] = sum
    }
}
