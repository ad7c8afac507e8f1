import { describe, expect, it } from 'vitest'
import { markCut } from '../../src/core/commands/cut-commands'
import { derive, type DerivedPart } from '../../src/core/derive'
import { BORDER } from '../../src/core/faces/window-group'
import { withoutMemory } from '../../src/core/fit/answers'
import { boxAround, boxCentre } from '../../src/core/geometry/box'
import { intersect } from '../../src/core/geometry/clip'
import { polygonArea, regionArea } from '../../src/core/geometry/polygon'
import { fittedPart } from '../../src/core/job/fitted-part'
import type { Part } from '../../src/core/job/job'
import { rectangle } from '../../src/core/job/usual'
import { gateWords } from '../../src/core/ledger/gate-wording'
import { planLedger } from '../../src/core/ledger/ledger'
import { USUAL_BORDER, type Border } from '../../src/core/patterns/border'
import { chanceFrom, spread, type Chance } from '../fixtures/geometry/shapes'
import { oneOf } from './any-face'
import { allEdges, flitchOf, fourWay, jobOf, partOf, radial, strips } from './job-builders'

const faceOf = (part: Part): DerivedPart => derive(jobOf([part], flitchOf()), withoutMemory).parts[0]!

const bordered = (over: Partial<Part>, border: Partial<Border> = {}): Part =>
  partOf({ width: 600, length: 800, ...over, border: { ...USUAL_BORDER, ...border } })

function anyBordered(chance: Chance): Part {
  const shape = oneOf(chance, 'rectangle', 'rectangle', 'polygon', 'circle' as const)
  const width = Math.round(spread(chance, 300, 900))
  return bordered(
    {
      width,
      length: shape === 'rectangle' ? Math.round(spread(chance, 300, 1200)) : width,
      outline: shape === 'polygon' ? { shape, sides: oneOf(chance, 6, 8) } : { shape },
      core: allEdges(oneOf(chance, 0, 12)),
      recipe: oneOf<Part['recipe']>(
        chance,
        strips({ arrangement: 'balance', count: 3 }),
        fourWay({ count: 4 }),
        radial({ count: 8 }),
      ),
    },
    {
      width: Math.round(spread(chance, 20, 80)),
      grain: oneOf(chance, 'across', 'along'),
      corners: oneOf(chance, 'mitred', 'sides through', 'ends through'),
    },
  )
}

describe('a border round a field', () => {
  it('[Y1] field and border fill the taped sheet and lie nowhere over each other', () => {
    for (let i = 0; i < 12; i++) {
      const part = anyBordered(chanceFrom(700 + i))
      const { pieces, sizes } = faceOf(part)
      const sheet = polygonArea([sizes.outlines.sheet.ring])
      const sum = pieces.reduce((total, { cell }) => total + polygonArea([cell.face.ring]), 0)
      expect(Math.abs(sum - sheet) / sheet, `case ${i}`).toBeLessThan(1e-5)
      const field = pieces.filter(({ cell }) => cell.group !== BORDER).map(({ cell }) => [cell.face.ring] as const)
      const band = pieces.filter(({ cell }) => cell.group === BORDER).map(({ cell }) => [cell.face.ring] as const)
      expect(band.length, `case ${i}`).toBeGreaterThan(0)
      expect(regionArea(intersect<'panel'>(field, band)) / sheet, `case ${i}`).toBeLessThan(1e-5)
    }
  })

  it.each([
    { length: 300, width: 215 },
    { length: 420, width: 215 },
    { length: 700, width: 215 },
  ])('[Y4] fewest leaves of $length mm that will do: on one fewer the border has no place', (leaf) => {
    const flitch = flitchOf({ outline: rectangle(leaf.width, leaf.length) })
    const laid = (count: Border['count']) => {
      const part = bordered(
        { width: 320, length: 240, recipe: strips({ count: 2 }) },
        { width: 40, pieceLength: 90, count },
      )
      const { border } = derive(jobOf([part], flitch), withoutMemory).parts[0]!
      return { leaves: border!.leaves, fits: border!.play.region.length > 0 }
    }
    const fewest = laid('fewest')
    expect(fewest.fits).toBe(true)
    expect(fewest.leaves).toBeGreaterThan(1)
    expect(laid(fewest.leaves - 1)).toEqual({ leaves: fewest.leaves - 1, fits: false })
  })

  it('[Y5] pieces that lean to either side have their middles in one line on the leaf', () => {
    const part = fittedPart(bordered({ width: 800, outline: { shape: 'polygon', sides: 6 } }), 'width')
    const flitch = flitchOf({ outline: rectangle(300, 2400) })
    const { pieces, border } = derive(jobOf([part], flitch), withoutMemory).parts[0]!
    const middles = pieces
      .filter(({ cell }) => cell.group === BORDER)
      .map(({ roughOnLeaf }) => boxCentre(boxAround(roughOnLeaf)).x)
    for (const x of middles) expect(x).toBeCloseTo(middles[0]!, 6)
    // each is narrower than its leaf, though they could not all lie with the middles of their edges in one line
    expect(border!.play.region).not.toEqual([])
  })

  it('[Y2] what is cut of a border keeps the border’s place, and the field’s stays free', () => {
    const part = bordered({ recipe: strips({ count: 4 }) }, { pieceLength: 100 })
    const job = jobOf([part], flitchOf())
    const [ledger] = planLedger(derive(job, withoutMemory).parts)
    const cuts = ledger!.packets.flatMap((packet) => packet.cuts).filter(({ group }) => group === BORDER)
    expect(cuts.length).toBeGreaterThan(3)
    expect([...new Set(cuts.map(({ gate }) => gateWords(gate)))]).toEqual(['safe'])
    const before = faceOf(part)
    const next = markCut(job, cuts)
    if (!next.ok) return expect.unreachable(JSON.stringify(next.reason))
    const [marked] = next.value.parts
    expect(Object.keys(marked!.positions)).toEqual([BORDER])
    const after = derive(next.value, withoutMemory).parts[0]!
    expect(after.border?.position).toEqual(before.border?.position)
    expect(after.position).toEqual(before.position)
  })
})
