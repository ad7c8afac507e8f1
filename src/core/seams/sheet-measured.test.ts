/** [A5] What was measured on a taped sheet is kept with its part, answered, and printed for the press. */
import { describe, expect, it } from 'vitest'
import { allEdges, faceOf, fourWay, partOf, radial, strips } from '../../../tests/properties/job-builders'
import { asCutSentences, farOffSentence } from '../checks/as-cut-wording'
import { asCutSheets } from '../sheets/draw-as-cut'
import { USUAL_SHOP } from '../shop'
import { showLength } from '../units/show-length'
import { plannedMeasures } from './as-cut'
import { answerAsCut, centreSeams, measurePlaces } from './sheet-measured'

describe('the seams a sheet is laid by', () => {
  it.each([
    { face: 'two leaves', recipe: strips({ count: 2 }), width: 300, seams: { upright: true, level: false } },
    {
      face: 'three leaves',
      recipe: strips({ arrangement: 'balance', count: 3 }),
      width: 500,
      seams: { upright: false, level: false },
    },
    { face: 'four-way', recipe: fourWay(), width: 300, seams: { upright: true, level: true } },
    { face: 'sunburst', recipe: radial(), width: 300, seams: { upright: false, level: false } },
  ])('$face', ({ recipe, width, seams }) => {
    expect(centreSeams(faceOf(partOf({ width, recipe })), USUAL_SHOP)).toEqual(seams)
  })

  it('are measured at both ends, a cross seam at both sides too', () => {
    const { sizes } = faceOf(partOf({ width: 300, recipe: fourWay() }))
    expect(measurePlaces({}, plannedMeasures(sizes, false)).map(({ planned }) => planned)).toEqual([160, 160, 160, 160])
    expect(new Set(measurePlaces({}, plannedMeasures(sizes, true)).map(({ at }) => at)).size).toBe(8)
  })
})

/** A door of two leaves, 6 mm over at the sides: its sheet is 156 mm to both sides of the seam. */
const door = partOf({ width: 300, overhang: allEdges(6), recipe: strips({ count: 2 }) })

describe('[A5] a sheet that was measured', () => {
  it('is answered by what was measured, the rest as planned', () => {
    const measured = { 'top left': 158, 'top right': 155, 'bottom left': 158, 'bottom right': 155 }
    const { answer, places } = answerAsCut(faceOf({ ...door, asCut: measured }), USUAL_SHOP)!
    expect(places.map(({ at, length, planned }) => [at, length, planned])).toEqual(
      Object.entries(measured).map(([at, length]) => [at, length, 156]),
    )
    // 3 mm of difference: laid by its edges 1.5 mm to the right, moved back there is 8 and 5 mm over
    expect(answer.byEdges.top).toBeCloseTo(1.5, 9)
    expect(answer.edges.map(({ ends }) => ends[0].over)).toEqual([expect.closeTo(8, 9), expect.closeTo(5, 9)])
    const alone = answerAsCut(faceOf({ ...door, asCut: { 'top left': 158 } }), USUAL_SHOP)!
    expect(alone.places.map(({ length }) => length)).toEqual([158, 156, 156, 156])
  })

  it('has no answer where no seam lies on the centre', () => {
    const odd = partOf({ width: 500, recipe: strips({ arrangement: 'balance', count: 3 }) })
    expect(answerAsCut(faceOf({ ...odd, asCut: { 'top left': 240 } }), USUAL_SHOP)).toBeNull()
  })

  it('[A7] far off what is planned now, as after a change of the part’s size, is doubted', () => {
    const asCut = { 'top left': 158, 'top right': 147 }
    const doubt = (width: number) => {
      const face = faceOf({ ...door, width, asCut })
      const [sheet] = asCutSheets(face, USUAL_SHOP, 'mm').sheets
      const pages = sheet!.kind === 'page' ? sheet!.draw({ width: 210, height: 297 }) : []
      const printed = pages.flat().some((item) => item.kind === 'text' && item.text.includes('Far off'))
      return { words: farOffSentence(answerAsCut(face, USUAL_SHOP)!.places, 'mm'), printed }
    }
    expect(doubt(300)).toEqual({ words: '', printed: false })
    expect(doubt(320)).toEqual({
      words:
        'Far off what is planned: top end, right of the seam 147 mm, planned 166 mm. If the part was changed since the sheet was measured, measure it anew.',
      printed: true,
    })
  })

  it('prints on one page the words, the pencil marks and the trims', () => {
    const face = faceOf({ ...door, core: allEdges(2), asCut: { 'top left': 159, 'bottom left': 159 } })
    const [sheet] = asCutSheets(face, USUAL_SHOP, 'mm').sheets
    const pages = sheet!.kind === 'page' ? sheet!.draw({ width: 210, height: 297 }) : []
    const words = pages.flat().flatMap((item) => (item.kind === 'text' ? [item.text] : []))
    expect(pages).toHaveLength(1)
    const { answer } = answerAsCut(face, USUAL_SHOP)!
    for (const { ends } of answer.edges)
      for (const { over, trim } of ends)
        for (const length of [over, trim]) expect(words).toContain(showLength(length, 'mm', 'seam'))
    for (const sentence of asCutSentences(answer, USUAL_SHOP, 'mm')) expect(words.join(' ')).toContain(sentence)
    // the sheet's outline stands over the crosses of the core, more on the left
    const [outline] = pages.flat().filter((item) => item.kind === 'line' && item.layer === 'cut' && item.closed)
    const [core] = pages.flat().filter((item) => item.kind === 'line' && item.layer === 'trim' && item.closed)
    if (outline?.kind !== 'line' || core?.kind !== 'line') throw new Error('no sheet and no core are drawn')
    const [left, right] = [core.points[0]!.x - outline.points[0]!.x, outline.points[1]!.x - core.points[1]!.x]
    const [overLeft, overRight] = answer.edges.map(({ ends }) => ends[0].over)
    expect(left / right).toBeCloseTo(overLeft! / overRight!, 6)
  })
})
