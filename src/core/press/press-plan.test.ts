/**
 * [W22] The timeline holds the steps in the order of work; hands work by the day, glue and wood by the clock.
 * [W23] Cautions stand at the step where they apply and fit the glue, the way of pressing and the wood.
 * [W24] A number that can't be is refused in a sentence with its name, its value and the limits.
 * [W25] One call plans a pressing; leaf by leaf nothing of the bag is told.
 */
import { describe, expect, it } from 'vitest'
import { CAUTIONS, cautionsAt, FIRST_OF_ALL } from './cautions'
import { GLUE_NAMES } from './glues'
import { grouped, showForce, showHours, showTemperature } from './measures'
import { planPressing, type PressTask } from './press-plan'
import { pressingTroubles, roomTroubles } from './press-trouble'
import { NO_DATA_SHEET, type Pressing } from './pressing'
import { STEPS } from './steps'
import { stepSentence, timelineOf, type JobSize } from './timeline'
import { leafLayer, USUAL_ROOM, usualPressing } from './usual-pressing'

const PLAIN = usualPressing('black walnut', 0.6)
const TASK: PressTask = {
  pressing: PLAIN,
  room: USUAL_ROOM,
  panel: { width: 372, length: 560 },
  core: { top: 6, right: 6, bottom: 6, left: 6 },
  overhang: { top: 10, right: 6, bottom: 10, left: 6 },
  panels: 1,
  borders: [-186, 0, 186],
  leaf: { width: 300, length: 2400 },
  unit: 'mm',
}
const plan = (change: Partial<Pressing>, task: Partial<PressTask> = {}) =>
  planPressing({ ...TASK, ...task, pressing: { ...PLAIN, ...change } })

const JOB: JobSize = {
  parts: 4,
  leaves: 24,
  seams: 8,
  seamLength: 5000,
  squareMetres: 1.2,
  edges: 4,
  flatten: true,
  loads: 1,
  pressHours: 13,
  cureDays: 2,
}

describe('timeline', () => {
  it('[W22] the steps in order, and their hours added up', () => {
    const { steps, hands } = timelineOf(JOB)
    const order = STEPS.map(({ step }) => step)
    expect(steps.map(({ step }) => step)).toEqual(order)
    expect(steps.reduce((sum, step) => sum + step.hands, 0)).toBeCloseTo(hands, 12)
  })

  it('[W22] leaves out what there is not', () => {
    const steps = timelineOf({ ...JOB, flatten: false, edges: 0 }).steps.map(({ step }) => step)
    expect(steps).not.toContain('flatten')
    expect(steps).not.toContain('edges')
  })

  it('[W22] waits by the clock: a second load adds its press time, a longer cure its days', () => {
    const { days } = timelineOf(JOB)
    expect(timelineOf({ ...JOB, cureDays: 5 }).days).toBe(days + 3)
    expect(timelineOf({ ...JOB, loads: 4 }).days).toBeGreaterThan(days)
    // flattening and drying two days each, pressing, standing two: a working week and a half at least
    expect(days).toBeGreaterThanOrEqual(7)
    expect(days).toBeLessThan(14)
  })

  it('[W22] hands by the day: more than two days of work end on the third', () => {
    const work = {
      ...JOB,
      flatten: false,
      edges: 0,
      cureDays: 0,
      pressHours: 0,
      loads: 0,
      seams: 0,
      seamLength: 0,
      leaves: 0,
      squareMetres: 0,
    }
    const { hands, days } = timelineOf({ ...work, parts: 23 })
    expect(hands).toBeGreaterThan(16)
    expect(hands).toBeLessThan(24)
    // one day's wait for drying, then whole days of eight hours
    expect(days).toBe(4)
  })

  it('[W22] a step in words', () => {
    const press = timelineOf(JOB).steps.find(({ step }) => step === 'press')!
    expect(stepSentence(press)).toBe('Press, face and back at once: 30 min of hands, then 13 h of waiting.')
  })
})

describe('cautions', () => {
  const at = (step: (typeof STEPS)[number]['step'], rest: object = {}) =>
    cautionsAt(step, { glue: 'PVA', method: 'bag', warmed: false, oily: false, ...rest })
      .map(({ words }) => words)
      .join(' ')

  it('[W23] the data sheet and local rules come first', () =>
    expect(FIRST_OF_ALL).toMatch(/data sheet and the local rules come first/))

  it('[W23] each glue has its own', () => {
    expect(at('press')).not.toMatch(/Epoxy|isocyanates|formaldehyde|vapour/)
    expect(at('press', { glue: 'epoxy' })).toMatch(/nitrile gloves/)
    expect(at('press', { glue: 'polyurethane' })).toMatch(/isocyanates/)
    expect(at('press', { glue: 'contact cement' })).toMatch(/vapour burns/)
    expect(at('press', { glue: 'plastic resin, powder' })).toMatch(/formaldehyde/)
  })

  it('[W23] the bag’s only with the bag, warming’s only when warmed, oily woods’ only with them', () => {
    expect(at('press')).toMatch(/fingers out/)
    expect(at('press', { method: 'cauls' })).not.toMatch(/fingers out/)
    expect(at('press')).not.toMatch(/blankets/)
    expect(at('press', { warmed: true })).toMatch(/blankets/)
    expect(at('sand')).not.toMatch(/CITES/)
    expect(at('sand', { oily: true })).toMatch(/CITES/)
  })

  it('[W23] every caution has steps that exist, and a source', () => {
    const names = new Set(STEPS.map(({ step }) => step))
    for (const { steps, source, glues } of CAUTIONS) {
      expect(steps.length).toBeGreaterThan(0)
      expect(steps.every((step) => names.has(step))).toBe(true)
      expect(source).not.toBe('')
      for (const glue of glues ?? []) expect(GLUE_NAMES).toContain(glue)
    }
  })
})

describe('bad input', () => {
  it('[W24] what is usual has no trouble', () => {
    expect(pressingTroubles(PLAIN)).toEqual([])
    expect(roomTroubles(USUAL_ROOM)).toEqual([])
  })

  it.each([
    { change: { layers: [] }, says: 'The number of layers is 0; it must be 1 to 40.' },
    {
      change: { layers: [{ ...PLAIN.layers[0]!, thickness: -1 }] },
      says: 'Layer 1’s thickness is −1 mm; it must be 0.01 mm to 200 mm.',
    },
    {
      change: { layers: [{ ...PLAIN.layers[1]!, plies: 7 } as Pressing['layers'][number]] },
      says: 'Layer 1 is MDF, which has no plies: leave their number empty.',
    },
    { change: { wantedThickness: NaN }, says: 'The thickness wanted is NaN mm; it must be 0.01 mm to 200 mm.' },
    {
      change: { gluedBefore: [0, 2] },
      says: 'The glue line made before is number 2; there are 2, counted from 0, each named once.',
    },
    {
      change: { curve: { by: 'rise', rise: 20, chord: Infinity, show: 'round' } as const },
      says: 'The chord is Infinity mm; it must be 0 mm to 20000 mm.',
    },
    {
      change: { edges: { ...PLAIN.edges, left: { edge: 'lipped before', thickness: 0 } as const } },
      says: 'The thickness of what goes on the left edge is 0 mm; it must be 0.1 mm to 100 mm.',
    },
  ])('[W24] $says', ({ change, says }) => expect(pressingTroubles({ ...PLAIN, ...change })).toEqual([says]))

  it.each([
    {
      change: { driest: { temperature: 21, humidity: 30 } },
      says: 'The humidity in the driest season is 30; it must be 0.01 to 0.98.',
    },
    {
      change: { dataSheets: { PVA: { ...NO_DATA_SHEET, spread: 5 } } },
      says: 'The spread from the data sheet of PVA is 5 g/m²; it must be 20 to 1000 g/m².',
    },
    {
      change: { dataSheets: { epoxy: { ...NO_DATA_SHEET, ratio: [0, 1] as const } } },
      says: 'The mix of 0 to 1 from the data sheet of epoxy can’t be: both parts must be above 0, at most 1000.',
    },
    { change: { hands: 1.5 }, says: 'The number of people at the press is 1.5; it must be a whole number.' },
    { change: { coreTemperature: 300 }, says: 'The temperature of the cores is 300 °C; it must be -20 to 60 °C.' },
    { change: { bag: { width: 1370, length: 0 } }, says: 'The bag’s length is 0 mm; it must be 50 mm to 20000 mm.' },
  ])('[W24] $says', ({ change, says }) => expect(roomTroubles({ ...USUAL_ROOM, ...change })).toEqual([says]))
})

describe('the plan', () => {
  it('[W25] a plain door: balanced, flat, the glue suits, nothing to object', () => {
    const found = plan({})
    expect(found.balance.verdict).toBe('balanced')
    expect(found.warp.driest.warp).toEqual({ acrossWidth: 0, alongLength: 0, twist: 0 })
    expect(found.glue.verdict).toEqual({ glue: 'plastic resin, powder', verdict: 'suits', reasons: [] })
    expect(found.press.some((line) => /too large|too little|snaps|bare/.test(line))).toBe(false)
  })

  it('[W25] the backer taken away: unbalanced, and the warp is told with its bound', () => {
    const found = plan({ layers: PLAIN.layers.slice(0, 2) })
    expect(found.balance.verdict).toBe('unbalanced')
    expect(found.warp.driest.driver).toBe(0)
    expect(found.warp.sentences.join(' ')).toMatch(/at most over its width.*it will be less than this/)
    expect(found.glue.sentences.join(' ')).not.toContain('Glue face and back in one pressing')
  })

  it('[W25] a cold core refuses the glue; a large panel is too large for the platen', () => {
    expect(plan({}, { room: { ...USUAL_ROOM, coreTemperature: 16 } }).glue.verdict.verdict).toBe('no')
    expect(plan({}, { panel: { width: 1300, length: 1400 } }).press.join(' ')).toContain('too large for the platen')
  })

  it('[W25] leaf by leaf nothing of the bag is told', () => {
    const found = plan({ method: 'leaf by leaf', glue: 'hide' })
    expect(found.press[0]).toBe('Draw the seams on the core, from its left edge: 186 mm.')
    expect(found.fit).toEqual([])
    expect(found.press.join(' ')).not.toMatch(/bag|platen|caul/)
    expect(plan({ method: 'leaf by leaf', glue: 'hide' }, { borders: null }).press.join(' ')).toContain(
      'nearest the centre',
    )
    expect(found.glue.verdict.verdict).toBe('suits')
    expect(JSON.stringify(found.cautions)).not.toContain('The bag presses')
  })

  it('[W25] says when it does not know a wood, and when its figures are uncertain', () => {
    const of = (species: string) =>
      plan({ layers: [leafLayer(species, 0.6), PLAIN.layers[1]!, leafLayer(species, 0.6)] }).warp.sentences.slice(4)
    expect(of('black walnut')).toEqual([])
    expect(of('maple')).toEqual([
      'There are no figures for “maple”, or it could be several woods: it is reckoned as a middling hardwood. Try its botanical name.',
    ])
    expect(of('teak')).toEqual(['The figures for teak are uncertain: its tables do not agree.'])
  })

  it('[W25] panels closed together share the pot', () => {
    const one = plan({}).glue.need.grams
    expect(plan({}, { panels: 4 }).glue.need.grams).toBeCloseTo(4 * one, 9)
  })
})

describe('measures in words', () => {
  it.each([
    { hours: 0.5, words: '30 min' },
    { hours: 3.5, words: '3½ h' },
    { hours: 24, words: '24 h' },
    { hours: 72, words: '3 days' },
  ])('$hours h: $words', ({ hours, words }) => expect(showHours(hours)).toBe(words))

  it('both scales', () => {
    expect(showTemperature(21.11)).toBe('21 °C (70 °F)')
    expect(showForce(62_900)).toBe('63 kN (14\u2009100 lbf)')
    expect(showForce(500)).toBe('0.5 kN (112 lbf)')
    expect(grouped(1234567)).toBe('1\u2009234\u2009567')
  })
})
