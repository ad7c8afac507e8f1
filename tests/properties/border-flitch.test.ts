/**
 * A border cut from another flitch than its field. Leaf numbers are unique within a flitch only, so both flitches here
 * number their leaves from 1: whoever takes one for the other is found out.
 *
 * [Y7] Its pieces take leaves, sound wood and numbers from their own flitch.
 * [Y8] Leaves of two flitches with one number are two leaves.
 * [Y9] What was decided about the border's leaves goes by its flitch.
 */
import { describe, expect, it } from 'vitest'
import { changeBorder } from '../../src/core/commands/border-commands'
import { markCut } from '../../src/core/commands/cut-commands'
import { chooseLeaf, swapLeaves } from '../../src/core/commands/face-commands'
import { removeFlitch } from '../../src/core/commands/flitch-commands'
import { holdCuts } from '../../src/core/commands/hold-cuts'
import { renumberLeaf } from '../../src/core/commands/leaf-commands'
import { changePart } from '../../src/core/commands/part-commands'
import { findingSentence } from '../../src/core/checks/wording'
import { derive, type DerivedPart } from '../../src/core/derive'
import { BORDER } from '../../src/core/faces/window-group'
import { withoutMemory } from '../../src/core/fit/answers'
import { groupOf } from '../../src/core/fit/lay-face'
import { boxAround, boxCentre } from '../../src/core/geometry/box'
import { point } from '../../src/core/geometry/point'
import { transformPoint } from '../../src/core/geometry/transform'
import type { Job, Part } from '../../src/core/job/job'
import { readJob } from '../../src/core/job/read-job'
import { rectangle } from '../../src/core/job/usual'
import { writeJob } from '../../src/core/job/write-job'
import { claimsOf } from '../../src/core/ledger/claims'
import { planLedger } from '../../src/core/ledger/ledger'
import { jobRests } from '../../src/core/ledger/offcuts'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Leaf } from '../../src/core/leaves/leaf'
import { USUAL_BORDER, type Border } from '../../src/core/patterns/border'
import { findPatch } from '../../src/core/seams/find-patch'
import { cuttingOf } from '../../src/core/templates/packets'
import { windowTemplates } from '../../src/core/templates/window-template'
import { findingsOf, flitchOf, jobOf, partOf, plainLeaves, strips } from './job-builders'

const walnut = flitchOf()
const knotOn = (leaf: Leaf, x: number, y: number): Leaf => ({
  ...leaf,
  defects: [{ id: `knot-${leaf.number}`, kind: 'knot', note: '', shape: 'spot', centre: point(x, y), radius: 4 }],
})
const maple: Flitch = flitchOf({
  id: 'maple',
  name: 'Maple',
  thickness: 0.9,
  outline: rectangle(260, 900),
  leaves: plainLeaves(6),
})

const framed = (border: Partial<Border> = {}, over: Partial<Part> = {}): Part =>
  partOf({
    width: 600,
    length: 800,
    recipe: strips({ count: 4 }),
    ...over,
    border: { ...USUAL_BORDER, flitch: 'maple', ...border },
  })
const jobWith = (part: Part, border: Flitch = maple): Job => ({ ...jobOf([part], walnut), flitches: [walnut, border] })
const faceIn = (job: Job): DerivedPart => derive(job, withoutMemory).parts[0]!
const bandOf = (face: DerivedPart) => groupOf(face, BORDER).pieces

const face = faceIn(jobWith(framed()))

describe('a border from another flitch', () => {
  it('[Y7] begins at its first leaf in use, and lies in its own sound wood', () => {
    expect(bandOf(face).map(({ flitch }) => flitch.id)).toEqual(bandOf(face).map(() => 'maple'))
    expect(bandOf(face)[0]!.leaf).toBe(maple.leaves[0])
    const spare: Flitch = {
      ...maple,
      leaves: maple.leaves.map((leaf, i) => (i === 0 ? { ...leaf, state: 'spare' } : leaf)),
    }
    expect(bandOf(faceIn(jobWith(framed(), spare)))[0]!.leaf?.number).toBe(2)
    expect(bandOf(faceIn(jobWith(framed({ firstLeaf: 4 }))))[0]!.leaf).toBe(maple.leaves[3])
    // the leaves of the field are much longer: what fits there need not fit here
    const short: Flitch = { ...maple, outline: rectangle(260, 150) }
    const sentences = findingsOf(faceIn(jobWith(framed(), short)), 'play-empty')
    expect(sentences.map(({ about }) => about['border'])).toEqual([1])
  })

  it('[Y7] what is short or has a knot is told with the name of the flitch', () => {
    const piece = bandOf(face)[0]!
    const { x, y } = boxCentre(boxAround(piece.roughOnLeaf))
    const knotty: Flitch = { ...maple, leaves: maple.leaves.map((leaf, i) => (i === 0 ? knotOn(leaf, x, y) : leaf)) }
    const put = framed({}, { positions: { [BORDER]: face.border!.position } })
    const [found] = findingsOf(faceIn(jobWith(put, knotty)), 'defect-in-face')
    expect(found!.place).toMatchObject({ leaf: { flitch: 'maple', leaf: 1 } })
    expect(findingSentence(found!, 'mm')).toMatch(/^A knot of leaf 1 of “Maple”, /)
    const repairs = faceIn(jobWith(put, knotty)).repairs.repairs
    expect(repairs.map(({ flitch, ofFlitch, leaf }) => [flitch, ofFlitch, leaf])).toEqual([['maple', 'Maple', 1]])
    const few = { ...maple, leaves: plainLeaves(1) }
    const [lacking] = findingsOf(faceIn(jobWith(framed({ count: 4 }), few)), 'no-leaf')
    expect(findingSentence(lacking!, 'mm')).toMatch(/^“Maple” has leaves for only \d+ of the border’s \d+ pieces\./)
  })

  it('[Y8] leaf 1 and leaf 1 are two leaves: for cuts, templates, packets, offcuts and what is used twice', () => {
    // both windows over each other, were they on one leaf
    const over = framed({}, { positions: { [BORDER]: face.position, window: face.position } })
    const job = jobWith(over)
    const together = faceIn(job)
    const clashing = findingsOf(together, 'used-twice').filter(({ about }) => about['same'] === 1)
    expect(clashing).toEqual([])
    const claims = claimsOf(together)
    expect(new Set(claims.map(({ flitch, leaf }) => `${flitch} ${leaf}`)).size).toBeGreaterThan(
      new Set(claims.map(({ leaf }) => leaf)).size,
    )
    for (const { pieces } of [...windowTemplates(together), ...cuttingOf(together).packets])
      expect(new Set(pieces.map(({ flitch }) => flitch.id)).size).toBe(1)
    const rests = jobRests([face], job.shop, withoutMemory, face)
    for (const { flitch, taken, leaf } of rests)
      expect(taken.length, `${flitch} ${leaf}`).toBe(
        face.pieces.filter((piece) => piece.flitch.id === flitch && piece.leaf?.number === leaf).length,
      )
    expect(new Set(rests.map(({ flitch }) => flitch))).toEqual(new Set([walnut.id, 'maple']))
  })

  it('[Y8] no figure is said to meet between two logs, and no depth told', () => {
    const between = face.seams.filter(({ kind }) => kind === 'border')
    expect(between.length).toBeGreaterThan(0)
    for (const { meets, depthOffset, jump } of between) expect([meets, depthOffset, jump]).toEqual(['breaks', null, 0])
  })

  it('[Y8] a patch for the border comes from its own flitch, and takes nothing of the other’s leaves', () => {
    const fifth = faceIn(jobWith(framed({ firstLeaf: 5 }, { positions: { window: point(130, 450) } })))
    const wish = { radius: 5, faces: [fifth], shop: jobWith(framed()).shop }
    const piece = bandOf(fifth).find(({ leaf }) => leaf?.number === 5)!
    const onMaple = boxCentre(boxAround(piece.roughOnLeaf))
    const inBand = findPatch(fifth, { ...wish, at: transformPoint(piece.leafToPanel, onMaple) })!
    expect([inBand.flitch, inBand.ofFlitch, inBand.leaf]).toEqual(['maple', 'Maple', 5])
    expect(inBand.others.map(({ leaf }) => leaf).sort()).toEqual([1, 2, 3, 4, 6])
    // the same place on the walnut leaf 5, which nobody takes
    const field = fifth.pieces.find(({ flitch }) => flitch.id === walnut.id)!
    const inField = findPatch(fifth, { ...wish, at: transformPoint(field.leafToPanel, onMaple) })!
    expect([inField.flitch, inField.ofFlitch]).toEqual([walnut.id, null])
    expect(inField.others.find(({ leaf }) => leaf === 5)!.trouble).toBe(null)
  })

  it('[K1] a step in thickness is told, and none within what leaves vary by', () => {
    const [step] = findingsOf(face, 'border-step')
    expect(step!.measured).toBeCloseTo(0.9 - walnut.thickness, 9)
    expect(findingSentence(step!, 'mm')).toMatch(
      /^The border’s veneer is 0\.9 mm thick, the field’s 0\.6 mm: a step of 0\.3 mm/,
    )
    const alike = { ...maple, thickness: walnut.thickness + 0.04 }
    expect(findingsOf(faceIn(jobWith(framed(), alike)), 'border-step')).toEqual([])
  })

  it('[Y9] what was said of the border’s leaves stays with its flitch, and goes with it', () => {
    const chosen = framed({}, { chosen: { L1: 2, XT1: 3 }, nudges: { XT1: { leaf: 3, by: point(0, 1) } } })
    const job = jobWith(chosen)
    const renumbered = renumberLeaf(job, { flitch: 'maple', leaf: 3 }, 33)
    expect(renumbered.ok && renumbered.value.parts[0]).toMatchObject({
      chosen: { L1: 2, XT1: 33 },
      nudges: { XT1: { leaf: 33 } },
      recipe: { firstLeaf: chosen.recipe.firstLeaf },
    })
    const own = changeBorder(job, 'part', { flitch: walnut.id })
    expect(own.ok && own.value.parts[0]).toMatchObject({ chosen: { L1: 2 }, nudges: {}, border: { flitch: null } })
    const moved = changePart(job, 'part', { flitch: 'maple' })
    expect(moved.ok && moved.value.parts[0]).toMatchObject({
      flitch: 'maple',
      chosen: { XT1: 3 },
      border: { flitch: null },
    })
    expect(chooseLeaf(job, 'part', 'XT1', 12).ok).toBe(false)
    expect(chooseLeaf(job, 'part', 'L1', 12).ok).toBe(true)
    expect(swapLeaves(job, 'part', 'L1', 'XT1', 2, 3)).toMatchObject({ reason: { trouble: 'two flitches' } })
    expect(removeFlitch(job, 'maple')).toMatchObject({ reason: { trouble: 'flitch in use' } })
    expect(changeBorder(job, 'part', { flitch: 'oak' })).toMatchObject({ reason: { trouble: 'no such flitch' } })
  })

  it('[Y9] what has been cut for a border holds it to its flitch', () => {
    const [ledger] = planLedger([face])
    const cuts = ledger!.packets.flatMap((packet) => packet.cuts).filter(({ group }) => group === BORDER)
    expect(new Set(cuts.map(({ flitch, gate }) => `${flitch} ${gate.state}`))).toEqual(new Set(['maple safe']))
    const marked = markCut(jobWith(framed()), cuts)
    if (!marked.ok) return expect.unreachable()
    expect(marked.value.flitches[0]).toBe(walnut)
    const next = holdCuts(marked.value, changeBorder(marked.value, 'part', { flitch: null }), withoutMemory)
    expect(next).toMatchObject({ ok: false, reason: { trouble: 'cut already' } })
  })

  it('[J1, J2, J7] the flitch is written only where it is another, and must be there', () => {
    const written = writeJob(jobWith(framed()))
    expect(JSON.parse(written).parts[0].border.flitch).toBe('maple')
    const again = readJob(written)
    expect(again.ok && again.value.parts[0]!.border?.flitch).toBe('maple')
    expect(JSON.parse(writeJob(jobWith(framed({ flitch: null })))).parts[0].border).not.toHaveProperty('flitch')
    const lost = readJob(written.replace('"flitch": "maple"', '"flitch": "oak"'))
    expect(lost.ok).toBe(false)
  })
})
