/**
 * [T49] A seam map of many seams keeps its size: the table goes on to pages of its own, no letter covers another, and
 * a seam whose letter has no room is named under the map.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../derive'
import type { Item } from '../drawing/drawing'
import { itemBox } from '../drawing/item-box'
import { demoJob } from '../figure/demo-job'
import { withoutMemory } from '../fit/answers'
import { boxesOverlap } from '../geometry/box'
import { USUAL_PARQUET } from '../patterns/parquet'
import { drawSeamMap } from './draw-seam-map'

const page = { width: 210, height: 297 }

function mapOf(columns: number, rows: number) {
  const job = demoJob()
  const recipe = { ...USUAL_PARQUET, columns, rows, strips: 4 }
  const part = { ...job.parts[0]!, id: 'tray', width: 600, length: 500, recipe, positions: {} }
  const face = derive({ ...job, parts: [part] }, withoutMemory).parts[0]!
  return { face, pages: drawSeamMap(face, 'mm', page) }
}

const wordsOf = (items: readonly Item[]): readonly string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

describe('a seam map', () => {
  it('[T49] of few seams has its table on it', () => {
    const { pages } = mapOf(2, 1)
    expect(pages).toHaveLength(1)
    expect(wordsOf(pages[0]!)).toContain('Seam')
  })

  it('[T49] of many seams has it on the next pages, and every seam is on the map or named', () => {
    const { face, pages } = mapOf(6, 5)
    const [map, ...tables] = pages
    expect(tables.length).toBeGreaterThan(0)
    const letters = face.seams.map(({ letter }) => letter)
    for (const letter of letters) expect(tables.flatMap(wordsOf)).toContain(letter)
    const on = map!.filter((item) => item.kind === 'arc')
    expect(on.length).toBeGreaterThan(40)
    on.forEach((p, i) => on.slice(i + 1).forEach((q) => expect(boxesOverlap(itemBox(p), itemBox(q))).toBe(false)))
    const shown = wordsOf(map!).filter((words) => letters.includes(words))
    const [told] = wordsOf(map!).filter((words) => words.startsWith('No room here'))
    expect(new Set(shown).size + Number(/of (\d+) seams/.exec(told!)![1])).toBe(letters.length)
    for (const items of pages)
      for (const { min, max } of items.map(itemBox))
        expect(min.x >= 0 && min.y >= 0 && max.x <= page.width && max.y <= page.height).toBe(true)
  })
})
