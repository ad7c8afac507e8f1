import { invariant, present } from '../../core/invariant'

/** What a TrueType file says of its characters. */
export interface FontTable {
  /** The glyph of a code point; undefined where the font has none. */
  glyphOf(codePoint: number): number | undefined
  /** Its advance in thousandths of the em; undefined where the font has none. */
  advanceOf(codePoint: number): number | undefined
}

/**
 * Reads the character map (`cmap`, subtable format 4: the basic plane, all that the writer can set) and the
 * advances (`hmtx`) by the OpenType specification. Throws if the file is no TrueType font.
 */
export function readFontTable(bytes: Uint8Array): FontTable {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  invariant(bytes.length > 12 && view.getUint32(0) === 0x00010000, 'the font is not a TrueType file')
  const table = (tag: string): number => present(tableOffsets(view).get(tag), `the font has no table ${tag}`)
  const glyphs = readCharacterMap(view, table('cmap'))
  const unitsPerEm = view.getUint16(table('head') + 18)
  const lastAdvance = view.getUint16(table('hhea') + 34) - 1
  const advances = table('hmtx')
  return {
    glyphOf: (codePoint) => glyphs.get(codePoint),
    advanceOf: (codePoint) => {
      const glyph = glyphs.get(codePoint)
      if (glyph === undefined) return undefined
      return (view.getUint16(advances + 4 * Math.min(glyph, lastAdvance)) * 1000) / unitsPerEm
    },
  }
}

function tableOffsets(view: DataView): ReadonlyMap<string, number> {
  const tag = (at: number) => String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)))
  const records = Array.from({ length: view.getUint16(4) }, (_, i) => 12 + 16 * i)
  return new Map(records.map((at) => [tag(at), view.getUint32(at + 8)]))
}

function readCharacterMap(view: DataView, cmap: number): ReadonlyMap<number, number> {
  const subtables = Array.from({ length: view.getUint16(cmap + 2) }, (_, i) => cmap + view.getUint32(cmap + 8 + 8 * i))
  const at = present(
    subtables.find((subtable) => view.getUint16(subtable) === 4),
    'the font has no character map of format 4',
  )
  const twice = view.getUint16(at + 6)
  const glyphs = new Map<number, number>()
  for (let i = 0; i < twice; i += 2) {
    const end = view.getUint16(at + 14 + i)
    const start = view.getUint16(at + 16 + twice + i)
    const delta = view.getUint16(at + 16 + 2 * twice + i)
    const rangeAt = at + 16 + 3 * twice + i
    const range = view.getUint16(rangeAt)
    for (let code = start; code <= end && code !== 0xffff; code++) {
      // offset 0: the glyph is the code itself; else it stands in the list that follows the table
      const listed = range === 0 ? code : view.getUint16(rangeAt + range + 2 * (code - start))
      const glyph = range !== 0 && listed === 0 ? 0 : (listed + delta) & 0xffff
      if (glyph !== 0) glyphs.set(code, glyph)
    }
  }
  return glyphs
}
