import { describe, expect, it } from 'vitest'
import { frame, line } from '../../core/drawing/build'
import type { Drawing } from '../../core/drawing/drawing'
import { itemBox } from '../../core/drawing/item-box'
import { point } from '../../core/geometry/point'
import { customPaper, isoPaper, paperOf, type Paper } from '../paper'
import { correctionMeasured } from './correction'
import { tiledPages, tileOnPaper, type TileOptions } from './tiled-pages'

const drawingOf = (width: number, height: number): Drawing => {
  const extent = { min: point<'sheet'>(0, 0), max: point<'sheet'>(width, height) }
  return { title: 'Door', extent, items: [frame('cut', extent), line('seam', [extent.min, extent.max])] }
}

const pagesOf = (drawing: Drawing, paper: Paper, options: TileOptions = {}) => {
  const tiling = tileOnPaper(drawing, paper, options)
  if (!tiling.ok) throw new Error(tiling.reason.reason)
  const { correction } = options
  const pages = tiledPages(drawing, tiling.value, paper, {
    title: 'Door',
    checkBar: true,
    ...(correction ? { correction } : {}),
  })
  return { tiling: tiling.value, pages }
}

describe('tiled pages', () => {
  it('[T2] a correction belongs to the sides of the paper: on a lying page the axes change places', () => {
    const correction = { across: 100 / 97, along: 100 / 99 }
    const lying = pagesOf(drawingOf(250, 150), isoPaper(4), { correction, orientation: 'lying' })
    expect(lying.pages[0]).toMatchObject({ correction: { x: 100 / 99, y: 100 / 97 } })
    expect(lying.pages[0]!.width).toBeCloseTo(297, 9)
    // printable is what is left of the paper divided by the correction
    const { window } = lying.tiling.pages[0]!
    expect(window.max.x - window.min.x).toBeCloseTo(297 * 0.99 - 26, 9)
    expect(window.max.y - window.min.y).toBeCloseTo(210 * 0.97 - 32, 9)
    const upright = pagesOf(drawingOf(150, 250), isoPaper(4), { correction, orientation: 'upright' })
    expect(upright.pages[0]).toMatchObject({ correction: { x: 100 / 97, y: 100 / 99 } })
  })

  it.each([
    { paper: isoPaper(4), width: 800, height: 900 },
    { paper: paperOf('letter')!, width: 500, height: 300 },
    { paper: paperOf('roll-610')!, width: 1500, height: 900 },
    { paper: paperOf('arch-e')!, width: 2000, height: 1000 },
  ])('[T3] on $paper.name nothing is printed within 6 mm of the edge of a page', ({ paper, width, height }) => {
    for (const page of pagesOf(drawingOf(width, height), paper).pages)
      for (const item of page.items) {
        const { min, max } = itemBox(item)
        expect(Math.min(min.x, min.y)).toBeGreaterThanOrEqual(6)
        expect(max.x).toBeLessThanOrEqual(page.width - 6)
        expect(max.y).toBeLessThanOrEqual(page.height - 6)
      }
  })

  it('a drawing that fits on a page needs no plan; a roll is pulled as long as it takes', () => {
    expect(pagesOf(drawingOf(150, 200), isoPaper(4)).pages.map(({ label }) => label)).toEqual(['A1'])
    const roll = pagesOf(drawingOf(500, 2000), paperOf('roll-610')!)
    expect(roll.pages).toHaveLength(1)
    expect(Math.max(roll.pages[0]!.width, roll.pages[0]!.height)).toBeLessThan(2060)
  })

  it('a paper without room for the bars is refused with what it leaves', () => {
    const small = customPaper(120, 170)
    if (!small.ok) throw new Error(small.reason.reason)
    expect(tileOnPaper(drawingOf(400, 400), small.value)).toEqual({
      ok: false,
      reason: { reason: 'paper too small', window: 94, least: 130 },
    })
  })

  it.each([
    { across: 97, along: 40, bar: 'along', measured: 40 },
    { across: Number.NaN, along: 100, bar: 'across', measured: Number.NaN },
    { across: 1000, along: 100, bar: 'across', measured: 1000 },
  ])('[T2] a bar of $measured mm is refused by name', ({ across, along, bar, measured }) => {
    expect(correctionMeasured({ across, along })).toEqual({
      ok: false,
      reason: { reason: 'bar length', bar, measured, least: 80, most: 125 },
    })
  })
})
