import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { point } from '../../src/core/geometry/point'
import { arc, circle, closedLine, fill, line, text } from '../../src/core/drawing/build'
import type { Drawing } from '../../src/core/drawing/drawing'
import type { PdfFonts } from '../../src/documents/pdf/pdf-document'

const require = createRequire(import.meta.url)
const font = (name: string) =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${name}.ttf`)))

/** The fonts as files, as the writer is given them. */
export const fonts: PdfFonts = {
  regular: font('400Regular/SourceSans3_400Regular'),
  bold: font('700Bold/SourceSans3_700Bold'),
}

/** The corners of an F: no turn and no mirror brings it back onto itself. */
export const F_CORNERS = [
  [20, 15],
  [95, 15],
  [95, 33],
  [41.5, 33],
  [41.5, 58],
  [77.25, 58],
  [77.25, 74],
  [41.5, 74],
  [41.5, 130],
  [20, 130],
].map(([x, y]) => point<'sheet'>(x!, y!))

/** An F with a dashed seam, an arc, a circle, a filled corner and texts, on a sheet that does not begin at 0, 0. */
export const lopsided: Drawing = {
  title: 'Lopsided & "tested" <F>',
  extent: { min: point(10, 5), max: point(130, 145) },
  items: [
    closedLine('cut', F_CORNERS),
    line('seam', [point(20, 100), point(41.5, 112.125)], { dash: [3, 1.5] }),
    arc('trim', point(90, 110), 24, Math.PI / 6, Math.PI),
    circle('mark', point(110, 40), 8.5),
    fill('mark', [point(100, 60), point(120, 60), point(100, 75)]),
    text(point(50, 50), 'Left edge', { size: 6, weight: 'bold' }),
    text(point(125, 130), 'Φύλλο & Дуб 7 < 8 "½"', { anchor: 'end' }),
    text(point(60, 125), 'up', { angle: -Math.PI / 2, anchor: 'middle' }),
  ],
}
