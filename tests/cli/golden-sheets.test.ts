/**
 * [T26] The pictures and pages of two jobs are those that were looked at and found good: a face as SVG, and every text
 *   of its sheets in the order in which it is set.
 */
import { describe, expect, it } from 'vitest'
import type { Item } from '../../src/core/drawing/drawing'
import { drawFace } from '../../src/core/sheets/draw-face'
import { pressSheets } from '../../src/core/sheets/draw-press-sheet'
import { partSheets } from '../../src/core/sheets/part-sheets'
import { writeSvg } from '../../src/documents/svg/write-svg'
import { facesOf, jobOf } from './all-jobs'
import { madeUpSights } from './made-up-sights'

const A4 = { width: 210, height: 297 }

const wordsOf = (items: readonly Item[]): readonly string[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

describe.each(['unequal-overhangs', 'radial-of-twelve-on-a-square-core', 'inches'])('%s', (name) => {
  const job = jobOf(name)
  const [face] = facesOf(job)

  it('[T26] the face as SVG', async () => {
    await expect(writeSvg(drawFace(face!, job.unit))).toMatchFileSnapshot(`../golden/sheets/${name}.svg`)
  })

  it('[T26] the words of its sheets', async () => {
    const sheets = [
      ...partSheets(face!, job.unit, { sights: madeUpSights(face!) }).sheets,
      ...pressSheets(face!, job.pressRoom, job.unit).sheets,
    ]
    const words = sheets.flatMap((sheet) => {
      const pages = sheet.kind === 'page' ? sheet.draw(A4) : [sheet.drawing.items]
      return pages.flatMap((items) => [`# ${sheet.title}`, ...wordsOf(items), ''])
    })
    await expect(words.join('\n')).toMatchFileSnapshot(`../golden/sheets/${name}.txt`)
  })
})
