/**
 * Rules.
 * J20 Positions survive another size; another flitch makes positions, chosen leaves and nudges void.
 * J21 Another pattern keeps first leaf and spine, and makes positions, chosen leaves and nudges void.
 * J22 Cells that are named anew lose chosen leaves and nudges; within one way of naming they keep them.
 */
import { describe, expect, it } from 'vitest'
import { SAMPLE } from '../../../tests/generators/sample-job'
import type { Job } from '../job/job'
import type { Next } from './change-within'
import { commandSentence } from './command-trouble'
import {
  changeRecipe,
  chooseLeaf,
  clearChosen,
  setNudge,
  setPosition,
  swapLeaves,
  type RecipePatch,
} from './face-commands'
import { changeShop, renameJob } from './job-commands'
import { addPart, changePart, duplicatePart, forgetMeasures, measureSheet, movePart, removePart } from './part-commands'

function taken(next: Next): Job {
  if (!next.ok) throw new Error(commandSentence(next.reason))
  return next.value
}
const sentence = (next: Next) => (next.ok ? 'taken' : commandSentence(next.reason))
const door = SAMPLE.parts[0]!
const doorOf = (next: Next) => taken(next).parts.find(({ id }) => id === 'door')!

describe('a part', () => {
  it('[A5] keeps what was measured on its taped sheet, place by place', () => {
    const bare = taken(forgetMeasures(SAMPLE, 'door'))
    const one = taken(measureSheet(bare, 'door', 'top left', 193.5))
    expect(doorOf(measureSheet(one, 'door', 'bottom left', 194)).asCut).toEqual({
      'top left': 193.5,
      'bottom left': 194,
    })
    expect(taken(measureSheet(one, 'door', 'top left', 193.5))).toBe(one)
    expect(doorOf(measureSheet(one, 'door', 'top left', null)).asCut).toEqual({})
    expect(taken(forgetMeasures(bare, 'door'))).toBe(bare)
    expect(sentence(measureSheet(one, 'door', 'top left', 0))).toMatch(/measured|0/)
    // a copy has a sheet of its own, which nobody has measured
    expect(taken(duplicatePart(one, 'door', 'copy', 'Copy')).parts.find(({ id }) => id === 'copy')!.asCut).toEqual({})
  })

  it('[J20] keeps its positions when its size changes', () => {
    expect(doorOf(changePart(SAMPLE, 'door', { width: 640 }))).toEqual({ ...door, width: 640 })
  })

  it('[J20] loses what was said of leaves with its flitch', () => {
    const changed = doorOf(changePart(SAMPLE, 'door', { flitch: 'maple' }))
    expect(changed).toMatchObject({ flitch: 'maple', positions: {}, chosen: {}, nudges: {} })
    expect(changed.recipe).toEqual({ ...door.recipe, firstLeaf: 11 })
    expect(sentence(changePart(SAMPLE, 'door', { flitch: 'oak' }))).toBe(
      'Part 1, “Door”: flitch names the flitch “oak”, which is not in this job.',
    )
  })

  it('takes the usual allowance of another way of jointing, unless one is given', () => {
    expect(doorOf(changePart(SAMPLE, 'door', { jointing: 'overlap' })).allowance).toBe(6)
    expect(doorOf(changePart(SAMPLE, 'door', { jointing: 'overlap', allowance: 7 })).allowance).toBe(7)
    expect(doorOf(changePart(SAMPLE, 'door', { width: 400, allowance: 2 })).allowance).toBe(2)
  })

  it('is copied right behind, moved and taken away', () => {
    const three = taken(duplicatePart(SAMPLE, 'door', 'door 2', 'Door, right'))
    expect(three.parts.map(({ id }) => id)).toEqual(['door', 'door 2', 'top'])
    expect(three.parts[1]).toEqual({ ...door, id: 'door 2', name: 'Door, right' })
    expect(taken(movePart(three, 'door', 2)).parts.map(({ id }) => id)).toEqual(['door 2', 'top', 'door'])
    expect(taken(movePart(three, 'top', -4)).parts.map(({ id }) => id)).toEqual(['top', 'door', 'door 2'])
    expect(taken(removePart(three, 'door')).parts.map(({ id }) => id)).toEqual(['door 2', 'top'])
    expect(sentence(duplicatePart(SAMPLE, 'door', 'top', 'Door'))).toBe('Parts: the id “top” is taken already.')
    expect(sentence(addPart(SAMPLE, { ...door, id: 'new', flitch: 'oak' }))).toMatch(/^Part 3, “Door”: flitch names/)
  })

  it('may not be larger than a shop', () => {
    expect(sentence(changePart(SAMPLE, 'door', { length: 25_000 }))).toBe(
      'Part 1, “Door”: length is 25000 mm; 20000 mm is the most.',
    )
    expect(commandSentence({ trouble: 'not there', thing: 'part', id: 'x' })).toBe('There is no part “x” any more.')
  })
})

describe('the recipe of a face', () => {
  it('[J21] starts anew in another pattern', () => {
    const started = taken(changeRecipe(SAMPLE, 'door', { firstLeaf: 3, spine: 'left', count: 4 }))
    expect(doorOf(changeRecipe(started, 'door', { pattern: 'radial', count: 8 }))).toMatchObject({
      recipe: { pattern: 'radial', firstLeaf: 3, spine: 'left', count: 8, numberedEnds: 'inside' },
      positions: {},
      chosen: {},
      nudges: {},
    })
  })

  it.each<{ patch: RecipePatch; kept: readonly string[] }>([
    { patch: { count: 8 }, kept: ['positions', 'chosen', 'nudges'] },
    { patch: { firstLeaf: 2 }, kept: ['positions', 'chosen', 'nudges'] },
    { patch: { arrangement: 'balance' }, kept: ['positions', 'chosen', 'nudges'] },
    { patch: { startAt: 'right' }, kept: ['positions', 'chosen', 'nudges'] },
    { patch: { arrangement: 'running' }, kept: ['positions'] },
  ])('[J22] $patch keeps $kept', ({ patch, kept }) => {
    const changed = doorOf(changeRecipe(SAMPLE, 'door', patch))
    expect(changed.recipe).toEqual({ ...door.recipe, ...patch })
    for (const field of ['positions', 'chosen', 'nudges'] as const) {
      expect(changed[field]).toEqual(kept.includes(field) ? door[field] : {})
    }
  })

  it('[J22] radial: ends turned, the apex lies elsewhere, but the leaves stay', () => {
    const radial = taken(changeRecipe(SAMPLE, 'door', { pattern: 'radial' }))
    const placed = taken(chooseLeaf(taken(setPosition(radial, 'door', 'wedges', { x: 9, y: 9 })), 'door', 'W1', 5))
    expect(doorOf(changeRecipe(placed, 'door', { numberedEnds: 'outside' }))).toMatchObject({
      positions: {},
      chosen: { W1: 5 },
    })
  })

  it('has no field that its pattern does not know', () => {
    expect(taken(changeRecipe(SAMPLE, 'door', { firstSeam: 12 }))).toBe(SAMPLE)
  })
})

describe('the leaves of a face', () => {
  it('are exchanged between two cells', () => {
    expect(doorOf(swapLeaves(SAMPLE, 'door', 'L1', 'R1', 4, 2)).chosen).toEqual({ L1: 2, R1: 4 })
    expect(sentence(swapLeaves(SAMPLE, 'door', 'L1', 'R1', 4, 20))).toBe('There is no leaf “20” any more.')
  })

  it('are chosen, and left to the run again', () => {
    expect(doorOf(chooseLeaf(SAMPLE, 'door', 'R1', 6)).chosen).toEqual({ L1: 4, R1: 6 })
    expect(doorOf(chooseLeaf(SAMPLE, 'door', 'L1', null)).chosen).toEqual({})
    const cleared = doorOf(clearChosen(SAMPLE, 'door'))
    expect(cleared.chosen).toEqual({})
    expect(cleared.nudges).toEqual({ R1: { leaf: 2, by: { x: 1, y: 0 } } })
  })

  it('are placed and nudged, and put back', () => {
    expect(doorOf(setPosition(SAMPLE, 'door', 'all', { x: 151, y: 700 })).positions).toEqual({
      all: { x: 151, y: 700 },
    })
    expect(doorOf(setPosition(SAMPLE, 'door', 'all', null)).positions).toEqual({})
    expect(doorOf(setNudge(SAMPLE, 'door', 'R1', { leaf: 2, by: { x: 0, y: 0 } })).nudges).not.toHaveProperty('R1')
    expect(taken(setNudge(SAMPLE, 'door', 'R1', { leaf: 2, by: { x: 1, y: 0 } }))).toBe(SAMPLE)
  })
})

describe('the job', () => {
  it('is renamed, and its shop changed one kind at a time', () => {
    expect(taken(renameJob(SAMPLE, 'Lamp table')).name).toBe('Lamp table')
    expect(taken(changeShop(SAMPLE, { clearance: { knot: 8 } })).shop.clearance).toEqual({
      ...SAMPLE.shop.clearance,
      knot: 8,
    })
    expect(sentence(changeShop(SAMPLE, { sliver: -1 }))).toBe('Shop, sliver is -1 mm; 0 mm is the least.')
    expect(sentence(renameJob(SAMPLE, 'x'.repeat(201)))).toBe('The job: name has 201 characters; 200 is the most.')
  })
})
