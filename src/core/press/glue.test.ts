/**
 * [W9] Glue is the sum over this pressing's glue lines of area x spread x (1 + loss), in whatever unit.
 * [W15] A glue too cold, too quick or too soft for its task is refused or marked, with the reason in words; contact
 *   cement is refused for every task.
 * [W16] What counts for cold is the core and the glue line, not the air.
 */
import { describe, expect, it } from 'vitest'
import { chooseGlue, judgeGlue, type GlueTask } from './choose-glue'
import { amountSentence, coatingSentence, glueLines, glueNeed } from './glue-amount'
import { GLUE_NAMES, glueInUse } from './glues'
import { minutesToPressure, openSentence, openVerdict, panelsInTime } from './open-time'
import { pressTimeSentences } from './press-time'
import { NO_DATA_SHEET, type GlueName } from './pressing'
import { usualPressing } from './usual-pressing'

const usual = (name: GlueName) => glueInUse(name, NO_DATA_SHEET)

const DOOR: GlueTask = {
  squareMetres: 0.4,
  panels: 1,
  longestSide: 560,
  method: 'bag',
  curved: false,
  noSingleGrain: false,
  oily: false,
  coreTemperature: 21,
  hands: 1,
}
const verdictOf = (name: GlueName, task: Partial<GlueTask>) => judgeGlue(usual(name), { ...DOOR, ...task })

describe('which glue', () => {
  it.each([
    { name: 'plastic resin, powder', task: {}, verdict: 'suits', because: /^$/ },
    {
      name: 'plastic resin, powder',
      task: { coreTemperature: 20 },
      verdict: 'no',
      because: /needs 21 °C \(70 °F\) in the core and the glue line/,
    },
    {
      name: 'plastic resin, powder',
      task: { squareMetres: 6, panels: 4 },
      verdict: 'no',
      because: /longer than the glue stays open/,
    },
    { name: 'plastic resin, powder', task: { squareMetres: 6, panels: 4, hands: 4 }, verdict: 'suits', because: /^$/ },
    { name: 'PVA', task: { coreTemperature: 12 }, verdict: 'no', because: /dry to chalk/ },
    { name: 'PVA', task: {}, verdict: 'with care', because: /depending on the kind/ },
    { name: 'PVA', task: { longestSide: 1500 }, verdict: 'with care', because: /gives with time/ },
    { name: 'PVA', task: { curved: true }, verdict: 'no', because: /spring back/ },
    { name: 'epoxy', task: {}, verdict: 'with care', because: /allergic/ },
    { name: 'hide', task: {}, verdict: 'with care', because: /gels/ },
    { name: 'hide', task: { method: 'leaf by leaf' }, verdict: 'suits', because: /^$/ },
    { name: 'epoxy', task: { method: 'leaf by leaf' }, verdict: 'no', because: /only hide glue/ },
    { name: 'contact cement', task: {}, verdict: 'no', because: /never hardens/ },
    { name: 'plastic resin, liquid', task: { oily: true }, verdict: 'with care', because: /oily/ },
  ] as { name: GlueName; task: Partial<GlueTask>; verdict: string; because: RegExp }[])(
    '[W15] $name for $task: $verdict',
    ({ name, task, verdict, because }) => {
      const found = verdictOf(name, task)
      expect(found.verdict).toBe(verdict)
      expect(found.reasons.join(' ')).toMatch(because)
    },
  )

  it('[W15] the fittest come first, contact cement never does', () => {
    const all = chooseGlue(DOOR)
    expect(all.map(({ glue }) => glue).sort()).toEqual([...GLUE_NAMES].sort())
    const ranks = all.map(({ verdict }) => ['suits', 'with care', 'no'].indexOf(verdict))
    expect(ranks).toEqual([...ranks].sort())
    for (const method of ['bag', 'cauls', 'leaf by leaf'] as const)
      expect(chooseGlue({ ...DOOR, method }).find(({ glue }) => glue === 'contact cement')?.verdict).toBe('no')
  })

  it('[W16] a data sheet that allows the cold is believed', () => {
    const own = glueInUse('plastic resin, liquid', { ...NO_DATA_SHEET, leastTemperature: 15 })
    expect(judgeGlue(own, { ...DOOR, coreTemperature: 16 }).verdict).toBe('suits')
    expect(judgeGlue(usual('plastic resin, liquid'), { ...DOOR, coreTemperature: 16 }).verdict).toBe('no')
  })
})

describe('open time', () => {
  it('three minutes a square metre, two a panel, three to close the bag', () => {
    expect(minutesToPressure(2, 2, 'bag')).toBe(13)
    expect(minutesToPressure(2, 2, 'bag', 2)).toBe(8)
    expect(minutesToPressure(2, 2, 'cauls')).toBe(22)
  })

  it.each([
    { minutes: 5, verdict: 'in time' },
    { minutes: 5.1, verdict: 'tight' },
    { minutes: 30, verdict: 'tight' },
    { minutes: 31, verdict: 'too late' },
  ])('PVA and $minutes min: $verdict', ({ minutes, verdict }) =>
    expect(openVerdict(usual('PVA'), minutes)).toBe(verdict),
  )

  it('says how many panels can be closed in time, and no more', () => {
    const glue = usual('plastic resin, powder')
    const most = panelsInTime(glue, 0.5, 'bag')
    expect(most).toBe(4)
    expect(openVerdict(glue, minutesToPressure(0.5 * most, most, 'bag'))).toBe('in time')
    expect(openVerdict(glue, minutesToPressure(0.5 * (most + 1), most + 1, 'bag'))).not.toBe('in time')
    expect(openSentence(glue, 26)).toBe(
      'Spreading and closing takes about 26 min, longer than the glue stays open (20 min): press fewer panels at once, take a slower glue or a second pair of hands.',
    )
  })
})

describe('amount', () => {
  const { layers } = usualPressing('walnut', 0.6)

  it('[W9] a glue line lies between any two sheets, less those made before; typed glue lines are no sheets', () => {
    expect(glueLines({ layers, gluedBefore: [] })).toEqual([0, 1])
    expect(glueLines({ layers, gluedBefore: [1] })).toEqual([0])
    const typed = layers.flatMap((layer) => [layer, { kind: 'glue line', thickness: 0.1 } as const]).slice(0, -1)
    expect(glueLines({ layers: typed, gluedBefore: [] })).toEqual([0, 1])
  })

  it('[W9] doubles with the area and the lines', () => {
    const once = glueNeed([0], 5e5, usual('epoxy'))
    expect(glueNeed([0, 1], 5e5, usual('epoxy')).grams).toBeCloseTo(2 * once.grams, 9)
    expect(glueNeed([0], 1e6, usual('epoxy')).grams).toBeCloseTo(2 * once.grams, 9)
    expect(once.grams).toBeCloseTo(0.5 * 200 * 1.1, 9)
  })

  it('[W9] is told rounded up, with the mix', () => {
    const glue = usual('plastic resin, powder')
    expect(amountSentence(glueNeed([0, 1], 5e5, glue), glue)).toBe(
      'For 2 glue lines: 190 g, 150 ml or 5.1 US fl oz of plastic resin, at 170 g/m² (35 lb/1000 ft²). Mix 120 g of powder with 70 g of water.',
    )
    expect(amountSentence(glueNeed([0], 5e5, usual('epoxy')), usual('epoxy'))).toContain('by the ratio on its sheet')
    const own = glueInUse('epoxy', { ...NO_DATA_SHEET, ratio: [100, 45] })
    expect(amountSentence(glueNeed([0], 5e5, own), own)).toContain('Mix 80 g of resin with 35 g of hardener')
  })

  it.each(['PVA', 'plastic resin, powder', 'plastic resin, liquid'] as const)('%s goes on the core only', (name) =>
    expect(coatingSentence(usual(name))).toContain('never on the raw show leaf'),
  )
})

describe('time under pressure', () => {
  it('[W16] tells hours at the core’s temperature, then days to stand', () => {
    const [press, stand] = pressTimeSentences(usual('plastic resin, powder'), 38)
    expect(press).toContain('3½ h under pressure')
    expect(stand).toContain('air on both sides for 2 days')
  })

  it('[W16] too cold: says so instead of a time', () =>
    expect(pressTimeSentences(usual('plastic resin, powder'), 18)).toEqual([
      'The core is at 18 °C (64 °F); plastic resin needs 21 °C (70 °F) in the core and the glue line, whatever the air has: it won’t cure. Warm the cores right through first.',
    ]))
})
