/**
 * Rules.
 * J29 What is done to an edge changes the core as pressed in the same step, and what the edge has to be sawn off stays
 *     as far as there is room for it.
 * J30 Leaves of the flitch that lie in a build-up follow the flitch; other veneers stay.
 * W26 What is seriously wrong with the gluing of a part is a finding of the press, with a remedy where there is one.
 * J31 A glue line made before goes along with the sheets on both its sides, and with no others.
 */
import { describe, expect, it } from 'vitest'
import { SAMPLE } from '../../../tests/generators/sample-job'
import { pressFindingSentence, pressRemedyLabel } from '../checks/press-wording'
import { derive } from '../derive'
import { withoutMemory } from '../fit/answers'
import type { Job } from '../job/job'
import { leafLayer, USUAL_BOARD } from '../press/usual-pressing'
import type { Next } from './change-within'
import { commandSentence } from './command-trouble'
import { changeRecipe } from './face-commands'
import { changeFlitch } from './flitch-commands'
import { changePart } from './part-commands'
import * as press from './press-commands'

function taken(next: Next): Job {
  if (!next.ok) throw new Error(commandSentence(next.reason))
  return next.value
}
const sentence = (next: Next) => (next.ok ? 'taken' : commandSentence(next.reason, (mm) => `${mm / 25.4} in`))
const door = SAMPLE.parts[0]!
const doorOf = (next: Next) => taken(next).parts[0]!
const pressingOf = (next: Next) => doorOf(next).pressing

describe('edges', () => {
  const over = taken(changePart(SAMPLE, 'door', { core: { top: 6, right: 6, bottom: 6, left: 6 } }))

  it.each([
    { work: { edge: 'lipped before', thickness: 8 } as const, core: 4 },
    { work: { edge: 'lipped before', thickness: 20 } as const, core: 6 },
    { work: { edge: 'lipped after', thickness: 8 } as const, core: -2 },
    { work: { edge: 'edge veneer first', thickness: 0.6 } as const, core: 0 },
    { work: { edge: 'edge veneer last', thickness: 0.5 } as const, core: 5.5 },
    { work: { edge: 'bare' } as const, core: 6 },
  ])('[J29] $work.edge, $work.thickness mm: the core as pressed ends $core mm out', ({ work, core }) => {
    const door = doorOf(press.setEdge(over, 'door', 'left', work))
    expect(door.core).toEqual({ top: 6, right: 6, bottom: 6, left: core })
    expect(door.pressing.edges.left).toEqual(work)
    expect(door.pressing.edges.right).toEqual({ edge: 'bare' })
  })

  it('[J29] a finished core stays finished under a lipping put on first, and shrinks under one put on last', () => {
    const lipped = (edge: 'lipped before' | 'lipped after') =>
      doorOf(press.setEdge(SAMPLE, 'door', 'top', { edge, thickness: 5 })).core.top
    expect(lipped('lipped before')).toBe(0)
    expect(lipped('lipped after')).toBe(-5)
  })

  it('[J29] a round panel has one edge', () => {
    const round = taken(changePart(SAMPLE, 'door', { outline: { shape: 'circle' } }))
    const door = doorOf(press.setEdge(round, 'door', 'right', { edge: 'lipped after', thickness: 5 }))
    expect(Object.values(door.core)).toEqual([-5, -5, -5, -5])
    expect(Object.values(door.pressing.edges).map(({ edge }) => edge)).toEqual(new Array(4).fill('lipped after'))
  })
})

describe('layers', () => {
  const plain = SAMPLE.parts[0]!.pressing
  const band = leafLayer('basswood', 0.9, 0)

  it('are added, changed, moved and taken away', () => {
    const five = taken(press.addLayer(taken(press.addLayer(SAMPLE, 'door', 2, band)), 'door', 1, band))
    expect(five.parts[0]!.pressing.layers).toEqual([plain.layers[0], band, plain.layers[1], band, plain.layers[2]])
    expect(pressingOf(press.moveLayer(five, 'door', 1, 9)).layers.at(-1)).toBe(band)
    expect(pressingOf(press.removeLayer(SAMPLE, 'door', 2)).layers).toEqual(plain.layers.slice(0, 2))
    const thin = { ...USUAL_BOARD, thickness: 12 }
    expect(pressingOf(press.changeLayer(SAMPLE, 'door', 1, thin)).layers[1]).toBe(thin)
    expect(sentence(press.removeLayer(SAMPLE, 'door', 3))).toBe('There is no layer “4” any more.')
  })

  it('[W24] the last one stays, and a thickness that can’t be is refused in the unit of the job', () => {
    const one = taken(press.setLayers(SAMPLE, 'door', [band]))
    expect(sentence(press.removeLayer(one, 'door', 0))).toBe(
      'Part 1, “Door”: pressing: the number of layers is 0; it must be 1 to 40.',
    )
    expect(sentence(press.changeLayer(one, 'door', 0, { ...band, thickness: 254 }))).toMatch(
      /^Part 1, “Door”: pressing: layer 1’s thickness is 10 in; it must be .* in to 7\.87\d* in\.$/,
    )
  })

  it('[J31] lines made before follow their sheets', () => {
    const boards = [0, 1, 2].map((i) => ({ ...USUAL_BOARD, thickness: 6 + i }))
    const stack = taken(press.setLayers(SAMPLE, 'door', [band, ...boards, { ...band, thickness: 1 }]))
    const glued = taken(press.changePressing(stack, 'door', { gluedBefore: [1, 2] }))
    const lines = (next: Next) => pressingOf(next).gluedBefore
    expect(lines(press.addLayer(glued, 'door', 1, leafLayer('oak', 1)))).toEqual([2, 3])
    expect(lines(press.addLayer(glued, 'door', 2, leafLayer('oak', 1)))).toEqual([3])
    expect(lines(press.addLayer(glued, 'door', 5, leafLayer('oak', 1)))).toEqual([1, 2])
    expect(lines(press.removeLayer(glued, 'door', 0))).toEqual([0, 1])
    expect(lines(press.removeLayer(glued, 'door', 2))).toEqual([])
    expect(lines(press.moveLayer(glued, 'door', 3, 4))).toEqual([1])
    expect(sentence(press.changePressing(glued, 'door', { gluedBefore: [4] }))).toContain('is number 4; there are 4')
  })
})

describe('what follows', () => {
  it('[J30] leaves of the flitch follow its thickness and species, other veneers stay', () => {
    const mixed = taken(press.addLayer(SAMPLE, 'door', 1, leafLayer('basswood', 0.9, 0)))
    const next = taken(changeFlitch(mixed, 'walnut', { thickness: 1.2, species: 'black walnut' }))
    const { layers } = next.parts[0]!.pressing
    expect(layers.map(({ thickness }) => thickness)).toEqual([1.2, 0.9, 18, 1.2])
    expect(layers[0]).toMatchObject({ species: 'black walnut' })
    expect(next.parts[1]).toBe(mixed.parts[1])
    expect(pressingOf(changePart(next, 'door', { flitch: 'maple' })).layers.map(({ thickness }) => thickness)).toEqual([
      0.6, 0.9, 18, 0.6,
    ])
  })

  it('[J30] a face laid as a sunburst has no single grain, and has one again when it is laid in strips', () => {
    const sunburst = taken(changeRecipe(SAMPLE, 'door', { pattern: 'radial' }))
    expect(sunburst.parts[0]!.pressing.layers[0]).toMatchObject({ grain: 'no single grain' })
    expect(pressingOf(changeRecipe(sunburst, 'door', { pattern: 'strips' })).layers[0]).toMatchObject({ grain: 90 })
  })
})

describe('findings of the press', () => {
  const found = (job: Job) => derive(job, withoutMemory).parts[0]!.pressFindings
  const told = (job: Job) =>
    found(job).map((finding) => pressFindingSentence(finding, job.parts[0]!.pressing.layers, 'mm'))

  it('[W26] a plain part has none', () => expect(found(SAMPLE)).toEqual([]))

  it('[W26] without a backer it is not balanced, and the remedy puts one on', () => {
    const bare = taken(press.removeLayer(SAMPLE, 'door', 2))
    expect(told(bare)).toEqual([
      'The panel is not balanced. There is nothing on the back: glue on a backer like the face, 0.6 mm, grain along the length, in the same pressing.',
    ])
    const [remedy] = found(bare)[0]!.remedies
    expect(pressRemedyLabel(remedy!)).toBe('Put a backer on')
    expect(pressingOf(press.applyPressRemedy(bare, 'door', remedy!))).toEqual(door.pressing)
  })

  it('[W26] a glue too cold for the shop, and one that is not', () => {
    const cold = taken(press.changePressRoom(SAMPLE, { coreTemperature: 16 }))
    expect(told(cold)).toEqual([
      'The cores are at 16 °C (61 °F), and plastic resin needs 21 °C (70 °F) in core and glue line. Warm the cores right through, or take another glue.',
    ])
    const [remedy] = found(cold)[0]!.remedies
    expect(found(taken(press.applyPressRemedy(cold, 'door', remedy!)))).toEqual([])
    const read = taken(press.changeDataSheet(cold, 'plastic resin, powder', { leastTemperature: 15 }))
    expect(found(read)).toEqual([])
  })

  it('[W26] a panel too large for the bag goes between cauls', () => {
    const large = taken(changePart(SAMPLE, 'door', { width: 1400, length: 2700 }))
    expect(told(large)).toContain(
      'The core is 260 mm too large for the platen. Take a larger platen, or press between cauls.',
    )
    const mended = taken(press.applyPressRemedy(large, 'door', { remedy: 'method', method: 'cauls' }))
    expect(found(mended).filter(({ code }) => code === 'fit')).toEqual([])
  })

  it('[W26] a glue that is not made for the work', () => {
    const hammered = taken(press.changePressing(SAMPLE, 'door', { method: 'leaf by leaf' }))
    expect(told(hammered)[0]).toContain('only hide glue does')
    expect(found(hammered)[0]!.remedies).toEqual([{ remedy: 'glue', glue: 'hide' }])
  })

  it('[W26] the face has none of it: a cold shop is no reason not to cut', () => {
    const cold = taken(press.changePressRoom(SAMPLE, { coreTemperature: 16 }))
    expect(derive(cold, withoutMemory).parts[0]!.findings).toEqual(derive(SAMPLE, withoutMemory).parts[0]!.findings)
  })
})

describe('the press room', () => {
  it('changes a field, a kind of clamp, a figure of a data sheet', () => {
    const room = taken(press.changePressRoom(SAMPLE, { coreTemperature: 16, clamps: { 'F-clamp': 12 } })).pressRoom
    expect(room).toEqual({ ...SAMPLE.pressRoom, coreTemperature: 16, clamps: { ...room.clamps, 'F-clamp': 12 } })
    const read = taken(press.changeDataSheet(SAMPLE, 'PVA', { spread: 150 }))
    expect(read.pressRoom.dataSheets.PVA).toMatchObject({ spread: 150, openMinutes: null })
    expect(taken(press.changeDataSheet(read, 'PVA', { spread: null })).pressRoom.dataSheets).toEqual({})
    expect(press.changeDataSheet(read, 'PVA', { spread: 150 })).toEqual({ ok: true, value: read })
  })

  it('[W24] refuses what can’t be', () => {
    expect(sentence(press.changePressRoom(SAMPLE, { coreTemperature: 300 }))).toBe(
      'The press room: the temperature of the cores is 300 °C; it must be -20 to 60 °C.',
    )
    expect(sentence(press.changeDataSheet(SAMPLE, 'hide', { cureDays: -1 }))).toContain('data sheet of hide is -1 days')
  })
})
