/**
 * What is left over. [Z6] Pieces and offcuts make up the leaf without gap or overlap. [Z7] The strip of an offcut lies in
 * its sound wood.
 */
import { describe, expect, it } from 'vitest'
import { derive } from '../../src/core/derive'
import { withoutMemory } from '../../src/core/fit/answers'
import { boxRing } from '../../src/core/geometry/box'
import { intersect, regionLess, unite } from '../../src/core/geometry/clip'
import { point } from '../../src/core/geometry/point'
import { regionArea, type Region } from '../../src/core/geometry/polygon'
import { regionsNear } from '../../src/core/geometry/regions-near'
import { leafOutline } from '../../src/core/leaves/bundle'
import { usableArea } from '../../src/core/leaves/usable'
import { claimsOf } from '../../src/core/ledger/claims'
import { jobRests, type LeafRest, type Offcut } from '../../src/core/ledger/offcuts'
import { chanceFrom, whole } from '../fixtures/geometry/shapes'
import { anyFlitch, anyRecipe, oneOf } from './any-face'
import { flitchOf, jobOf, partOf, strips } from './job-builders'

const CASES = Number(process.env['LEAFTURN_CASES'] ?? 6)
const area = (region: Region<'leaf'>) => regionArea(region)
const all = (rests: readonly LeafRest[]): readonly Offcut[] => rests.flatMap(({ offcuts }) => offcuts)
const size = ({ strip }: Offcut) => strip && [Math.round(strip.width), Math.round(strip.length)]

function leavesOfAnyJob(seed: number) {
  const chance = chanceFrom(seed)
  const flitch = anyFlitch(chance)
  const parts = Array.from({ length: whole(chance, 1, 3) }, (_, i) =>
    partOf({
      id: `part-${i}`,
      width: whole(chance, 150, 500),
      length: whole(chance, 150, 500),
      showClass: oneOf(chance, 'show', 'hidden'),
      recipe: anyRecipe(chance),
      positions: { window: point(whole(chance, 80, 160), whole(chance, 200, 1600)) },
    }),
  )
  const job = jobOf(parts, flitch)
  const faces = derive(job, withoutMemory).parts
  const claims = faces.flatMap(claimsOf)
  const offcuts = all(jobRests(faces, job.shop, withoutMemory))
  return flitch.leaves.flatMap((leaf) => {
    const taken = claims.filter((claim) => claim.leaf === leaf.number).map(({ region }) => region)
    const left = offcuts.filter((offcut) => offcut.leaf === leaf.number)
    const sound = () => usableArea(flitch, leaf, job.shop, 'show')
    return taken.length > 0 ? [{ outline: [[leafOutline(flitch, leaf)]] as Region<'leaf'>, taken, left, sound }] : []
  })
}

describe('what is left over', () => {
  it('[Z6] makes up the leaf with what is taken, and overlaps nothing', () => {
    let seen = 0
    for (let i = 0; i < CASES; i++)
      for (const { outline, taken, left } of leavesOfAnyJob(4000 + i)) {
        const rest = left.map((offcut): Region<'leaf'> => [offcut.outline])
        const sum = rest.reduce((all, one) => all + area(one), 0)
        // what the grid leaves along the borders, and scraps of less than a square millimetre
        expect(Math.abs(sum - area(unite<'leaf'>(...rest)))).toBeLessThan(0.5)
        expect(area(intersect<'leaf'>(unite<'leaf'>(...rest), unite<'leaf'>(...taken)))).toBeLessThan(5)
        expect(area(regionLess<'leaf'>(outline, ...rest, ...taken))).toBeLessThan(15)
        seen += left.length
      }
    expect(seen).toBeGreaterThan(20)
  })

  it('[Z7] has its strip in its sound wood, off the pieces by what the saw takes', () => {
    let strips = 0
    for (let i = 0; i < CASES / 2; i++)
      for (const { left, sound, taken } of leavesOfAnyJob(4000 + i)) {
        const usable = sound()
        const pieces = unite<'leaf'>(...taken)
        for (const { strip, outline } of left) {
          if (!strip) continue
          const wood = intersect<'leaf'>([outline], usable)
          expect(area(regionLess<'leaf'>([[boxRing(strip.box)]], wood))).toBeLessThan(3)
          expect(regionsNear<'leaf'>([[boxRing(strip.box)]], pieces, 1.99)).toBe(false)
          strips++
        }
      }
    expect(strips).toBeGreaterThan(10)
  })

  it('is what crosscuts at the window’s ends leave, labelled from the numbered end', () => {
    const door = partOf({
      width: 80,
      length: 500,
      recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 }),
      positions: { window: point(60, 1000) },
    })
    const job = jobOf([door], flitchOf())
    const left = all(jobRests(derive(job, withoutMemory).parts, job.shop, withoutMemory))
    // 106 wide from 7 to 113, 520 long from 740 to 1260, in a leaf of 215 by 2400; the saw takes 2 mm of what is left
    expect(left.map((one) => [one.label, one.use, size(one)])).toEqual([
      ['1a', 'edges and scarfs', [215, 738]],
      ['', 'waste', [5, 520]],
      ['1b', 'edges and scarfs', [100, 520]],
      ['1c', 'edges and scarfs', [215, 1138]],
    ])
  })
})
