/**
 * [N7] Both ways from the first, the leaves round a sunburst lie 1 2 4 6 … 5 3, and no neighbours are more than two apart.
 * [N8] Burl may be turned on its leaves: seams meet as before, and how the leaf's axes lie is not told. No other figure
 *   may, nor a running match.
 * [N9] Crotch that lies with its up end down is told, piece by piece.
 */
import { describe, expect, it } from 'vitest'
import { turnWindow } from '../../src/core/commands/face-commands'
import { changeFlitch } from '../../src/core/commands/flitch-commands'
import { commandSentence } from '../../src/core/commands/command-trouble'
import { ringOrderWords } from '../../src/core/checks/ring-order-wording'
import { findingSentence } from '../../src/core/checks/wording'
import { ringOrders } from '../../src/core/fit/ring-orders'
import { USUAL_SHOP } from '../../src/core/shop'
import type { Recipe } from '../../src/core/patterns/recipe'
import { rectangle } from '../../src/core/job/usual'
import { box, chanceFrom, spread } from '../fixtures/geometry/shapes'
import { anyPattern, EVERY_PATTERN } from './any-pattern'
import {
  codesOf,
  faceOf,
  findingsOf,
  flitchOf,
  fourWay,
  jobOf,
  parquet,
  partOf,
  plainLeaves,
  radial,
  strips,
} from './job-builders'
import * as witness from './witness'

const LEAVES = plainLeaves(48).map((leaf, i) => ({ ...leaf, drift: { x: 0, y: i * 1.5 } }))
const long = flitchOf({ leaves: LEAVES })

describe('the order round a sunburst', () => {
  it.each([
    [6, [1, 2, 4, 6, 5, 3]],
    [8, [1, 2, 4, 6, 8, 7, 5, 3]],
    [7, [1, 2, 4, 6, 7, 5, 3]],
  ] as const)('[N7] of %i leaves', (count, order) => {
    const face = faceOf(
      partOf({ width: 400, length: 400, recipe: radial({ count, order: 'both ways', laying: 'clockwise' }) }),
    )
    expect(face.pieces.map(({ leaf }) => leaf!.number)).toEqual(order)
  })

  it('[N7] brings no neighbours together that are more than two leaves apart, and shares the first cut', () => {
    for (let count = 6; count <= 48; count++)
      for (const laying of ['by spine', 'clockwise', 'anticlockwise'] as const) {
        const recipe = radial({ count, order: 'both ways', laying })
        const [circle, both] = ringOrders(
          partOf({ width: 400, length: 400, recipe }),
          recipe,
          { flitch: long, shop: USUAL_SHOP },
          count,
        )!
        expect([count, both!.leaves, both!.drift, circle!.leaves, circle!.drift]).toEqual([
          count,
          2,
          3,
          count - 1,
          1.5 * (count - 1),
        ])
        expect(both!.apart).toBeLessThanOrEqual(3 * 0.6 + 1e-9)
      }
    const face = faceOf(partOf({ width: 300, length: 300, recipe: radial({ count: 8, order: 'both ways' }) }))
    const first = face.seams.find(({ depthOffset }) => depthOffset === 0)
    expect(first && first.stretches.map(({ left, right }) => [left, right].sort())).toEqual([['W1', 'W2']])
  })

  it('[N7] is told with what the other order would do', () => {
    const recipe = radial({ count: 12, order: 'both ways' })
    const orders = ringOrders(partOf({ recipe }), recipe, { flitch: long, shop: USUAL_SHOP }, 12)!
    expect(ringOrderWords(orders, 'both ways', 'mm')).toMatch(
      /^At the worst seam leaves 2 apart in the run meet: 1\.8 mm apart in the log, drifted 3 mm against each other\. In a circle they would be 11 leaves, [\d.]+ mm and 16\.5 mm\.$/,
    )
    expect(
      ringOrders(partOf({ recipe }), recipe, { flitch: flitchOf({ leaves: plainLeaves(5) }), shop: USUAL_SHOP }, 12),
    ).toBeNull()
  })
})

describe('burl', () => {
  const burl = flitchOf({ figure: 'burl', outline: rectangle(900, 900), leaves: plainLeaves(24) })
  const recipes: readonly Recipe[] = [strips({ count: 4 }), fourWay(), radial({ count: 8 }), parquet({ count: 16 })]

  it.each(recipes)('[N8] turned by any angle, a $pattern face meets at its seams as before', (recipe) => {
    const part = partOf({ width: 420, length: 400, recipe })
    const before = faceOf(part, burl)
    for (const windowTurn of [-90, 17, 145.5]) {
      const turned = faceOf({ ...part, windowTurn }, burl)
      expect(turned.seams.map(({ meets }) => meets)).toEqual(before.seams.map(({ meets }) => meets))
      turned.pieces.forEach(({ cell, leafToPanel: t, windowOnLeaf }, i) => {
        expect([cell.turn.spun, t.a * t.d - t.b * t.c < 0]).toEqual([null, cell.turn.turnedOver])
        expect(cell.turn.turnedOver).toBe(before.pieces[i]!.cell.turn.turnedOver)
        expect(witness.areaOf(windowOnLeaf)).toBeCloseTo(witness.areaOf(before.pieces[i]!.windowOnLeaf), 4)
      })
      // the first edge of the window really lies that much further round on the leaf
      const [a, b] = [directionOf(before.pieces[0]!.cell.window.ring), directionOf(turned.pieces[0]!.cell.window.ring)]
      expect(Math.cos(b - a - (windowTurn * Math.PI) / 180)).toBeCloseTo(1, 9)
    }
  })

  it('[N8] turned by a quarter asks for leaves by what then lies across them', () => {
    const flitch = flitchOf({ figure: 'burl', outline: rectangle(300, 1200), leaves: plainLeaves(24) })
    const part = partOf({ width: 1000, length: 250, recipe: strips({ arrangement: 'balance' }) })
    expect(faceOf(part, flitch).count).toBe(4)
    const lying = faceOf({ ...part, windowTurn: 90 }, flitch)
    expect([lying.count, codesOf(lying).includes('play-empty')]).toEqual([1, false])
  })

  it('[N8] alone may be turned, and not in a running match', () => {
    const part = partOf({ recipe: strips({ count: 4 }) })
    const straight = turnWindow(jobOf([part], flitchOf()), 'part', 30)
    expect(!straight.ok && commandSentence(straight.reason)).toBe(
      'Part 1, “Door”: the window is turned by 30°; a window is turned on burl alone, which has no grain line. Any other figure takes 0°.',
    )
    const running = turnWindow(jobOf([{ ...part, recipe: strips({ arrangement: 'running' }) }], burl), 'part', 30)
    expect(!running.ok && commandSentence(running.reason)).toMatch(
      /^Part 1, “Door”: the window is turned by 30°; a running match/,
    )
    const turned = turnWindow(jobOf([part], burl), 'part', 30)
    expect(turned.ok && turned.value.parts[0]!.windowTurn).toBe(30)
    const back = turned.ok && changeFlitch(turned.value, 'flitch', { figure: 'straight' })
    expect(back && back.ok && back.value.parts[0]!.windowTurn).toBe(0)
  })

  it('[N3, N8] turned, every pattern keeps its seams', () => {
    // pattern-laws turns some of all its cases; here a box, of whose grain nothing is claimed in burl
    const chance = chanceFrom(3)
    const { recipe } = anyPattern(EVERY_PATTERN.box!, chance)
    const face = faceOf(partOf({ width: 500, length: 300, recipe, windowTurn: spread(chance, 5, 80) }), burl)
    const words = findingsOf(face, 'figure-breaks').map((finding) => findingSentence(finding, 'mm'))
    expect(words.length).toBeGreaterThan(0)
    for (const sentence of words) expect(sentence).not.toContain('grain')
  })
})

const directionOf = (ring: witness.Line) => {
  // a turned-over piece has its ring reversed alike before and after
  const [p, q] = [ring[0]!, ring[1]!]
  return Math.atan2(q.y - p.y, q.x - p.x)
}

describe('crotch', () => {
  const crotch = flitchOf({ figure: 'crotch', outline: box(0, 0, 300, 1200), leaves: plainLeaves(24) })
  const told = (recipe: Recipe, upEnd: 'numbered' | 'far' = 'numbered') =>
    findingsOf(faceOf(partOf({ width: 500, length: 500, recipe }), { ...crotch, upEnd }), 'up-end-down').map(
      (finding) => findingSentence(finding, 'mm'),
    )

  it.each([
    { laid: 'a book match', recipe: strips({ count: 4 }), words: [] },
    { laid: 'a sunburst', recipe: radial({ count: 8 }), words: [] },
    {
      laid: 'a reverse slip',
      recipe: strips({ match: 'reverse slip', count: 4 }),
      words: [
        'The figure lies upside down in 2 pieces of 4: L2, R1. Crotch shows which end is up; take a match that spins no leaf, or other numbered ends.',
      ],
    },
    {
      laid: 'a four-way face',
      recipe: fourWay(),
      words: [
        'The figure lies upside down in 2 pieces of 4: BL1, BR1. Crotch shows which end is up; take a match that spins no leaf, or other numbered ends.',
      ],
    },
  ])('[N9] in $laid', ({ recipe, words }) => {
    expect(told(recipe)).toEqual(words)
  })

  it('[N9] with its up end at the far end', () => {
    expect(told(strips({ count: 4 }), 'far')).toEqual([
      'The figure has its up end at the far end, and every leaf lies with that end down. Hang the panel the other way up, or say that the other end is up.',
    ])
    expect(told(fourWay({ numberedEnds: 'inside' }), 'far')).toHaveLength(1)
  })
})
