import { describe, expect, it } from 'vitest'
import { faceOf, partOf, radial, strips } from '../../../tests/properties/job-builders'
import type { Item, Text } from '../drawing/drawing'
import { point } from '../geometry/point'
import { determinant, identity, transformPoint } from '../geometry/transform'
import { drawTaping, type TapedSide } from './draw-taping'
import { fromGlueSide } from './glue-side'

const A4 = { width: 210, height: 297 }
const tagsOf = (items: readonly Item[], numbers: readonly string[]): readonly Text[] =>
  items.filter(
    (item): item is Text =>
      item.kind === 'text' && item.weight === 'bold' && item.size > 5 && numbers.includes(item.text),
  )

describe('[T44] the two sides of a taped sheet', () => {
  it('the glue side mirrors left and right and nothing else', () => {
    const view = fromGlueSide(identity<'panel', 'sheet'>(), 100)
    expect(determinant(view)).toBeCloseTo(-1, 12)
    expect(transformPoint(view, point<'panel'>(30, 7))).toEqual({ x: 170, y: 7 })
  })

  it.each([strips({ count: 4 }), radial({ count: 12 })])(
    'each leaf changes sides, its number stays readable',
    (recipe) => {
      const face = faceOf(partOf({ recipe }))
      const numbers = face.pieces.map(({ leaf }) => String(leaf!.number))
      const [show, glue] = (['show side', 'glue side'] as TapedSide[]).map(
        (side) => drawTaping(face, side, 'mm', A4)[0]!,
      )
      const order = (items: readonly Item[]) =>
        [...tagsOf(items, numbers)].sort((p, q) => p.at.x - q.at.x).map(({ text }) => text)
      expect(order(show!)).toHaveLength(numbers.length)
      if (recipe.pattern === 'strips') expect(order(glue!)).toEqual([...order(show!)].reverse())
      for (const tag of tagsOf(glue!, numbers)) expect(tag.angle).toBe(0)
      const said = (items: readonly Item[]) =>
        items.flatMap((item) => (item.kind === 'text' && item.size >= 14 ? [item.text] : []))
      expect([said(show!), said(glue!)]).toEqual([['SHOW SIDE'], ['GLUE SIDE']])
    },
  )
})
