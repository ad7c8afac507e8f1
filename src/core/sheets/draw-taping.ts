import { text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import type { PageSize } from '../drawing/sheet-set'
import type { Point } from '../geometry/point'
import { point } from '../geometry/point'
import { transformPoint } from '../geometry/transform'
import type { LengthUnit } from '../units/unit'
import { bold, column, plain } from './card'
import { fittedFace } from './draw-seam-map'
import { faceItems, writingSize } from './face-items'
import { fromGlueSide } from './glue-side'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { faceSentence } from './border-sentence'
import { tapeItems } from './tape'

export type TapedSide = 'show side' | 'glue side'

const AROUND = 16

const WORDS: Readonly<Record<TapedSide, { readonly tape: string; readonly how: readonly string[] }>> = {
  'glue side': {
    tape: 'TEMPORARY TAPE: ALL OFF BEFORE PRESSING',
    how: [
      'First painter’s tape here, pulled tight across each seam and pressed down. Turn the sheet over, open each pair like a book and test it against the light: what shows light is shot again. A thin line of seam glue, close it flat, wipe.',
      'When the show side is taped and dry, every strip on this side comes off. What is left under the face shows as a lump and holds no glue. Count what came off.',
    ],
  },
  'show side': {
    tape: 'GUMMED TAPE: STAYS ON THROUGH THE PRESS',
    how: [
      'Gummed paper tape, damped: across each seam first, then along its whole length. It shrinks as it dries and draws the seam shut. Dry it flat under a board; one layer only where pressure must reach.',
      'It is damped and scraped off after the face has stood. Pressed wrong side up it is glued in for good: this side looks at you, or at the caul, never at the core.',
    ],
  },
}

const KEY =
  'White number: numbered side up on the show side. Black with an arrow: turned over, so that its number is seen from the glue side. Grey: tape.'

/** One side of the taped sheet, named in large letters; the glue side is the show side turned over like a page. */
export function drawTaping(
  face: JudgedFace,
  side: TapedSide,
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const { tape, how } = WORDS[side]
  const head = pageHead(page, face.part.name, 'Taping', faceSentence(face, unit))
  const foot = pageFoot(page, [KEY])
  const width = page.width - 2 * PAGE_ROOM
  const title = head.bottom + 12
  const words = (y: number) =>
    column(point(PAGE_ROOM, y), width, [bold(tape, 5.4), ...how.map((sentence) => plain(sentence, 4))])
  const wordsTop = foot.bottom - words(0).bottom - 2
  const shown = fittedFace(face, page, { top: title + AROUND, bottom: wordsTop - AROUND, around: AROUND })
  const panelToSheet = side === 'show side' ? shown : fromGlueSide(shown, page.width / 2)
  const onSheet = (p: Point<'panel'>) => transformPoint(panelToSheet, p)
  return [
    [
      ...head.items,
      text(point(page.width / 2, title), side.toUpperCase(), { size: 14, weight: 'bold', anchor: 'middle' }),
      ...tapeItems(face, onSheet, side === 'show side'),
      ...faceItems(face, { panelToSheet, size: writingSize(face) }),
      ...words(wordsTop).items,
      ...foot.items,
    ],
  ]
}
