/**
 * What has to be mended. [E1] Tape lies on the face that comes to be on its side. [E2] A slanted break is taped without
 * tension. [E3] What falls in the waste needs no repair. [E4] The list is in working order. [E5] What may stay is not patched.
 */
import { describe, expect, it } from 'vitest'
import { changeShop } from '../../src/core/commands/job-commands'
import { derive } from '../../src/core/derive'
import { withoutMemory } from '../../src/core/fit/answers'
import { point } from '../../src/core/geometry/point'
import { determinant } from '../../src/core/geometry/transform'
import { present } from '../../src/core/invariant'
import type { Job, Part } from '../../src/core/job/job'
import type { Defect } from '../../src/core/leaves/leaf'
import { mendingWords, repairHead } from '../../src/core/repairs/repair-wording'
import { USUAL_SHOP } from '../../src/core/shop'
import type { RepairPlan } from '../../src/core/repairs/repairs'
import { chanceFrom, whole } from '../fixtures/geometry/shapes'
import { anyFlitch, anyRecipe } from './any-face'
import { flitchOf, jobOf, partOf, strips } from './job-builders'

const CASES = Number(process.env['LEAFTURN_CASES'] ?? 16)
const note = ''
const split = (from: number, to: number, more: Partial<Defect> = {}): Defect =>
  ({
    id: `s${from}`,
    kind: 'split',
    note,
    shape: 'line',
    from: point(150, from),
    to: point(150, to),
    ...more,
  }) as Defect
const spot = (id: string, kind: Defect['kind'], y: number): Defect => ({
  id,
  kind,
  note,
  shape: 'spot',
  centre: point(100, y),
  radius: 8,
})

const door = (over: Partial<Part> = {}): Part =>
  partOf({ width: 380, length: 500, recipe: strips({ count: 2 }), positions: { window: point(112, 2100) }, ...over })
const jobWith = (defects: readonly Defect[], part = door()): Job => {
  const plain = flitchOf()
  const leaves = plain.leaves.map((leaf) => (leaf.number === 1 ? { ...leaf, defects } : leaf))
  return jobOf([part], { ...plain, leaves })
}
const planOf = (job: Job): RepairPlan => present(derive(job, withoutMemory).parts[0], 'a part').repairs

describe('repairs', () => {
  it('[E1] tape the face that is seen, or is glued, however the leaf is turned', () => {
    let [numbered, other] = [0, 0]
    for (let i = 0; i < CASES; i++) {
      const chance = chanceFrom(300 + i)
      const plain = anyFlitch(chance)
      const long = (id: string): Defect => ({ ...split(0, 5000), id })
      const flitch = { ...plain, leaves: plain.leaves.map((leaf) => ({ ...leaf, defects: [long(`d${leaf.number}`)] })) }
      const part = partOf({ recipe: anyRecipe(chance), width: whole(chance, 200, 700), length: 400 })
      for (const splitTape of ['show side', 'glue side'] as const) {
        const job = {
          ...jobOf([part], flitch),
          shop: { ...USUAL_SHOP, tolerates: { ...USUAL_SHOP.tolerates, show: ['split'] as const }, splitTape },
        }
        const face = derive(job, withoutMemory).parts[0]!
        for (const { cell, mending } of face.repairs.repairs) {
          if (mending.mend !== 'tape') throw new Error('only splits were made')
          // the leaf is seen from its numbered side: not mirrored on the panel, that side is the one that shows
          const isNumberUp = determinant(face.pieces.find((piece) => piece.cell.id === cell)!.leafToPanel) > 0
          const shows = isNumberUp ? 'numbered face' : 'other face'
          const glued = isNumberUp ? 'other face' : 'numbered face'
          expect(mending.face).toBe(splitTape === 'show side' ? shows : glued)
          if (mending.face === 'numbered face') numbered++
          else other++
        }
      }
    }
    expect(Math.min(numbered, other)).toBeGreaterThan(20)
  })

  it('[E2] tell a slanted break from a square one, and where a split opens', () => {
    const plan = planOf(jobWith([split(2400, 2200), split(2000, 2050, { through: 'slanted' })]))
    expect(plan.repairs.map((repair) => repairHead(repair, 'mm'))).toEqual([
      'Split, open at the far end, 200 mm long, square through the leaf',
      'Split, inside the leaf, 50 mm long, slanted through the leaf',
    ])
    const [square, slanted] = plan.repairs.map(({ mending }) => mendingWords(mending, 'mm'))
    expect(square).toMatch(/^Pull it together/)
    expect(slanted).toMatch(/without tension: pulled tight, a slanted break rides over itself/)
    const inFront = planOf(jobWith([split(0, 90)], door({ positions: { window: point(112, 300) } })))
    expect(inFront.repairs[0]?.mending).toMatchObject({ opens: 'numbered end', length: 90 })
  })

  it('[E3] go when the window is moved away, and come back with it', () => {
    const away = planOf(jobWith([split(2400, 2300)], door({ positions: { window: point(112, 600) } })))
    expect(away).toMatchObject({ repairs: [], spared: [{ leaf: 1, defect: { kind: 'split' } }] })
    expect(planOf(jobWith([split(2400, 2300)]))).toMatchObject({ repairs: [{ leaf: 1, cell: 'R1' }], spared: [] })
  })

  it('[E6] of a made-up piece stand on every leaf that its wood comes from', () => {
    const box = (x: number, width: number) => ({ min: point<'leaf'>(x, 200), max: point<'leaf'>(x + width, 1200) })
    const wide = partOf({
      width: 240,
      length: 500,
      recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 }),
      madeUp: {
        run: {
          ...{ how: 'wider', leaf: 1, spacing: null, side: 'right', kept: box(0, 215), from: 7 },
          ...{ offcut: box(120, 60), cut: null, strip: box(120, 60), loss: 1.5 },
        },
      },
    })
    const leaves = flitchOf().leaves.map((leaf) => {
      const defects =
        leaf.number === 7 ? [split(600, 660), split(1900, 1960)] : leaf.number === 1 ? [split(650, 700)] : []
      return { ...leaf, defects }
    })
    // splits may stay here, or nothing would be found to lie in the piece
    const shop = { ...USUAL_SHOP, tolerates: { ...USUAL_SHOP.tolerates, show: ['split' as const] } }
    const job = { ...jobOf([wide], flitchOf({ leaves })), shop }
    const { repairs, spared } = present(derive(job, withoutMemory).parts[0], 'a part').repairs
    expect(repairs.map(({ leaf, defect }) => [leaf, defect.id])).toEqual([
      [1, 's650'],
      [7, 's600'],
    ])
    expect(spared).toEqual([])
  })

  it('[E4] come in working order: tape, then what is torn, then patches', () => {
    const plan = planOf(
      jobWith([spot('k', 'knot', 2000), spot('t', 'tear', 2100), spot('c', 'stain', 2150), split(2200, 2300)]),
    )
    expect(plan.repairs.map(({ mending }) => mending.mend)).toEqual(['tape', 'lay down', 'patch'])
    // 8 mm of radius and 3 mm of sound wood kept round a knot
    expect(plan.repairs[2]?.mending).toMatchObject({ width: expect.closeTo(22, 1), length: expect.closeTo(22, 1) })
  })

  it('[E5] go by what the shop lets stay, which can be changed', () => {
    const job = jobWith([spot('k', 'knot', 2000), spot('h', 'hole', 2200)], door({ showClass: 'hidden' }))
    expect(planOf(job).repairs.map(({ mending }) => mending.mend)).toEqual(['patch'])
    const next = changeShop(job, { tolerates: { hidden: ['hole'] } })
    const changed = next.ok ? planOf(next.value).repairs : []
    expect(changed.map(({ mending }) => mending.mend)).toEqual(['back', 'patch'])
    expect(mendingWords(changed[0]!.mending, 'mm')).toMatch(/may stay in this face.*no glue comes through/)
  })
})
