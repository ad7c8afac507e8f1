/** One file of a zip, as its directory describes it. */
export interface ZipEntry {
  readonly name: string
  readonly size: number
  readonly crc: number
}

const END = 0x06054b50
const ENTRY = 0x02014b50
/** The end of the directory with the longest comment there can be. */
const LONGEST_END = 22 + 0xffff

/**
 * What a zip says it holds, without unpacking anything; null if it has no readable directory. The library that unpacks
 * checks neither sizes nor checksums, so this is what to check against.
 */
export function zipDirectory(bytes: Uint8Array): readonly ZipEntry[] | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let end = bytes.length - 22
  while (end >= 0 && end >= bytes.length - LONGEST_END && view.getUint32(end, true) !== END) end--
  if (end < 0 || view.getUint32(end, true) !== END) return null
  const entries: ZipEntry[] = []
  let at = view.getUint32(end + 16, true)
  for (let left = view.getUint16(end + 10, true); left > 0; left--) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== ENTRY) return null
    const nameLength = view.getUint16(at + 28, true)
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength))
    entries.push({ name, size: view.getUint32(at + 24, true), crc: view.getUint32(at + 16, true) })
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  }
  return entries
}

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c
})

/** The checksum that zip files carry (CRC-32 of ISO 3309). */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff
  for (const byte of bytes) c = TABLE[(c ^ byte) & 0xff]! ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}
