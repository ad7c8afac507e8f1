/**
 * Pieces cut from jointed sheets: wedges of booked pairs. That their cells tile, that both sides of each seam are found,
 * that mirrors are mirrors in the log and turns agree is tried with all patterns in `pattern-laws`.
 *
 * [N10] What turns a piece turns its whole sheet. [N11] Strips keep what the second stage takes.
 * [N12] Sheets are whole before their pieces are joined. [N13] A booked pair shows one knife cut, and mirrors at its edges.
 * [N14] Slipped sheets have equal strips and common joints, and mirror as single leaves do.
 */
import { allFrom } from '../../src/core/job/part-flitches'
import { describe, expect, it } from 'vitest'
import { findingSentence } from '../../src/core/checks/wording'
import { applyRemedy } from '../../src/core/commands/apply-remedy'
import { changeRecipe } from '../../src/core/commands/face-commands'
import { derive } from '../../src/core/derive'
import { ringOrders } from '../../src/core/fit/ring-orders'
import { waysToFitInSteps } from '../../src/core/fit/ways-to-fit'
import { withoutMemory } from '../../src/core/fit/answers'
import { boxAround } from '../../src/core/geometry/box'
import type { Part } from '../../src/core/job/job'
import { rectangle, usualPair } from '../../src/core/job/usual'
import type { Flitch } from '../../src/core/leaves/flitch'
import { leavesEach } from '../../src/core/patterns/jointed-sheet'
import { jointsInOrder, orderOfJointing } from '../../src/core/seams/assembly'
import { recipeSentence } from '../../src/core/sheets/recipe-sentence'
import { sheetTemplates } from '../../src/core/templates/sheet-template'
import { USUAL_SHOP } from '../../src/core/shop'
import { chanceFrom, spread } from '../fixtures/geometry/shapes'
import { boxed, diamond, faceOf, flitchOf, jobOf, partOf, plainLeaves, radial } from './job-builders'
import * as witness from './witness'

const THICK = 0.6
const flitch = flitchOf({ leaves: plainLeaves(48), outline: rectangle(260, 900) })
const pairs = (over: Parameters<typeof radial>[0] = {}) =>
  partOf({ width: 400, length: 360, recipe: radial({ count: 8, eachFrom: 'booked pair', ...over }) })

const ways = (['book', 'slip'] as const).flatMap((match) =>
  (['left', 'right'] as const).flatMap((spine) =>
    (['inside', 'outside'] as const).map((numberedEnds) => ({ match, spine, numberedEnds })),
  ),
)

describe.each([
  { bundle: 'numbered faces look on', numberedFace: 'lower' as const },
  { bundle: 'numbered faces look back', numberedFace: 'upper' as const },
])('$bundle', ({ numberedFace }) => {
  it.each(ways)('[N13] $match, opened $spine, numbered ends $numberedEnds', (way) => {
    const face = faceOf(pairs(way), { ...flitch, numberedFace, leafOneAt: 'top' })
    const within = face.seams.filter(({ kind }) => kind === 'sheet')
    expect(within).toHaveLength(8)
    expect(new Set(face.seams.map(({ meets }) => meets))).toEqual(new Set(['mirrors']))
    const turned = new Set(face.pieces.filter(({ cell }) => cell.sheet!.turn.turnedOver).map(({ cell }) => cell.id))
    for (const { depthOffset, stretches } of within)
      expect(depthOffset).toBeCloseTo(turned.has(stretches[0]!.left) ? 2 * THICK : 0, 9)
    // but where the run closes, neighbours are near: pairs that are turned lie beside their nearest leaf
    const between = face.seams.filter(({ kind }) => kind !== 'sheet').map(({ depthOffset }) => depthOffset!)
    const farthest = [...between].sort((p, q) => q - p)[1]!
    expect(farthest).toBeCloseTo(way.match === 'book' ? THICK : 2 * THICK, 9)
    // the edge that is opened lies in the joint: in its own leaf every strip lies on the other side of it
    for (const { cell } of face.pieces) {
      const middle = cell.window.ring.reduce((sum, { x }) => sum + x, 0)
      expect(middle < 0).toBe(way.spine === 'right')
    }
  })
})

it('[N10] turned over, a sheet lies with all its leaves the other side up and in the other order', () => {
  const face = faceOf(pairs({ match: 'book' }), flitch)
  for (const { cell, leafToPanel } of face.pieces) {
    const { sheet } = cell
    const isLeft = cell.id.endsWith('a')
    // opened on its right edge, as it is made: the left leaf number up, the right one turned over
    expect(cell.turn.turnedOver).toBe(sheet!.turn.turnedOver !== !isLeft)
    expect(leafToPanel.a * leafToPanel.d - leafToPanel.b * leafToPanel.c < 0).toBe(cell.turn.turnedOver)
  }
})

it('[N11] a piece cut from its sheet has what its own seams take, and lies within its strips', () => {
  for (let seed = 0; seed < 12; seed++) {
    const chance = chanceFrom(400 + seed)
    const part = {
      ...pairs({ firstSeam: spread(chance, 0, 360), cutFull: seed % 2 === 0 ? 0 : 0.08 }),
      allowance: spread(chance, 0, 6),
      laterAllowance: spread(chance, 0, 12),
    }
    const face = faceOf(part, flitch)
    const templates = sheetTemplates(face)
    expect(templates.flatMap(({ sheets }) => sheets)).toHaveLength(8)
    for (const { rough, sheets, joints } of templates)
      for (const { cell, strips } of sheets) {
        expect(strips.map((strip) => strip.cell.id)).toEqual([`${cell.id}a`, `${cell.id}b`])
        expect(joints).toHaveLength(1)
        expect(joints[0]!.a.x).toBeCloseTo(0, 9)
        // each corner of the piece lies in the rough strip on its side of the joint, carried to the sheet by its turn
        for (const { x, y } of rough) {
          const isIn = strips.some((strip) => {
            const way = strip.cell.turn.turnedOver === cell.turn.turnedOver ? 1 : -1
            const p = { x: way * x, y }
            return (
              witness.isIn(strip.rough, p) || witness.sides(strip.rough).some((s) => witness.awayFromSide(s, p) < 0.01)
            )
          })
          expect(isIn, `seed ${seed}, ${cell.id} at ${x}, ${y}`).toBe(true)
        }
      }
  }
})

it('[N12] pairs are joined before wedges are, and each wedge once', () => {
  const face = faceOf(pairs({ count: 7, match: 'slip' }), flitch)
  const cells = face.pieces.map(({ cell }) => cell)
  const joints = jointsInOrder(orderOfJointing(cells, face.seams))
  expect(joints.map(({ joint }) => joint === 'sheet')).toEqual(joints.map((_, i) => i < 7))
  expect(joints.flatMap(({ seams }) => seams.map(({ letter }) => letter)).sort()).toEqual(
    face.seams.map(({ letter }) => letter).sort(),
  )
})

it('leaves too narrow for a wedge are offered to be booked; the recipe says so, and nothing by hand stays', () => {
  const narrow = flitchOf({ leaves: plainLeaves(20), outline: rectangle(150, 900) })
  const part = { ...partOf({ width: 400, length: 360, recipe: radial({ count: 8 }) }), chosen: { W2: 5 } }
  expect(waysBeforeScarfs(part, narrow)).toContainEqual({ remedy: 'booked pairs' })
  const changed = changeRecipe(jobOf([part], narrow), part.id, { eachFrom: 'booked pair' })
  const [booked] = changed.ok ? changed.value.parts : []
  expect(booked!.chosen).toEqual({})
  const face = faceOf(booked!, narrow)
  expect(face.play.region.length).toBeGreaterThan(0)
  expect(face.pieces.map(({ leaf }) => leaf!.number).sort((p, q) => p - q)).toEqual(
    plainLeaves(16).map((l) => l.number),
  )
  expect(recipeSentence(booked!, 8, 'mm')).toContain('of 8 wedges from leaf 1, each cut from a booked pair,')
  // in a circle the last turned pair, 15 and 16, lies with 16 beside the 2 of the first
  const apart = ringOrders(
    booked!,
    radial({ count: 8, eachFrom: 'booked pair' }),
    { flitch: narrow, shop: USUAL_SHOP },
    8,
  )!
  expect(apart.map(({ leaves }) => leaves)).toEqual([14, 4])
})

it('a second door booked to the first begins behind all leaves of its pairs', () => {
  const [first, second] = ['left', 'right'].map((id) => ({ ...pairs({ match: 'book' }), id, name: id }))
  const job = { ...jobOf([first!, second!], flitch), pairs: [usualPair('left', 'right')] }
  const numbers = derive(job, withoutMemory).parts.map(({ pieces }) =>
    pieces.map(({ leaf }) => leaf!.number).sort((p, q) => p - q),
  )
  expect(numbers.map((all) => [all[0], all.at(-1)])).toEqual([
    [1, 16],
    [17, 32],
  ])
})

describe('[N14] slipped sheets', () => {
  const slipped: readonly Pick<Part, 'recipe' | 'width' | 'outline'>[] = [
    { recipe: diamond({ sheetOf: 3 }), width: 400, outline: { shape: 'rectangle' } },
    {
      recipe: diamond({ sheetOf: 2, runs: 'to the centre', sideUp: 'other' }),
      width: 300,
      outline: { shape: 'circle' },
    },
    { recipe: diamond({ sheetOf: 6 }), width: 300, outline: { shape: 'circle' } },
    { recipe: boxed({ sheetOf: 4, grain: 'across the edges' }), width: 300, outline: { shape: 'rectangle' } },
    { recipe: boxed({ sheetOf: 2 }), width: 420, outline: { shape: 'rectangle' } },
  ]

  it.each(slipped)('$recipe.pattern of $recipe.sheetOf, $width wide', ({ recipe, width, outline }) => {
    const leaves = leavesEach(recipe)
    const part = { ...partOf({ width, length: 300, recipe }), outline, overhang: usualOverhang }
    const face = faceOf(part, flitch)
    const alone = faceOf({ ...part, recipe: { ...recipe, sheetOf: 1 } as Part['recipe'] }, flitch)
    // all leaves of the run, sheet by sheet, none twice and none left out
    const numbers = face.pieces.map(({ leaf }) => leaf!.number)
    expect(new Set(numbers)).toEqual(new Set(plainLeaves(4 * leaves).map((leaf) => leaf.number)))
    const widest = face.pieces.map(({ cell }) => boxAround(cell.window.ring))
    const [low, high] = [Math.min(...widest.map(({ min }) => min.x)), Math.max(...widest.map(({ max }) => max.x))]
    const across = alone.pieces.map(({ cell }) => boxAround(cell.window.ring))
    const whole = Math.max(...across.map(({ max }) => max.x)) - Math.min(...across.map(({ min }) => min.x))
    expect(high - low).toBeCloseTo(whole / leaves, 1)
    for (const { cell } of face.pieces) expect(cell.turn.turnedOver).toBe(cell.sheet!.turn.turnedOver)
    for (const { sides, kind } of face.seams)
      for (const { left, right, meets } of sides) {
        if (kind === 'sheet') expect(meets).toBe('repeats')
        // a mirror of the pieces is one of the strips, and joins strips of the same place
        else if (meetOf(alone, left, right) === 'mirrors') {
          expect([left, right, meets]).toEqual([left, right, 'mirrors'])
          expect(left.at(-1)).toBe(right.at(-1))
        }
      }
    const joints = jointsInOrder(
      orderOfJointing(
        face.pieces.map(({ cell }) => cell),
        face.seams,
      ),
    )
    expect(joints.map(({ joint }) => joint === 'sheet').lastIndexOf(true)).toBe(
      joints.filter(({ joint }) => joint === 'sheet').length - 1,
    )
  })

  const meetOf = ({ seams }: ReturnType<typeof faceOf>, left: string, right: string) =>
    seams
      .flatMap(({ sides }) => sides)
      .find((side) => side.left === left.slice(0, -1) && side.right === right.slice(0, -1))?.meets

  it('[K1] a strip of which little shows is told: at the ends of a reverse box that is not square', () => {
    const over = { top: 8, right: 8, bottom: 8, left: 8 }
    const slivers = (length: number) => {
      const recipe = boxed({ sheetOf: 4, grain: 'across the edges' })
      const face = faceOf({ ...partOf({ width: 720, length, recipe }), overhang: over }, flitch)
      return face.findings.filter(({ code }) => code === 'sliver')
    }
    // four strips of (720 + 16) / 4 = 184 on the long sides; mitred over, the joint that lies in the middle there lies
    // (720 - 380) / 2 = 170 from the middle of a short side, 20 from its end
    const [found, ...others] = slivers(380)
    expect([found!.measured, found!.about['more'], others]).toEqual([expect.closeTo(20, 6), 1, []])
    expect(findingSentence(found!, 'mm')).toMatch(
      /^Strip [LR][b-d], from leaf \d+, shows no wider than 20 mm at its corner, and 1 more strip like it; under 30 mm/,
    )
    expect(slivers(400)).toEqual([])
  })

  it('are offered, of the fewest leaves, where a leaf is too narrow; taken, they are said', () => {
    const narrow = flitchOf({ leaves: plainLeaves(20), outline: rectangle(150, 900) })
    const part = { ...partOf({ width: 400, length: 300, recipe: diamond() }), chosen: { TR: 5 } }
    expect(waysBeforeScarfs(part, narrow)).toContainEqual({ remedy: 'slipped sheets', leaves: 2 })
    const next = applyRemedy(jobOf([part], narrow), { ...faceOf(part, narrow), follows: null }, SLIPPED)
    const [mended] = next.ok ? next.value.parts : []
    expect(mended!.chosen).toEqual({})
    const face = faceOf(mended!, narrow)
    expect(face.play.region.length).toBeGreaterThan(0)
    expect(recipeSentence(mended!, 4, 'mm')).toContain(
      'of 4 pieces from leaf 1, each cut from a slipped sheet of 2 leaves,',
    )
    const said = face.findings.filter(({ code }) => code === 'figure-meets').map((f) => findingSentence(f, 'mm'))
    expect(said[0]).toContain('leaves that mirror are at least 2 apart in the run.')
  })
})

const SLIPPED = { remedy: 'slipped sheets', leaves: 2 } as const
const usualOverhang = { top: 8, right: 5, bottom: 11, left: 8 }

/** The search for a scarf behind them takes long. */
function waysBeforeScarfs(part: Part, of: Flitch) {
  for (const { share, answer } of waysToFitInSteps(part, allFrom(of), USUAL_SHOP, withoutMemory))
    if (share >= 0.6) return answer.ways
  return []
}
