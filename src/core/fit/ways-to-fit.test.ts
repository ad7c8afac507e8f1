import { allFrom } from '../job/part-flitches'
import { describe, expect, it } from 'vitest'
import { applyRemedy } from '../commands/apply-remedy'
import { remedyLabel } from '../checks/wording'
import { derive } from '../derive'
import type { Remedy } from '../finding'
import { point } from '../geometry/point'
import type { Job, Part } from '../job/job'
import { blankLeaf, emptyJob, rectangle, usualFlitch, usualPart } from '../job/usual'
import type { Flitch } from '../leaves/flitch'
import { reportSeams } from '../seams/seam-report'
import { USUAL_SHOP } from '../shop'
import { withoutMemory } from './answers'
import { hasPlace } from './fits'
import { layFace, wouldHavePlace } from './lay-face'
import { waysToFit } from './ways-to-fit'

const flitchOf = (count: number, sizeOf: (number: number) => readonly [number, number]): Flitch =>
  usualFlitch(
    'f',
    'Walnut',
    rectangle(220, 900),
    Array.from({ length: count }, (_, i) => ({ ...blankLeaf(i + 1), outline: rectangle(...sizeOf(i + 1)) })),
  )
const flitch = flitchOf(8, (number) => (number < 3 ? [220, 752] : [220, 900]))
const part = usualPart('p', 'Door', 400, 740, flitch)
const waysOf = (wood: Flitch, changed: Part) => waysToFit(changed, allFrom(wood), USUAL_SHOP, withoutMemory)

/** What is left of the findings that are wrong once a remedy has been taken. */
function wrongAfter(wood: Flitch, changed: Part, remedy: Remedy): readonly string[] {
  const job: Job = { ...emptyJob('Try'), flitches: [wood], parts: [changed] }
  const [face] = derive(job, withoutMemory).parts
  const next = applyRemedy(job, face!, remedy)
  if (!next.ok) throw new Error(next.reason.trouble)
  const [mended] = derive(next.value, withoutMemory).parts
  return mended!.findings.filter(({ grade }) => grade === 'wrong').map(({ code }) => code)
}

describe('ways to fit', () => {
  it('[F20] in the order: less overhang, then another start; each works', () => {
    // a place that was chosen for the window keeps none of them from working
    const placed = { ...part, positions: { window: point<'leaf'>(110, 90) } }
    expect(layFace(part, allFrom(flitch), USUAL_SHOP, withoutMemory).play.region).toEqual([])
    const { ways } = waysOf(flitch, placed)
    expect(ways.slice(0, 3)).toEqual([
      { remedy: 'less overhang', side: 'top', by: 8 },
      { remedy: 'less overhang', side: 'bottom', by: 8 },
      { remedy: 'start at leaf', leaf: 3 },
    ])
    expect(ways.map(({ remedy }) => remedy)).toEqual([...Array<string>(2).fill('less overhang'), 'start at leaf'])
    for (const way of ways) expect(wrongAfter(flitch, placed, way)).toEqual([])
  })

  it('[F21] finds the next count when leaves are too narrow for the one asked for', () => {
    const narrow = { ...part, length: 700, recipe: { ...part.recipe, count: 2 } as typeof part.recipe, width: 500 }
    expect(waysOf(flitch, narrow).ways).toContainEqual({ remedy: 'count', count: 4 })
  })

  it('[F22] names the leaf that governs a run, what the others have without it, and a leaf in its place', () => {
    const one = flitchOf(6, (number) => (number === 2 ? [220, 700] : [220, 800]))
    const { governing, ways } = waysOf(one, part)
    // 800 less 740 and 10 over at both ends; 220 less 200 and 6 over, 3 off both edges
    expect(governing).toEqual([
      {
        cell: expect.any(String) as string,
        leaf: 2,
        without: { along: expect.closeTo(40, 2) as number, across: expect.closeTo(8, 2) as number },
      },
    ])
    expect(ways).toContainEqual({ remedy: 'other leaf', cell: governing[0]!.cell, leaf: 3 })
    for (const way of ways) expect([way, wrongAfter(one, part, way)]).toEqual([way, []])
  })

  it('[X11] leaves 60 mm too short are made long enough by one scarf through the run, mirrored at the seam', () => {
    const short = flitchOf(2, () => [260, 740])
    const door = { ...part, length: 780 }
    const { ways } = waysOf(short, door)
    const scarf = ways.find((way) => way.remedy === 'make up')
    if (scarf?.remedy !== 'make up' || scarf.makeUp?.how !== 'longer') throw new Error('no scarf')
    expect(scarf.cell).toBe('run')
    expect(wrongAfter(short, door, scarf)).toEqual([])
    const made = { ...door, madeUp: { run: scarf.makeUp } }
    const laid = layFace(made, allFrom(short), USUAL_SHOP, withoutMemory)
    expect(hasPlace(laid)).toBe(true)
    const would = (one: typeof door) => wouldHavePlace(one, allFrom(short), USUAL_SHOP, withoutMemory)
    expect([would(made), would(door)]).toEqual([true, false])
    // the seam crosses the scarf: on either side of it the same halves meet, and mirror
    const [seam] = reportSeams(laid)
    expect(seam!.sides.map(({ meets }) => meets)).toEqual(['mirrors', 'mirrors'])
    const [first] = laid.pieces
    const one = { ...scarf.makeUp, leaf: first!.leaf!.number }
    const alone = layFace({ ...door, madeUp: { [first!.cell.id]: one } }, allFrom(short), USUAL_SHOP, withoutMemory)
    expect(
      reportSeams(alone)[0]!
        .sides.map(({ meets }) => meets)
        .sort(),
    ).toEqual(['breaks', 'mirrors'])
  })

  it('[X11] says how wide a piece any scarf gives where none is wide enough', () => {
    const short = flitchOf(2, () => [218, 740])
    const { ways, scarf } = waysOf(short, { ...part, length: 780 })
    expect(ways.filter(({ remedy }) => remedy === 'make up')).toEqual([])
    expect(scarf!.wanted).toEqual({ width: expect.closeTo(212, 3) as number, length: expect.closeTo(800, 3) as number })
    // corner to corner, 60 longer, 3 trued off each face: 218 − 60·218/740 − 6·√(1 + (218/740)²)
    expect(scarf!.most).toBeGreaterThan(193)
    expect(scarf!.most).toBeLessThan(212)
  })

  it('[X12] leaves too narrow are made wide enough by strips from their own ends', () => {
    const narrow = flitchOf(1, () => [200, 1700])
    const panel = {
      ...part,
      width: 230,
      recipe: { ...part.recipe, arrangement: 'balance', count: 1 } as Part['recipe'],
    }
    const { ways } = waysOf(narrow, panel)
    const strip = ways.find((way) => way.remedy === 'make up')
    if (strip?.remedy !== 'make up' || strip.makeUp?.how !== 'wider') throw new Error('no strip')
    expect(strip.makeUp.cut).toBeNull()
    expect(wrongAfter(narrow, panel, strip)).toEqual([])
  })

  it('[X12] by a strip scarfed long enough where what is left is too short', () => {
    const narrow = flitchOf(1, () => [200, 1400])
    const panel = {
      ...part,
      width: 220,
      recipe: { ...part.recipe, arrangement: 'balance', count: 1 } as Part['recipe'],
    }
    const strip = waysOf(narrow, panel).ways.find((way) => way.remedy === 'make up')
    if (strip?.remedy !== 'make up' || strip.makeUp?.how !== 'wider') throw new Error('no strip')
    expect(strip.makeUp.cut).not.toBeNull()
    expect(wrongAfter(narrow, panel, strip)).toEqual([])
  })

  it('[X13] by a strip from a labelled offcut, and from no leaf of which others take something', () => {
    const few = flitchOf(6, (number) => [number === 1 ? 220 : number === 2 ? 190 : 150, number === 2 ? 780 : 900])
    const panel = { ...part, recipe: { ...part.recipe, count: 2 } as Part['recipe'] }
    const wood = [[rectangle(60, 850)]] as const
    const stock = { offcuts: [{ leaf: 5, label: '5b', wood }], taken: [3, 4, 5, 6] }
    const { ways } = waysToFit(panel, allFrom(few), USUAL_SHOP, withoutMemory, stock)
    const strip = ways.find((way) => way.remedy === 'make up')
    if (strip?.remedy !== 'make up' || strip.makeUp?.how !== 'wider') throw new Error('no strip')
    expect([strip.offcut, strip.makeUp.from]).toEqual(['5b', 5])
    expect(remedyLabel(strip, 'mm')).toMatch(/^Make the leaf of .* wider by a strip \d+ mm wide from offcut 5b$/)
    expect(wrongAfter(few, panel, strip)).toEqual([])
    const none = waysToFit(panel, allFrom(few), USUAL_SHOP, withoutMemory, { ...stock, offcuts: [] })
    expect(none.ways.filter(({ remedy }) => remedy === 'make up')).toEqual([])
  })
})
