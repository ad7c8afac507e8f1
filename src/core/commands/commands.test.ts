/**
 * Rules.
 * J13 Whatever a command gives can be written and read again, and is then the same job; what it refuses, it refuses
 *     with a sentence.
 * J14 A command leaves the job it was given as it was, and gives the very same job when nothing changes.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { anyJob, anyMakeUp, anyRecipe } from '../../../tests/generators/any-job'
import { point } from '../geometry/point'
import type { Job } from '../job/job'
import type { Flitch } from '../leaves/flitch'
import { readJob } from '../job/read-job'
import { rectangle, usualFlitch, usualPart, blankLeaf } from '../job/usual'
import { writeJob } from '../job/write-job'
import { leafLayer, USUAL_BOARD } from '../press/usual-pressing'
import { addBorder, changeBorder, changeString } from './border-commands'
import type { Next } from './change-within'
import { commandSentence } from './command-trouble'
import { addDefect, changeDefect, copyDefect, removeDefect } from './defect-commands'
import {
  changeRecipe,
  chooseLeaf,
  clearChosen,
  setMakeUp,
  setNudge,
  setPosition,
  swapLeaves,
  turnWindow,
} from './face-commands'
import * as flitch from './flitch-commands'
import { changeShop, renameJob, setUnit } from './job-commands'
import { renumberLeaf, setDrift, setLeafNote, setLeafOutline, setLeafState } from './leaf-commands'
import { insertOutlinePoint, moveOutlinePoint, removeOutlinePoint } from './outline-commands'
import { changePair, pairParts, partThePair } from './pair-commands'
import { addPart, changePart, duplicatePart, movePart, removePart } from './part-commands'
import * as press from './press-commands'

const TEARS_HIDDEN = { hidden: ['tear'] } as const

const odd = fc.constantFrom(-30_000, -1, 0, 0.5, 1, 3, 7, 250, 21_000, NaN, Infinity)
const leaf = fc.integer({ min: 0, max: 15 })
const flitchId = fc.constantFrom('walnut', 'maple', 'birch')
const partId = fc.constantFrom('part 1', 'part 2', 'part 9')
const cell = fc.constantFrom('C', 'L1', 'R1')
const spot = fc.tuple(odd, odd).map(([x, y]) => point<'leaf'>(x, y))
const nearSpot = fc.oneof(
  spot,
  fc.record({ x: fc.integer({ min: -9000, max: 9000 }), y: fc.integer({ min: -9000, max: 9000 }) }),
)
const numbers = fc.record({ flitch: flitchId, leaf })
const anyOutline = fc.record({ flitch: flitchId, leaf: fc.option(leaf) })
const ring = fc.oneof(
  fc.array(spot, { minLength: 0, maxLength: 6 }),
  fc.constant([...rectangle(200, 900)].reverse()),
  fc.constant([...rectangle(200, 900), point<'leaf'>(0, 0)]),
)
const defectId = fc.constantFrom('walnut.0.0', 'maple.1.1', 'new', 'newer')
const defect = fc.oneof(
  fc.record({
    id: defectId,
    kind: fc.constant('knot' as const),
    note: fc.constant(''),
    shape: fc.constant('spot' as const),
    centre: spot,
    radius: odd,
  }),
  fc.record({
    id: defectId,
    kind: fc.constant('stain' as const),
    note: fc.constant(''),
    shape: fc.constant('area' as const),
    ring,
  }),
)
const newFlitch = fc.record({ id: flitchId, outline: ring, count: fc.nat(4) }).map(({ id, outline, count }) =>
  usualFlitch(
    id,
    'New',
    outline,
    Array.from({ length: count }, (_, i) => blankLeaf(i + 1)),
  ),
)

/** One of the job's defects, or one that is not there. */
function someDefect(job: Job, nth: number) {
  const all = job.flitches.flatMap((f) =>
    f.leaves.flatMap((l) => l.defects.map(({ id }) => ({ ref: { flitch: f.id, leaf: l.number }, id }))),
  )
  return all[nth] ?? { ref: { flitch: 'walnut', leaf: 1 }, id: 'none' }
}

/** One of the job's leaves, the first ones oftener, or one that is not there. */
function someLeaf(job: Job, nth: number) {
  const all = job.flitches.flatMap((f) => f.leaves.map((l) => ({ flitch: f.id, leaf: l.number })))
  return all[nth] ?? { flitch: 'walnut', leaf: 99 }
}

type Command = (job: Job) => Next

/** Every command with arguments of which many make no sense. */
const commands: Record<string, fc.Arbitrary<Command>> = {
  renameJob: fc.string({ maxLength: 300 }).map((name) => (job) => renameJob(job, name)),
  setUnit: fc.constantFrom('mm' as const, 'in' as const).map((unit) => (job) => setUnit(job, unit)),
  changeShop: fc.tuple(odd, odd).map(
    ([knot, sliver]) =>
      (job) =>
        changeShop(job, { clearance: { knot }, sliver, tolerates: TEARS_HIDDEN }),
  ),
  changePressing: fc.tuple(partId, odd, fc.nat(6)).map(
    ([id, n, line]) =>
      (job) =>
        press.changePressing(job, id, { wantedThickness: n, gluedBefore: [line], method: 'cauls', glue: 'PVA' }),
  ),
  addLayer: fc.tuple(partId, fc.integer({ min: -1, max: 6 }), odd).map(
    ([id, at, thickness]) =>
      (job) =>
        press.addLayer(job, id, at, leafLayer('oak', thickness)),
  ),
  removeLayer: fc.tuple(partId, fc.nat(5)).map(
    ([id, nth]) =>
      (job) =>
        press.removeLayer(job, id, nth),
  ),
  moveLayer: fc.tuple(partId, fc.nat(5), fc.integer({ min: -1, max: 6 })).map(
    ([id, nth, to]) =>
      (job) =>
        press.moveLayer(job, id, nth, to),
  ),
  changeLayer: fc.tuple(partId, fc.nat(5), odd).map(
    ([id, nth, thickness]) =>
      (job) =>
        press.changeLayer(job, id, nth, { ...USUAL_BOARD, thickness }),
  ),
  setLayers: fc
    .tuple(
      partId,
      fc.array(
        odd.map((thickness) => leafLayer('', thickness)),
        { maxLength: 3 },
      ),
    )
    .map(
      ([id, layers]) =>
        (job) =>
          press.setLayers(job, id, layers),
    ),
  setEdge: fc.tuple(partId, fc.constantFrom('top' as const, 'left' as const), odd).map(
    ([id, side, thickness]) =>
      (job) =>
        press.setEdge(job, id, side, { edge: 'lipped after', thickness }),
  ),
  changePressRoom: fc.tuple(odd, fc.nat(20)).map(
    ([n, clamps]) =>
      (job) =>
        press.changePressRoom(job, { coreTemperature: n, hands: n, clamps: { pipe: clamps } }),
  ),
  changeDataSheet: odd.map((spread) => (job) => press.changeDataSheet(job, 'epoxy', { spread })),
  addFlitch: newFlitch.map((added) => (job) => flitch.addFlitch(job, added)),
  removeFlitch: flitchId.map((id) => (job) => flitch.removeFlitch(job, id)),
  changeFlitch: fc.tuple(flitchId, odd).map(
    ([id, n]) =>
      (job) =>
        flitch.changeFlitch(job, id, { thickness: n, endMargin: n }),
  ),
  'changeFlitch, figure': fc.tuple(flitchId, fc.constantFrom<Flitch['figure']>('straight', 'burl', 'crotch')).map(
    ([id, figure]) =>
      (job: Job) =>
        flitch.changeFlitch(job, id, { figure }),
  ),
  setCommonOutline: fc.tuple(flitchId, ring).map(
    ([id, outline]) =>
      (job) =>
        flitch.setCommonOutline(job, id, outline),
  ),
  setLeaves: fc.tuple(flitchId, fc.uniqueArray(leaf, { maxLength: 8 })).map(
    ([id, listed]) =>
      (job) =>
        flitch.setLeaves(job, id, listed),
  ),
  setLeafCount: fc.tuple(flitchId, fc.oneof(odd, fc.nat(9))).map(
    ([id, count]) =>
      (job) =>
        flitch.setLeafCount(job, id, count),
  ),
  setMissing: fc.tuple(numbers, odd).map(
    ([at, count]) =>
      (job) =>
        flitch.setMissing(job, at.flitch, at.leaf, count),
  ),
  setDrifts: fc.tuple(flitchId, fc.array(fc.tuple(leaf, spot), { maxLength: 3 })).map(
    ([id, drifts]) =>
      (job) =>
        flitch.setDrifts(job, id, new Map(drifts)),
  ),
  setLeafOutline: fc.tuple(numbers, fc.option(ring)).map(
    ([at, outline]) =>
      (job) =>
        setLeafOutline(job, at, outline),
  ),
  setLeafState: fc.tuple(flitchId, fc.array(leaf, { maxLength: 3 })).map(
    ([id, listed]) =>
      (job) =>
        setLeafState(job, id, listed, 'spare'),
  ),
  setLeafNote: fc.tuple(numbers, fc.string()).map(
    ([at, note]) =>
      (job) =>
        setLeafNote(job, at, note),
  ),
  setDrift: fc.tuple(fc.nat(8), spot).map(
    ([nth, drift]) =>
      (job) =>
        setDrift(job, someLeaf(job, nth), drift),
  ),
  renumberLeaf: fc.tuple(numbers, fc.oneof(odd, leaf)).map(
    ([at, to]) =>
      (job) =>
        renumberLeaf(job, at, to),
  ),
  moveOutlinePoint: fc.tuple(anyOutline, fc.nat(3), nearSpot).map(
    ([at, i, to]) =>
      (job) =>
        moveOutlinePoint(job, at, i, to),
  ),
  insertOutlinePoint: fc.tuple(anyOutline, fc.nat(4), nearSpot).map(
    ([at, i, to]) =>
      (job) =>
        insertOutlinePoint(job, at, i, to),
  ),
  removeOutlinePoint: fc.tuple(anyOutline, fc.nat(5)).map(
    ([at, i]) =>
      (job) =>
        removeOutlinePoint(job, at, i),
  ),
  addDefect: fc.tuple(numbers, defect).map(
    ([at, d]) =>
      (job) =>
        addDefect(job, at, d),
  ),
  changeDefect: fc.tuple(fc.nat(9), defect).map(([nth, d]) => (job) => {
    const { ref, id } = someDefect(job, nth)
    return changeDefect(job, ref, { ...d, id })
  }),
  removeDefect: fc.nat(9).map((nth) => (job) => {
    const { ref, id } = someDefect(job, nth)
    return removeDefect(job, ref, id)
  }),
  copyDefect: fc.tuple(fc.nat(9), leaf, leaf).map(([nth, a, b]) => (job) => {
    const { ref, id } = someDefect(job, nth)
    const copies = [
      { leaf: a, id: 'copy a' },
      { leaf: b, id: 'copy b' },
    ]
    return copyDefect(job, ref, id, copies.slice(nth % 2))
  }),
  addPart: fc.tuple(partId, odd, flitchId).map(
    ([id, width, from]) =>
      (job) =>
        addPart(job, usualPart(id, 'New', width, 300, { ...job.flitches[0]!, id: from })),
  ),
  changePart: fc.tuple(partId, odd, flitchId).map(
    ([id, n, from]) =>
      (job) =>
        changePart(job, id, { width: n, flitch: from, jointing: 'overlap' }),
  ),
  'pairParts, changePair, partThePair': fc.tuple(partId, partId, odd, fc.nat(2)).map(
    ([first, second, gap, what]) =>
      (job) =>
        what === 0
          ? pairParts(job, first, second)
          : what === 1
            ? changePair(job, job.pairs[0] ?? { first, second }, { gap, meet: 'same leaves' })
            : partThePair(job, job.pairs[0] ?? { first, second }),
  ),
  removePart: partId.map((id) => (job) => removePart(job, id)),
  duplicatePart: fc.tuple(partId, partId).map(
    ([id, copy]) =>
      (job) =>
        duplicatePart(job, id, copy, 'Copy'),
  ),
  movePart: fc.tuple(partId, odd).map(
    ([id, to]) =>
      (job) =>
        movePart(job, id, to),
  ),
  changeRecipe: fc.tuple(partId, anyRecipe).map(
    ([id, recipe]) =>
      (job) =>
        changeRecipe(job, id, recipe),
  ),
  // a whole number of leaves now and then, or hardly one would be taken
  'changeRecipe, one field': fc.tuple(partId, fc.oneof(odd, fc.constantFrom(2, 4, 6, 12))).map(
    ([id, n]) =>
      (job) =>
        changeRecipe(job, id, { firstSeam: n, count: n }),
  ),
  'addBorder, changeBorder, changeString': fc.tuple(partId, odd).map(([id, width]) => (job) => {
    const added = addBorder(job, id)
    const changed = added.ok ? changeBorder(added.value, id, { width, grain: 'along' }) : added
    return changed.ok ? changeString(changed.value, id, { species: 'holly' }) : changed
  }),
  turnWindow: fc.tuple(partId, odd).map(
    ([id, degrees]) =>
      (job) =>
        turnWindow(job, id, degrees),
  ),
  setPosition: fc.tuple(partId, fc.option(spot)).map(
    ([id, at]) =>
      (job) =>
        setPosition(job, id, 'all', at),
  ),
  chooseLeaf: fc.tuple(partId, cell, fc.option(leaf)).map(
    ([id, c, n]) =>
      (job) =>
        chooseLeaf(job, id, c, n),
  ),
  swapLeaves: fc.tuple(partId, cell, cell, leaf, leaf).map(
    ([id, a, b, m, n]) =>
      (job) =>
        swapLeaves(job, id, a, b, m, n),
  ),
  clearChosen: partId.map((id) => (job) => clearChosen(job, id)),
  setMakeUp: fc.tuple(partId, fc.oneof(fc.constant('run'), cell), fc.option(anyMakeUp)).map(
    ([id, c, makeUp]) =>
      (job: Job) =>
        setMakeUp(job, id, c, makeUp),
  ),
  setNudge: fc.tuple(partId, cell, leaf, spot).map(
    ([id, c, n, by]) =>
      (job) =>
        setNudge(job, id, c, { leaf: n, by }),
  ),
}

/** Those that say how something is to be: said twice, they change nothing. */
const settling = new Set([
  ...['renameJob', 'setUnit', 'changeShop', 'changeFlitch', 'setLeaves', 'setLeafCount', 'setMissing', 'setDrifts'],
  ...['setLeafState', 'setLeafNote', 'setDrift', 'movePart', 'changePart', 'changeRecipe', 'changeRecipe, one field'],
  ...['changeFlitch, figure', 'turnWindow', 'setPosition', 'chooseLeaf', 'swapLeaves', 'clearChosen', 'setNudge'],
  'addBorder, changeBorder, changeString',
])

describe('every command', () => {
  it.each(Object.keys(commands))('[J13, J14] %s', (name) => {
    const seen = { taken: 0, refused: 0 }
    fc.assert(
      fc.property(anyJob, commands[name]!, (job, command) => {
        const before = writeJob(job)
        const next = command(job)
        expect(writeJob(job)).toBe(before)
        if (!next.ok) {
          seen.refused++
          expect(commandSentence(next.reason)).toMatch(/^[A-Z].*\.$/s)
          expect(commandSentence(next.reason)).not.toMatch(/undefined|null|\[object/)
          return
        }
        seen.taken++
        const read = readJob(writeJob(next.value))
        expect(read).toEqual({ ok: true, value: next.value })
        if (settling.has(name)) expect((command(next.value) as { value: Job }).value).toBe(next.value)
      }),
      // always the same cases, so that each command is sure to be both taken and refused
      { numRuns: 60, seed: 26 },
    )
    expect(seen.taken).toBeGreaterThan(0)
  })
})
