/**
 * [W7] The bag presses with what the gauge shows; a pump reaches its share of the local air.
 * [W17] Every panel that fits the platen lies in exactly one load, inside it and the gap away from the others.
 * [W18] A caul larger than the work, an overhang that snaps or leaves the edge bare, and a bag too small are told.
 */
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import {
  bagOrder,
  caulSize,
  caulTrouble,
  fitSentence,
  fitTroubles,
  loadSentence,
  overhangSentence,
  overhangTroubles,
} from './bag-advice'
import { layLoads, type LaidPanel } from './bag-load'
import { clampSentences, clampsNeeded, crownedPairs, padGrid } from './cauls'
import { USUAL_ROOM, usualPressing } from './usual-pressing'
import { pressureSentences, suctionTrouble } from './vacuum'

const PLATEN = { width: 1220, length: 2440 }
const apart = (a: LaidPanel, b: LaidPanel, gap: number): boolean =>
  a.x + a.width + gap <= b.x || b.x + b.width + gap <= a.x || a.y + a.length + gap <= b.y || b.y + b.length + gap <= a.y

describe('loads', () => {
  it('[W17] any panels', () => {
    const size = fc.integer({ min: 60, max: 2600 })
    fc.assert(
      fc.property(fc.array(fc.record({ width: size, length: size }), { maxLength: 14 }), (sizes) => {
        const panels = sizes.map((panel, i) => ({ id: `p${i}`, ...panel }))
        const { loads, tooLarge } = layLoads(panels, PLATEN, 40)
        expect([...loads.flat().map(({ id }) => id), ...tooLarge].sort()).toEqual(panels.map(({ id }) => id).sort())
        for (const load of loads) {
          for (const { id, x, y, width, length, turned } of load) {
            expect(x >= 0 && y >= 0 && x + width <= PLATEN.width && y + length <= PLATEN.length).toBe(true)
            const panel = panels.find((own) => own.id === id)!
            expect(turned ? [length, width] : [width, length]).toEqual([panel.width, panel.length])
          }
          load.forEach((a, i) => load.slice(i + 1).forEach((b) => expect(apart(a, b, 40)).toBe(true)))
        }
        const fits = ({ width, length }: { width: number; length: number }): boolean =>
          Math.min(width, length) <= PLATEN.width && Math.max(width, length) <= PLATEN.length
        expect(tooLarge).toEqual(panels.filter((panel) => !fits(panel)).map(({ id }) => id))
      }),
      { seed: 17 },
    )
  })

  it('[W17] four doors and two ends go into one bag; a long top takes the rest of it', () => {
    const panels = [
      ...['a', 'b', 'c', 'd'].map((id) => ({ id, width: 384, length: 572 })),
      ...['e', 'f'].map((id) => ({ id, width: 432, length: 652 })),
    ]
    expect(layLoads(panels, PLATEN).loads).toHaveLength(1)
    expect(layLoads([...panels, { id: 'top', width: 432, length: 1512 }], PLATEN).loads).toHaveLength(2)
    expect(loadSentence({ panels: 7, loads: 2, tooLarge: [] })).toBe('7 panels in 2 loads.')
  })

  it('[W17] a panel too large is named', () => {
    const { loads, tooLarge } = layLoads([{ id: 'table', width: 1300, length: 1300 }], PLATEN)
    expect(loads).toEqual([])
    expect(loadSentence({ panels: 1, loads: 0, tooLarge })).toBe(
      'Nothing fits the platen. Too large for the platen: table.',
    )
  })
})

describe('fit', () => {
  it('[W18] a panel may be turned to fit the platen', () => {
    const room = { platen: { width: 600, length: 1200 }, bag: { width: 800, length: 1400 } }
    expect(fitTroubles({ width: 1100, length: 500 }, 57, room)).toEqual([])
    expect(fitTroubles({ width: 1250, length: 500 }, 57, room)).toEqual([{ trouble: 'platen', over: 50 }])
  })

  it('[W18] a thick stack takes bag: 600 mm of platen, 57 of stack and 25 on both sides need 707', () => {
    const fits = (width: number) =>
      fitTroubles({ width: 500, length: 500 }, 57, { platen: { width: 600, length: 600 }, bag: { width, length: 900 } })
    expect(fits(707)).toEqual([])
    expect(fits(700)).toEqual([{ trouble: 'bag width', over: 7 }])
    expect(fitSentence(fits(700)[0]!, 'mm')).toBe(
      'With this platen and stack the bag is 7 mm too little wide: it needs 25 mm clear all round.',
    )
  })

  it('[W18] the caul is a little smaller than the core; a larger one is told', () => {
    const core = { width: 600, length: 900 }
    expect(caulSize(core).width).toBeLessThan(core.width)
    expect(caulTrouble(core, caulSize(core), 'mm')).toBeNull()
    expect(caulTrouble(core, core, 'mm')).toBeNull()
    expect(caulTrouble(core, { width: 610, length: 900 }, 'mm')).toContain('stands 10 mm over the core')
  })

  it('[W18] overhang by side: 9 mm snaps along the sides, not at the ends', () => {
    expect(overhangTroubles({ top: 10, right: 6, bottom: 10, left: 6 })).toEqual([])
    const found = overhangTroubles({ top: 9, right: 9, bottom: 4, left: 8 })
    expect(found.map(({ side, trouble }) => [side, trouble])).toEqual([
      ['right', 'snaps'],
      ['bottom', 'bare'],
    ])
    expect(overhangSentence(found[0]!, 'mm')).toBe(
      'At the right side the sheet stands 9 mm over the core: the bag folds it down and snaps it, and the crack can run in. Leave 8 mm at most.',
    )
  })

  it('a thin leaf lies on a smooth board, thick ones need none', () => {
    const { layers } = usualPressing('walnut', 0.6)
    expect(bagOrder(layers).join(' ')).toContain('smooth board on the platen')
    expect(bagOrder(usualPressing('walnut', 2).layers).join(' ')).not.toContain('smooth board on the platen')
  })
})

describe('pressure in words', () => {
  const { layers } = usualPressing('walnut', 0.6)

  it('[W7] says how much, and why that is enough', () => {
    const words = pressureSentences({ by: 'gauge', inHg: 25 }, 609.6 * 1219.2, layers, null)
    expect(words[0]).toBe('The bag presses with 85 kPa (12.3 psi), 25.0 inHg: 63 kN (14\u2009100 lbf) on this panel.')
    expect(words[1]).toContain('for that this is enough')
    expect(words).toHaveLength(2)
  })

  it('[W7] thick leaves, a weak gauge and a high place are told', () => {
    const words = pressureSentences(
      { by: 'pump', inHg: 20, altitude: 2000 },
      1e6,
      usualPressing('walnut', 2).layers,
      1.4,
    )
    expect(words[1]).toContain('asks for 1400 kPa (203.1 psi)')
    expect(words[1]).toContain('stiffer than veneer')
    expect(words[2]).toContain('look for a leak')
    expect(words[3]).toBe('At 2000 m the same pump reaches 15.7 inHg instead of 20.')
  })

  it.each([
    { suction: { by: 'gauge', inHg: 31 } as const, trouble: /31 inHg is more than all the air/ },
    { suction: { by: 'gauge', inHg: -1 } as const, trouble: /-1 inHg can’t be/ },
    { suction: { by: 'gauge', inHg: NaN } as const, trouble: /can’t be/ },
    { suction: { by: 'pump', inHg: 25, altitude: 9000 } as const, trouble: /9000 m/ },
  ])('[W7] $suction is refused', ({ suction, trouble }) => expect(suctionTrouble(suction)).toMatch(trouble))
})

describe('cauls and clamps', () => {
  const core = { width: 600, length: 1200 }

  it('counts clamps by kind: 72 kN take 25 F-clamps of 650 lbf', () => {
    expect(clampsNeeded(100, 600 * 1200)['F-clamp']).toBe(25)
    expect(clampsNeeded(100, 600 * 1200)['heavy C-clamp']).toBe(9)
  })

  it('says what those at hand give', () => {
    const words = clampSentences(core, { ...USUAL_ROOM.clamps, 'F-clamp': 12 }, 'mm')
    expect(words[1]).toBe(
      'The clamps at hand give 48 kPa (7.0 psi): too little: 100 kPa (14.5 psi) needs 25 F-clamps or 13 parallel-jaw clamps.',
    )
    expect(clampSentences(core, { ...USUAL_ROOM.clamps, 'F-clamp': 25 }, 'mm')[1]).toContain('enough for thin veneer')
  })

  it('a crowned caul every 4 in, pads that leave no gap', () => {
    expect(crownedPairs(1200)).toBe(12)
    expect(crownedPairs(100)).toBe(2)
    expect(padGrid(core, 114.3)).toEqual({ across: 6, along: 11 })
  })
})
