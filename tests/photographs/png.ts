import { deflateSync } from 'node:zlib'
import { crc32 } from '../../src/store/zip-directory'
import type { Pixels } from '../../src/core/figure/log/leaf-pixels'

/** A picture as a PNG file, without its transparency. */
export function pngOf({ width, height, rgba }: Pixels): Buffer {
  const raw = Buffer.alloc(height * (1 + 3 * width))
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (let c = 0; c < 3; c++) raw[y * (1 + 3 * width) + 1 + 3 * x + c] = rgba[4 * (y * width + x) + c]!
  return pngFile(width, height, deflateSync(raw, { level: 3 }))
}

/** The head of a PNG of any size with hardly anything in it. */
export const emptyPng = (width: number, height: number): Buffer => pngFile(width, height, deflateSync(Buffer.alloc(1)))

function pngFile(width: number, height: number, data: Buffer): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 2, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([signature, chunk('IHDR', head), chunk('IDAT', data), chunk('IEND', Buffer.alloc(0))])
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const out = Buffer.alloc(body.length + 8)
  out.writeUInt32BE(data.length, 0)
  body.copy(out, 4)
  out.writeUInt32BE(crc32(body), body.length + 4)
  return out
}
