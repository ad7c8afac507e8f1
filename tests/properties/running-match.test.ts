/**
 * A running match, held against its definition on rectangles and on lopsided leaves.
 *
 * [F5] Every leaf is as wide as it goes: cut 0.05 mm wider, with its neighbours as they are, it leaves the sound wood.
 * [F6] In a book match neighbours are cut at the same line of the log.
 * [F7] A run whose first leaf has drifted finds its place all the same.
 */
import { describe, expect, it, vi } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import { point } from '../../src/core/geometry/point'
import { rectangle } from '../../src/core/job/usual'
import type { Flitch } from '../../src/core/leaves/flitch'
import { chanceFrom } from '../fixtures/geometry/shapes'
import { anyFace } from './any-face'
import { allEdges, codesOf, faceOf, flitchOf, partOf, plainLeaves, strips } from './job-builders'
import * as witness from './witness'

const CASES = Number(process.env.LEAFTURN_CASES ?? 250)
vi.setConfig({ testTimeout: 3_600_000 })

interface Running {
  readonly seed: number
  readonly face: DerivedPart
  readonly flitch: Flitch
}

/** Faces of the running match for which there is wood, on leaves without defects and with square ends. */
function* runningFaces(): Generator<Running> {
  for (let seed = 0; seed < CASES / 4; seed++) {
    const { part, flitch: any } = anyFace(chanceFrom(60_000 + seed))
    const startAt = seed % 2 ? 'left' : 'right'
    const spine = seed % 3 ? 'left' : 'right'
    const match = seed % 5 < 3 ? 'book' : 'slip'
    const flitch = { ...any, leaves: any.leaves.map((leaf) => ({ ...leaf, defects: [] })) }
    const recipe = strips({
      arrangement: 'running',
      startAt,
      spine,
      match,
      firstLeaf: 10,
      sideUp: seed % 7 < 3 ? 'other' : 'numbered',
    })
    const face = faceOf({ ...part, recipe, width: 900, core: allEdges(2) }, flitch)
    if (face.bare === 0 && face.play.region.length > 0) yield { seed, face, flitch }
  }
}

const lineOnLog = (face: DerivedPart, i: number, edge: 'left' | 'right') => {
  const piece = face.pieces[i]!
  const xs = piece.cell.face.ring.map(({ x }) => x)
  const t = piece.logToPanel
  return ((edge === 'left' ? Math.min(...xs) : Math.max(...xs)) - t.e) / t.a
}

describe('running match', () => {
  it('[F5] [F6] cuts each leaf as wide as it goes, neighbours in a book match at one line of the log', () => {
    const wrong: string[] = []
    let tried = 0
    for (const { seed, face, flitch } of runningFaces()) {
      const { pieces, part } = face
      const { recipe } = part
      if (recipe.pattern !== 'strips') throw new Error('not strips')
      const order = [...pieces].sort((p, q) => p.cell.rank - q.cell.rank)
      if (order[0] !== (recipe.startAt === 'left' ? pieces[0] : pieces.at(-1)))
        wrong.push(`${seed}: starts at the wrong edge`)
      pieces.slice(1).forEach((_, i) => {
        const [l, r] = [lineOnLog(face, i, 'right'), lineOnLog(face, i + 1, 'left')]
        if (recipe.match === 'book' && Math.abs(l - r) > 1e-6) wrong.push(`${seed}: seam ${i} cut at ${l} and ${r}`)
      })
      // all but the last: the piece, or the next one when the seam is shared, has no wood further out
      order.slice(0, -1).forEach((piece, rank) => {
        tried++
        const later = recipe.startAt === 'left' ? 'right' : 'left'
        const i = pieces.indexOf(piece)
        const line = lineOnLog(face, i, later)
        const isUpper = (later === 'right') === piece.logToPanel.a > 0
        const sound = [piece, ...(recipe.match === 'book' ? [order[rank + 1]!] : [])].every((one) => {
          const rough = widened(face, one, line, isUpper, 0.05)
          const swept = witness.sweptByBox(rough, flitch.sideMargin, flitch.endMargin)
          return witness.keepsInside(one.leaf!.outline ?? flitch.outline, swept) > 0.004
        })
        if (sound) wrong.push(`${seed}: leaf ${piece.leaf!.number} could be wider`)
      })
    }
    expect(wrong).toEqual([])
    expect(tried).toBeGreaterThan(CASES / 6)
  })

  it('[F7] begins with a leaf that has drifted as well as with the first', () => {
    const leaves = plainLeaves(12).map((leaf, i) => ({ ...leaf, drift: point<'leaf'>(0, i < 3 ? 0 : 40) }))
    const flitch = flitchOf({ leaves, outline: rectangle(215, 750) })
    const at = (firstLeaf: number) => faceOf(partOf({ recipe: strips({ arrangement: 'running', firstLeaf }) }), flitch)
    expect(codesOf(at(1))).not.toContain('outside-play')
    for (const code of ['bare-width', 'play-empty', 'outside-play'] as const) expect(codesOf(at(4))).not.toContain(code)
    expect(at(4).count).toBe(at(1).count)
  })

  it('[F8] says how much of the sheet has no wood when it may not take another leaf', () => {
    // 2 x (215 - 6) mm of wood for 420 mm of sheet
    const face = faceOf(partOf({ width: 400, recipe: strips({ arrangement: 'running', count: 2 }) }))
    expect(face.bare).toBeCloseTo(2, 6)
    expect(codesOf(face)).toContain('bare-width')
    const enough = faceOf(partOf({ width: 398, recipe: strips({ arrangement: 'running', count: 2 }) }))
    expect(codesOf(enough)).not.toContain('bare-width')
    expect(enough.count).toBe(2)
  })
})

/** The rough piece of a cell on its leaf, its edge at a line of the log moved out by so much. */
function widened(face: DerivedPart, piece: DerivedPart['pieces'][number], line: number, isUpper: boolean, by: number) {
  const { drift } = piece.leaf!
  const xs = piece.windowOnLeaf.map(({ x }) => x)
  const ys = piece.windowOnLeaf.map(({ y }) => y)
  const j = face.part.allowance
  const [low, high] = [Math.min(...xs) - j, Math.max(...xs) + j]
  const on = line + drift.x
  const [from, to] = isUpper ? [low, on + j + by] : [on - j - by, high]
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)]
  return [
    { x: from, y: top },
    { x: to, y: top },
    { x: to, y: bottom },
    { x: from, y: bottom },
  ]
}
