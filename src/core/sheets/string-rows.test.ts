/** [Y10] What the order of jointing says of a string: its pieces by their outer edges, and how far each band meets it. */
import { describe, expect, it } from 'vitest'
import { faceOf, partOf, strips } from '../../../tests/properties/job-builders'
import type { Part } from '../job/job'
import { fittedPart } from '../job/fitted-part'
import { USUAL_BORDER } from '../patterns/border'
import { jointsInOrder, orderOfJointing } from '../seams/assembly'
import { stringLength } from './border-sentence'
import { drawJointingOrder } from './draw-jointing-order'
import { alongString, stringPieces } from './string-rows'

const string = { width: 2, species: 'maple' }
const framed = (over: Partial<Part>, width = 50) =>
  faceOf(
    fittedPart(
      partOf({
        width: 600,
        length: 800,
        recipe: strips({ count: 4 }),
        ...over,
        border: { ...USUAL_BORDER, width, string },
      }),
      'width',
    ),
  )

describe('a string in the order of jointing', () => {
  it('[Y10] four mitred pieces round a rectangle; every band meets it once along its whole edge', () => {
    const face = framed({})
    expect(stringPieces(face)).toEqual([
      { where: 'top edge, mitred', length: 500 },
      { where: 'right edge, mitred', length: 700 },
      { where: 'bottom edge, mitred', length: 500 },
      { where: 'left edge, mitred', length: 700 },
    ])
    const tree = orderOfJointing(
      face.pieces.map(({ cell }) => cell),
      face.seams,
    )
    const met = jointsInOrder(tree).map((joint) => alongString(face, joint))
    const bands = met.filter((length) => length > 0).sort((p, q) => p - q)
    expect(bands.map((length) => Math.round(length))).toEqual([500, 500, 700, 700])
    const words = drawJointingOrder(face, 'mm', { width: 210, height: 297 })
      .flat()
      .flatMap((item) => (item.kind === 'text' ? [item.text] : []))
    expect(words.filter((text) => text.startsWith('string, '))).toHaveLength(4)
  })

  it('[Y10] one piece round a circle, as long as the string; one for each edge of a polygon', () => {
    const round = framed({ width: 560, outline: { shape: 'circle' } })
    expect(stringPieces(round)).toEqual([
      { where: 'all round, its ends meeting', length: expect.closeTo(stringLength(round.border!), 6) as number },
    ])
    expect(stringPieces(framed({ width: 560, outline: { shape: 'polygon', sides: 6 } }))).toHaveLength(6)
    expect(stringPieces(faceOf(partOf({})))).toEqual([])
  })
})
