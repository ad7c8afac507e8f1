/**
 * The gate before each cut, and what has been cut.
 *
 * [Z1] no cut is called safe that takes wood planned for another piece; [Z2] nor one on a leaf that an unsettled part
 * still needs; [Z3] nor one of a face with something to mend. [Z4] A piece that is cut stays as it was cut. [Z5] What
 * has been cut is no wood for others. [Z8] A made-up piece takes its parts, and what is lost with them. [Z9] A finished
 * panel stays as it was made, and lets go of what is left of its leaves. [Z10] What knife or saw takes is the shop's figure.
 */
import { describe, expect, it } from 'vitest'
import { markCut, unmarkCut } from '../../src/core/commands/cut-commands'
import { commandSentence } from '../../src/core/commands/command-trouble'
import { changeBorder, removeBorder } from '../../src/core/commands/border-commands'
import { chooseLeaf, changeRecipe, setPosition } from '../../src/core/commands/face-commands'
import { finishPart, reopenPart } from '../../src/core/commands/finish-commands'
import { setLeaves } from '../../src/core/commands/flitch-commands'
import { holdCuts } from '../../src/core/commands/hold-cuts'
import { changePart, removePart } from '../../src/core/commands/part-commands'
import { derive } from '../../src/core/derive'
import { isBorderPiece } from '../../src/core/faces/window-group'
import { withoutMemory } from '../../src/core/fit/answers'
import { boxAround, boxCentre } from '../../src/core/geometry/box'
import { intersect } from '../../src/core/geometry/clip'
import { point } from '../../src/core/geometry/point'
import { regionArea, type Ring } from '../../src/core/geometry/polygon'
import { present } from '../../src/core/invariant'
import type { Job } from '../../src/core/job/job'
import { rectangle, usualBorder } from '../../src/core/job/usual'
import { readJob } from '../../src/core/job/read-job'
import { writeJob } from '../../src/core/job/write-job'
import { gateWords } from '../../src/core/ledger/gate-wording'
import { planLedger, type PlannedCut } from '../../src/core/ledger/ledger'
import { jobRests, leavesLetGo, worthKeeping } from '../../src/core/ledger/offcuts'
import { USUAL_SHOP, type Shop } from '../../src/core/shop'
import { chanceFrom, whole, type Chance } from '../fixtures/geometry/shapes'
import { anyFlitch, anyRecipe, oneOf } from './any-face'
import { flitchOf, herringbone, jobOf, parquet, partOf, strips } from './job-builders'

const CASES = Number(process.env['LEAFTURN_CASES'] ?? 30)

const cutsOf = (job: Job): readonly PlannedCut[] =>
  planLedger(derive(job, withoutMemory).parts).flatMap(({ packets }) => packets.flatMap(({ cuts }) => cuts))
const overlap = (a: Ring<'leaf'>, b: Ring<'leaf'>) => regionArea(intersect<'leaf'>([[a]], [[b]]))
const ofPart = (job: Job, part: string) => cutsOf(job).filter((cut) => cut.part === part)
const words = (job: Job, part: string) => ofPart(job, part).map((cut) => `${cut.leaf}: ${gateWords(cut.gate)}`)
const done = (job: Job, cuts: readonly PlannedCut[]): Job => {
  const next = markCut(job, cuts)
  return next.ok ? next.value : expect.unreachable(commandSentence(next.reason))
}

/** Parts of all kinds out of one flitch, so small and so near each other that some share leaves. */
function anyJobOfParts(chance: Chance): Job {
  const flitch = anyFlitch(chance)
  const parts = Array.from({ length: whole(chance, 2, 4) }, (_, i) =>
    partOf({
      id: `part-${i}`,
      name: `Part ${i}`,
      width: whole(chance, 150, 600),
      length: whole(chance, 150, 500),
      showClass: oneOf(chance, 'show', 'now and then', 'hidden'),
      recipe: anyRecipe(chance),
      positions: chance() < 0.6 ? { window: point(whole(chance, 80, 160), whole(chance, 200, 1600)) } : {},
    }),
  )
  return jobOf(parts, flitch)
}

describe('the gate', () => {
  it('[Z1, Z2, Z3] never says safe when the cut takes what another needs', () => {
    const seen = { safe: 0, blocked: 0 }
    for (let i = 0; i < CASES; i++) {
      const job = anyJobOfParts(chanceFrom(7000 + i))
      const faces = derive(job, withoutMemory).parts
      for (const cut of cutsOf(job)) {
        if (cut.gate.state !== 'safe') seen.blocked++
        else seen.safe++
        const isSafe = cut.gate.state === 'safe'
        for (const face of faces) {
          const isUnsettled = face.findings.some(({ grade }) => grade === 'wrong')
          if (face.part.id === cut.part && isUnsettled) expect(isSafe).toBe(false)
          for (const piece of face.pieces) {
            if (piece.leaf?.number !== cut.leaf) continue
            if (face.part.id === cut.part && piece.cell.id === cut.cell) continue
            if (isUnsettled || overlap(piece.roughOnLeaf, cut.takes[0]!.region[0]![0]) > 1.01)
              expect(isSafe).toBe(false)
          }
        }
      }
    }
    expect(seen.safe).toBeGreaterThan(CASES / 4)
    expect(seen.blocked).toBeGreaterThan(CASES / 4)
  })

  const door = partOf({ id: 'door', name: 'Door', width: 380, length: 500, recipe: strips({ count: 2 }) })
  const low = { window: point<'leaf'>(112, 400) }
  const high = { window: point<'leaf'>(112, 1500) }

  it('[Z1] says which part needs the wood, and lets both go once they lie apart', () => {
    const drawer = { ...door, id: 'drawer', name: 'Drawer', positions: low }
    const both = (positions: typeof low) => jobOf([{ ...door, positions }, drawer], flitchOf())
    expect(words(both(low), 'door')).toEqual([
      '1: not yet: “Drawer” still needs leaves 1 and 2',
      '2: not yet: “Drawer” still needs leaves 1 and 2',
    ])
    // the later part has it to mend, and waits for the earlier one
    expect(words(both(low), 'drawer')[0]).toBe('1: not yet: this face has 2 things to mend; “Door” needs this wood')
    expect(words(both(high), 'door')).toEqual(['1: safe', '2: safe'])
  })

  it('[Z2] says which leaves a part still needs that does not fit yet', () => {
    const top = partOf({ id: 'top', name: 'Top', width: 780, length: 2600, recipe: strips({ count: 4, firstLeaf: 9 }) })
    const inTop = { ...door, positions: low, recipe: strips({ count: 2, firstLeaf: 12 }) }
    const hidden = { ...top, showClass: 'hidden' as const }
    expect(words(jobOf([inTop, hidden], flitchOf()), 'door')).toEqual([
      '12: not yet: “Top” still needs leaves 9 to 12',
      '13: safe',
    ])
    // a face that is seen as much may be given any leaf yet
    expect(words(jobOf([inTop, top], flitchOf()), 'door')).toEqual([
      '12: not yet: “Top” still needs leaves 1 to 24',
      '13: not yet: “Top” still needs leaves 1 to 24',
    ])
  })

  it('[Z3] waits for what is to mend in the face itself, and refuses the tick till then', () => {
    const job = jobOf([{ ...door, length: 2600 }], flitchOf())
    const [first] = cutsOf(job)
    expect(gateWords(present(first, 'a cut').gate)).toMatch(/^not yet: this face has \d+ things to mend$/)
    const next = markCut(job, [first!])
    expect(next.ok ? '' : commandSentence(next.reason)).toMatch(/^Leaf 1, R1 of “Door”: not yet/)
  })

  it('says when a straight cut would go through a piece beside it', () => {
    const beside = {
      ...door,
      id: 'slip',
      name: 'Slip',
      width: 80,
      length: 900,
      recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 }),
    }
    const narrow = { ...door, width: 80, recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 }) }
    const at = (x: number) => ({ window: point<'leaf'>(x, 1000) })
    const job = jobOf(
      [
        { ...narrow, positions: at(53.5) },
        { ...beside, positions: at(161.5) },
      ],
      flitchOf(),
    )
    expect(words(job, 'door')).toEqual([
      '1: safe, but rip it free first: a crosscut would go through a piece beside it',
    ])
    expect(words(job, 'slip')).toEqual(['1: safe'])
  })
})

describe('a made-up leaf in the ledger', () => {
  const single = strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 })
  const box = (x: number, y: number, width: number, length: number) => ({
    min: point<'leaf'>(x, y),
    max: point<'leaf'>(x + width, y + length),
  })
  const strip = box(20, 100, 60, 1000)
  const wide = partOf({
    id: 'wide',
    name: 'Wide',
    width: 240,
    length: 500,
    recipe: single,
    madeUp: {
      run: {
        ...{ how: 'wider', leaf: 1, spacing: null, side: 'right', kept: box(0, 200, 215, 1000), from: 7 },
        ...{ offcut: box(20, 80, 80, 1040), cut: null, strip, loss: 1.5 },
      },
    },
  })
  const small = (x: number, y: number) =>
    partOf({
      ...{ id: 'small', name: 'Small', width: 30, length: 100, allowance: 3, recipe: { ...single, firstLeaf: 7 } },
      positions: { window: point<'leaf'>(x, y) },
    })
  const wideCut = (job: Job) => present(ofPart(job, 'wide')[0], 'the wide piece')

  it('[Z8] takes its strip of the other leaf, and the whole offcut that it is made of', () => {
    const alone = wideCut(jobOf([wide], flitchOf()))
    expect(gateWords(alone.gate)).toBe('safe')
    expect(alone.takes.map(({ leaf }) => leaf)).toEqual([1, 7])
    const [, ofSeven] = alone.takes
    // the strip, trued, from 21.5 to 78.5, as far as the window reaches into it
    const xs = ofSeven!.region[0]![0].map(({ x }) => x)
    expect(Math.min(...xs)).toBeCloseTo(21.5, 2)
    expect(Math.max(...xs)).toBeLessThan(78.51)
    expect(Math.max(...xs)).toBeGreaterThan(70)
    const state = (job: Job) => wideCut(job).gate.state
    expect(state(jobOf([wide, small(50, 600)], flitchOf()))).toBe('not yet')
    // in the offcut, beside the strip and beyond its end
    expect(state(jobOf([wide, small(90, 90)], flitchOf()))).toBe('not yet')
    expect(state(jobOf([wide, small(160, 600)], flitchOf()))).toBe('safe')
  })

  it('[Z8] takes the parts of a scarfed leaf, not what lies between or beside them', () => {
    const cut = { through: point<'leaf'>(107.5, 1000), runs: 'right', slope: 0.1075, gain: 60, loss: 1.5 } as const
    const long = { ...wide, id: 'long', width: 120, length: 2010 }
    const made = { ...long, madeUp: { run: { leaf: null, spacing: null, how: 'longer' as const, cut } } }
    const [planned] = ofPart(jobOf([made], flitchOf({ outline: rectangle(215, 2000) })), 'long')
    const { region, lost } = planned!.takes[0]!
    expect(region).toHaveLength(2)
    // 146 by 2030 in the made-up leaf; on the leaf as it is the same wood in two parts
    expect(region.reduce((sum, [outer]) => sum + regionArea<'leaf'>([[outer]]), 0)).toBeCloseTo(146 * 2030, -2)
    // the slanted line goes through the leaf from edge to edge, 1.5 mm off both faces
    expect(regionArea(lost)).toBeGreaterThan(3 * 2000)
    expect(Math.max(...lost.flat(2).map(({ x }) => x))).toBeGreaterThan(214)
  })
})

describe('room for the saw', () => {
  const single = strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 })
  const at = (id: string, y: number) =>
    partOf({ id, name: id, width: 80, length: 100, recipe: single, positions: { window: point<'leaf'>(107, y) } })
  const gate = (gap: number) => words(jobOf([at('Upper', 400), at('Lower', 520 + gap)], flitchOf()), 'Upper')[0]

  it('[Z1] is kept between two pieces of a leaf, and taken off what is left when one is cut', () => {
    expect(gate(1)).toBe('1: not yet: C of “Lower” lies so near that there is no room for the saw between')
    expect(gate(2)).toBe('1: safe')
    const job = jobOf([at('Upper', 400), at('Lower', 522)], flitchOf())
    const marked = done(job, ofPart(job, 'Upper'))
    expect(words(marked, 'Lower')).toEqual(['1: safe'])
    const nearer = setPosition(marked, 'Lower', 'window', point(107, 520.5))
    expect(nearer.ok && derive(nearer.value, withoutMemory).parts[1]!.findings.map(({ code }) => code)).toContain(
      'outside-play',
    )
  })
})

describe('what the saw of a shop takes', () => {
  const shop = { ...USUAL_SHOP, betweenPieces: 5 }

  it('[Z10] is what the gate asks for, and what others lose of a leaf that was cut', () => {
    const single = strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 })
    const at = (id: string, y: number) =>
      partOf({ id, name: id, width: 80, length: 100, recipe: single, positions: { window: point<'leaf'>(107, y) } })
    const gate = (gap: number) => words(jobOf([at('Upper', 400), at('Lower', 520 + gap)], flitchOf(), shop), 'Upper')[0]
    expect(gate(4.9)).toMatch(/no room for the saw between$/)
    expect(gate(5)).toBe('1: safe')
    const job = jobOf([at('Upper', 400), at('Lower', 525)], flitchOf(), shop)
    const codes = (y: number) => {
      const moved = setPosition(done(job, ofPart(job, 'Upper')), 'Lower', 'window', point(107, y))
      return moved.ok ? derive(moved.value, withoutMemory).parts[1]!.findings.map(({ code }) => code) : []
    }
    expect(codes(524)).toContain('outside-play')
    expect(codes(525)).not.toContain('outside-play')
  })

  it.each([herringbone(), parquet()])('[Z10] is kept between pieces dealt to one leaf: $pattern', (recipe) => {
    // from one piece to the next, on the average
    const pitch = (of: Shop) => {
      const [face] = derive(jobOf([partOf({ recipe })], flitchOf(), of), withoutMemory).parts
      const onFirst = face!.pieces.filter(({ leaf }) => leaf?.number === 1)
      const middles = onFirst.map(({ roughOnLeaf }) => boxCentre(boxAround(roughOnLeaf)).y)
      return (Math.max(...middles) - Math.min(...middles)) / (middles.length - 1)
    }
    expect(pitch(shop) - pitch(USUAL_SHOP)).toBeCloseTo(3, 6)
  })
})

describe('a finished panel', () => {
  const door = partOf({ id: 'door', name: 'Door', width: 380, length: 500, recipe: strips({ count: 2 }) })
  const plain = jobOf([{ ...door, positions: { window: point(112, 400) } }], flitchOf())
  const ledgerOf = (job: Job) => present(planLedger(derive(job, withoutMemory).parts)[0], 'a ledger')
  const said = (next: ReturnType<typeof setPosition>) => (next.ok ? 'taken' : commandSentence(next.reason))
  const cut = done(plain, cutsOf(plain))
  const finished = finishPart(cut, ledgerOf(cut))
  const job = finished.ok ? finished.value : expect.unreachable(said(finished))

  it('[Z9] is one of which all pieces are cut', () => {
    expect(said(finishPart(plain, ledgerOf(plain)))).toMatch(/^“Door” has 2 pieces not marked as cut\./)
    expect(job.parts[0]!.finished).toBe(true)
    expect(holdCuts(job, reopenPart(job, 'door'), withoutMemory)).toEqual({ ok: true, value: cut })
  })

  it('[Z9] stays as it was made, and its ticks stay', () => {
    const held = (next: ReturnType<typeof setPosition>) => said(holdCuts(job, next, withoutMemory))
    const fixed = /^“Door” is marked as finished/
    expect(said(unmarkCut(job, 'flitch', { part: 'door', cell: 'R1' }))).toMatch(fixed)
    expect(held(changePart(job, 'door', { overhang: { ...door.overhang, top: 4 } }))).toMatch(fixed)
    expect(said(removePart(job, 'door'))).toMatch(/no such piece any more/)
    expect(held(changePart(job, 'door', { name: 'Door, left' }))).toBe('taken')
  })

  it('[Z9] lets go of what is left of its leaves, once no other panel takes of them', () => {
    const kept = (other: Job) => worthKeeping(jobRests(derive(other, withoutMemory).parts, other.shop, withoutMemory))
    expect(kept(cut).map(({ label }) => label)).toEqual(['1a', '1b', '2a', '2b'])
    expect(kept(job)).toEqual([])
    const drawer = { ...door, id: 'drawer', name: 'Drawer', positions: { window: point<'leaf'>(112, 1500) } }
    const other = { ...job, parts: [...job.parts, { ...drawer, recipe: strips({ count: 2, firstLeaf: 2 }) }] }
    expect(new Set(kept(other).map(({ leaf }) => leaf))).toEqual(new Set([2, 3]))
    expect(leavesLetGo(jobRests(derive(other, withoutMemory).parts, other.shop, withoutMemory))).toEqual([1])
  })
})

describe('what has been cut', () => {
  const door = partOf({
    id: 'door',
    name: 'Door',
    width: 380,
    length: 500,
    recipe: strips({ count: 2 }),
    positions: { window: point(112, 400) },
  })
  const plain = jobOf([door], flitchOf())
  const job = done(plain, cutsOf(plain).slice(0, 1))
  const held = (next: ReturnType<typeof setPosition>) => {
    const result = holdCuts(job, next, withoutMemory)
    return result.ok ? 'taken' : commandSentence(result.reason)
  }

  it('[Z4] stays where it was cut: window, leaf, recipe, size and part', () => {
    expect(held(setPosition(job, 'door', 'window', point(112, 410)))).toBe(
      'Leaf 1 is cut for R1 of “Door”, and this needs 10 mm of wood beyond the cut. ' +
        'If it was not cut after all, take the tick off at the cutting station.',
    )
    expect(held(chooseLeaf(job, 'door', 'R1', 5))).toMatch(/this would take another leaf there/)
    expect(held(changeRecipe(job, 'door', { count: 1 }))).toMatch(
      /there would be no such piece any more|beyond the cut/,
    )
    expect(held(changePart(job, 'door', { overhang: { ...door.overhang, top: 14 } }))).toMatch(/needs 4 mm of wood/)
    expect(held(removePart(job, 'door'))).toMatch(/no such piece/)
    // by the commands themselves, and not only at the door of the workshop
    for (const next of [
      setPosition(job, 'door', 'window', point(112, 410)),
      chooseLeaf(job, 'door', 'R1', 5),
      removePart(job, 'door'),
      setLeaves(job, 'flitch', [2, 3, 4]),
    ])
      expect(next.ok).toBe(false)
  })

  it('[Z4] stays when a border beside it would want other wood, and the border may still change where it leaves it', () => {
    const plainPart = { ...door, width: 500, recipe: strips({}) }
    const bordered = jobOf([{ ...plainPart, border: usualBorder(plainPart, flitchOf()) }], flitchOf())
    const all = cutsOf(bordered)
    const isOfBorder = ({ cell }: PlannedCut) => isBorderPiece(cell)
    const after = (cuts: readonly PlannedCut[], next: (job: Job) => ReturnType<typeof changeBorder>) => {
      const before = done(bordered, cuts)
      const result = holdCuts(before, next(before), withoutMemory)
      return result.ok ? 'taken' : commandSentence(result.reason)
    }
    const wider = (of: Job) => changeBorder(of, 'door', { width: bordered.parts[0]!.border!.width + 10 })
    const narrower = (of: Job) => changeBorder(of, 'door', { width: bordered.parts[0]!.border!.width - 10 })
    const field = all.filter((cut) => !isOfBorder(cut))
    // a wider border leaves the field less, a narrower one wants more of it than was cut
    expect(after(field, wider)).toBe('taken')
    expect(after(field, narrower)).toMatch(
      /^Leaf \d+ is cut for \w+ of “Door”, and this needs [\d.]+ mm of wood beyond the cut\. If it was not cut after all,/,
    )
    expect(after(all.filter(isOfBorder), (of) => removeBorder(of, 'door'))).toMatch(/no such piece any more/)
    expect(after(field, (of) => changeRecipe(of, 'door', { count: 1 }))).toMatch(
      /^Leaf \d+ is cut for \w+ of “Door”, and /,
    )
  })

  it('[Z4] lets go on whatever leaves it as it is, a smaller piece of it too', () => {
    expect(held(changePart(job, 'door', { name: 'Door, left' }))).toBe('taken')
    expect(held(changePart(job, 'door', { overhang: { ...door.overhang, top: 4 } }))).toBe('taken')
    expect(held(chooseLeaf(job, 'door', 'L1', 7))).toBe('taken')
    // the run starts elsewhere, the cell that was cut keeps its leaf
    expect(held(changeRecipe(job, 'door', { firstLeaf: 4 }))).toBe('taken')
    const later = changeRecipe(job, 'door', { firstLeaf: 4 })
    expect(later.ok && cutsOf(later.value).map(({ leaf }) => leaf)).toEqual([1, 5])
  })

  it('[Z4] can be taken back, and is kept by the file', () => {
    const back = unmarkCut(job, 'flitch', { part: 'door', cell: 'R1' })
    expect(holdCuts(job, back, withoutMemory)).toEqual({ ok: true, value: plain })
    const read = readJob(writeJob(job))
    expect(read.ok && read.value.flitches[0]!.leaves[0]!.cuts).toEqual(job.flitches[0]!.leaves[0]!.cuts)
  })

  it('[Z5] is no wood for others, and leaves the face that it is of without a fault', () => {
    const drawer = { ...door, id: 'drawer', name: 'Drawer', positions: {}, length: 1990 }
    const faces = derive({ ...job, parts: [...job.parts, drawer] }, withoutMemory).parts
    expect(faces[0]!.findings.filter(({ grade }) => grade === 'wrong')).toEqual([])
    // 2400 mm less the 520 that were cut would be room enough only in the whole leaf
    expect(faces[1]!.play.region).toEqual([])
    const small = derive({ ...job, parts: [...job.parts, { ...drawer, length: 1500 }] }, withoutMemory).parts[1]!
    expect(small.play.region.length).toBeGreaterThan(0)
    expect(overlap(small.pieces[0]!.roughOnLeaf, job.flitches[0]!.leaves[0]!.cuts[0]!.outline)).toBeLessThan(1)
  })

  it('[Z1, Z4] follows a made-up leaf to where its parts are really cut', () => {
    const cut = { through: point<'leaf'>(107.5, 1000), runs: 'right', slope: 0.1075, gain: 60, loss: 1.5 } as const
    const long = partOf({
      id: 'long',
      name: 'Long',
      width: 150,
      length: 2010,
      recipe: strips({ arrangement: 'balance', centreOn: 'leaf', count: 1 }),
      madeUp: { run: { leaf: null, spacing: null, how: 'longer', cut } },
    })
    const short = flitchOf({ outline: rectangle(215, 2000) })
    const made = jobOf([long], short)
    const [planned] = cutsOf(made)
    expect(gateWords(present(planned, 'a cut').gate)).toBe('safe')
    // 2030 mm of sheet out of 2000 mm of leaf: what is claimed lies on the leaf as it is, not in the longer one
    const far = Math.max(...planned!.takes.flatMap(({ region }) => region[0]![0].map(({ y }) => y)))
    expect(far).toBeLessThanOrEqual(2000.001)
    const other = { ...door, id: 'small', name: 'Small', width: 60, length: 100, recipe: long.recipe }
    const both = jobOf([long, { ...other, positions: { window: point<'leaf'>(107.5, 1900) } }], short)
    expect(ofPart(both, 'long')[0]!.gate.state).toBe('not yet')

    const marked = done(made, [planned!])
    const wrongs = derive(marked, withoutMemory).parts[0]!.findings.filter(({ grade }) => grade === 'wrong')
    expect(wrongs).toEqual([])
    expect(cutsOf(marked)[0]!.gate.state).toBe('done')
    const moved = changePart(marked, 'long', { overhang: { ...long.overhang, top: 16 } })
    expect(holdCuts(marked, moved, withoutMemory).ok).toBe(false)
    expect(holdCuts(marked, unmarkCut(marked, 'flitch', { part: 'long', cell: planned!.cell }), withoutMemory).ok).toBe(
      true,
    )
  })

  it('[Z4] holds for every kind of face: all that is safe can be ticked, one after another', () => {
    let ticked = 0
    // on until enough has been ticked to say so
    for (let i = 0; i < CASES && (i < CASES / 4 || ticked <= 10); i++) {
      let now = anyJobOfParts(chanceFrom(9000 + i))
      for (let n = 0; n < 6; n++) {
        const next = cutsOf(now).find(({ gate }) => gate.state === 'safe')
        if (!next) break
        const marked = holdCuts(now, markCut(now, [next]), withoutMemory)
        expect(marked.ok || commandSentence(marked.reason)).toBe(true)
        if (!marked.ok) break
        const after = cutsOf(marked.value)
        expect(
          after.find(({ part, cell }) => part === next.part && cell === next.cell)?.takes.map(({ region }) => region),
        ).toEqual(next.takes.map(({ region }) => region))
        // marking a cut unsettles nothing that was settled
        const wrongs = (job: Job) =>
          derive(job, withoutMemory).parts.map(
            ({ findings }) => findings.filter(({ grade }) => grade === 'wrong').length,
          )
        expect(wrongs(marked.value)).toEqual(wrongs(now))
        now = marked.value
        ticked++
      }
    }
    expect(ticked).toBeGreaterThan(10)
  })
})
