/** More pixels than this are refused; what is between the two is reduced while it is decoded. */
export const MOST_PIXELS = 64_000_000
export const WORKING_PIXELS = 16_000_000

/** Width and height as they stand in the head of a PNG, JPEG or WebP file, before any turning; null if not found. */
export function imageSize(head: Uint8Array): { readonly width: number; readonly height: number } | null {
  const view = new DataView(head.buffer, head.byteOffset, head.byteLength)
  if (head.length > 24 && view.getUint32(0) === 0x89504e47)
    return { width: view.getUint32(16), height: view.getUint32(20) }
  if (head.length > 4 && view.getUint16(0) === 0xffd8) return jpegSize(view)
  if (head.length > 30 && view.getUint32(0) === 0x52494646 && view.getUint32(8) === 0x57454250) return webpSize(view)
  return null
}

function jpegSize(view: DataView) {
  for (let at = 2; at + 9 < view.byteLength;) {
    if (view.getUint8(at) !== 0xff) return null
    const marker = view.getUint8(at + 1)
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5) }
    at += 2 + view.getUint16(at + 2)
  }
  return null
}

function webpSize(view: DataView) {
  const kind = String.fromCharCode(...[12, 13, 14, 15].map((at) => view.getUint8(at)))
  const three = (at: number) => view.getUint16(at, true) + (view.getUint8(at + 2) << 16)
  if (kind === 'VP8X') return { width: three(24) + 1, height: three(27) + 1 }
  if (kind === 'VP8 ') return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff }
  const bits = view.getUint32(21, true)
  return kind === 'VP8L' ? { width: (bits & 0x3fff) + 1, height: ((bits >> 14) & 0x3fff) + 1 } : null
}
