/**
 * A sheet laid by the answer, judged by moving its polygon with arithmetic of its own.
 *
 * [S20] Where every edge can have its least overhang with the seams on the centre, they lie there.
 * [S21] Else every edge has it, and no smaller shift of either end would give it; where that cannot be, both edges lack
 *       the same at the worst place.
 * [S22] The sheet turned and shifted as told, from lying by its edges, has the overhangs and trims told.
 */
import { describe, expect, it } from 'vitest'
import type { Box } from '../../src/core/geometry/box'
import { point } from '../../src/core/geometry/point'
import { centreAsCut, type AsCut, type SheetMeasures } from '../../src/core/seams/as-cut'
import { chanceFrom, spread, type Chance } from '../fixtures/geometry/shapes'

/** Of each kind: with a centre seam alone, and four-way. */
const CASES = 1000
const LEAST = 5
/** Lies that differ by less are alike at a bench: sliding one way along a tapering edge gains a little the other way. */
const SEEN = 0.1

interface Place {
  readonly x: number
  readonly y: number
}

interface Sheet {
  readonly sizes: { finished: Box<'panel'>; core: Box<'panel'>; sheet: Box<'panel'> }
  readonly measured: SheetMeasures
  /** Corners from the top left clockwise, about the crossing of the seams. */
  readonly corners: readonly [Place, Place, Place, Place]
}

const grown = ({ min, max }: Box<'panel'>, [l, t, r, b]: readonly number[]): Box<'panel'> => ({
  min: point(min.x - l!, min.y - t!),
  max: point(max.x + r!, max.y + b!),
})

const four = (chance: Chance, least: number, most: number) => [0, 1, 2, 3].map(() => spread(chance, least, most))

/** A sheet as someone may have cut it: each edge off by up to `wild` at each of its ends. */
function misCut(chance: Chance, wild: number, hasCross: boolean): Sheet {
  const [w, h] = [spread(chance, 150, 700), spread(chance, 200, 1500)]
  const finished = { min: point<'panel'>(-w / 2, -h / 2), max: point<'panel'>(w / 2, h / 2) }
  const core = grown(finished, four(chance, -5, 15))
  const sheet = grown(core, four(chance, 5, 14))
  const { min, max } = sheet
  const off = () => spread(chance, -wild, wild)
  const across = {
    top: { left: -min.x + off(), right: max.x + off() },
    bottom: { left: -min.x + off(), right: max.x + off() },
  }
  const along = hasCross
    ? {
        left: { above: -min.y + off(), below: max.y + off() },
        right: { above: -min.y + off(), below: max.y + off() },
      }
    : null
  const planned = { above: -min.y, below: max.y }
  const { left, right } = along ?? { left: planned, right: planned }
  const leftEdge = [
    { x: -across.top.left, y: min.y },
    { x: -across.bottom.left, y: max.y },
  ] as const
  const rightEdge = [
    { x: across.top.right, y: min.y },
    { x: across.bottom.right, y: max.y },
  ] as const
  const topEdge = [
    { x: min.x, y: -left.above },
    { x: max.x, y: -right.above },
  ] as const
  const bottomEdge = [
    { x: min.x, y: left.below },
    { x: max.x, y: right.below },
  ] as const
  const corners = [
    meet(leftEdge, topEdge),
    meet(rightEdge, topEdge),
    meet(rightEdge, bottomEdge),
    meet(leftEdge, bottomEdge),
  ] as const
  return { sizes: { finished, core, sheet }, measured: { across, along }, corners }
}

type Line = readonly [Place, Place]

/** By homogeneous coordinates. */
function meet(p: Line, q: Line): Place {
  const [a, b] = [through(p), through(q)]
  const w = a[0] * b[1] - a[1] * b[0]
  return { x: (a[1] * b[2] - a[2] * b[1]) / w, y: (a[2] * b[0] - a[0] * b[2]) / w }
}

const through = ([p, q]: Line) => [p.y - q.y, q.x - p.x, p.x * q.y - q.x * p.y] as const

const turned = ({ x, y }: Place, angle: number, by: Place): Place => ({
  x: Math.cos(angle) * x - Math.sin(angle) * y + by.x,
  y: Math.sin(angle) * x + Math.cos(angle) * y + by.y,
})

/** The sheet laid by its edges: how far the seam frame is turned and shifted then, its middle line upright. */
function byEdges({ measured, sizes: { sheet } }: Sheet): (p: Place) => Place {
  const { top, bottom } = measured.across
  const head = (top.right - top.left) / 2
  const foot = (bottom.right - bottom.left) / 2
  const height = sheet.max.y - sheet.min.y
  const angle = Math.atan((foot - head) / height)
  const along = measured.along
  const middle = along
    ? (along.left.below + along.right.below - along.left.above - along.right.above) / 4
    : (sheet.min.y + sheet.max.y) / 2
  const seen = turned({ x: (head + foot) / 2, y: middle }, angle, { x: 0, y: 0 })
  const by = { x: (sheet.min.x + sheet.max.x) / 2 - seen.x, y: (sheet.min.y + sheet.max.y) / 2 - seen.y }
  return (p) => turned(p, angle, by)
}

/** Laid as the answer tells: turned about the panel's centre, then shifted. */
function laidAsTold(sheet: Sheet, { turn, shift }: AsCut): (p: Place) => Place {
  const first = byEdges(sheet)
  return (p) => turned(first(p), turn, shift)
}

const xAt = ([p, q]: Line, y: number) => p.x + ((q.x - p.x) / (q.y - p.y)) * (y - p.y)
const yAt = ([p, q]: Line, x: number) => p.y + ((q.y - p.y) / (q.x - p.x)) * (x - p.x)

/** How far the laid sheet stands over a box, by side and end. */
function overOf(laid: readonly Place[], { min, max }: Box<'panel'>): Record<string, number> {
  const [a, b, c, d] = laid as [Place, Place, Place, Place]
  return {
    'left top': min.x - xAt([a, d], min.y),
    'left bottom': min.x - xAt([a, d], max.y),
    'right top': xAt([b, c], min.y) - max.x,
    'right bottom': xAt([b, c], max.y) - max.x,
    'top left': min.y - yAt([a, b], min.x),
    'top right': min.y - yAt([a, b], max.x),
    'bottom left': yAt([d, c], min.x) - max.y,
    'bottom right': yAt([d, c], max.x) - max.y,
  }
}

interface Judged extends Sheet {
  readonly seed: number
  readonly answer: AsCut
  readonly over: Record<string, number>
  readonly trim: Record<string, number>
  readonly seam: Line
  readonly cross: Line
}

function judged(seed: number, hasCross: boolean): Judged {
  const chance = chanceFrom(70_000 + seed)
  const sheet = misCut(chance, [1.5, 4, 9][seed % 3]!, hasCross)
  const answer = centreAsCut(sheet.measured, sheet.sizes, LEAST)
  const lay = laidAsTold(sheet, answer)
  const laid = sheet.corners.map(lay)
  return {
    ...sheet,
    seed,
    answer,
    over: overOf(laid, sheet.sizes.core),
    trim: overOf(laid, sheet.sizes.finished),
    seam: [lay({ x: 0, y: -500 }), lay({ x: 0, y: 500 })],
    cross: [lay({ x: -500, y: 0 }), lay({ x: 500, y: 0 })],
  }
}

const cases = Array.from({ length: 2 * CASES }, (_, seed) => judged(seed, seed % 2 === 1))

const outcome = ({ answer }: Judged) => (answer.onCentre ? 'on centre' : answer.keeps ? 'off centre' : 'lacking')

describe('a mis-cut sheet', () => {
  it('[S20] comes to lie on the centre, beside it or with a lack, each often', () => {
    const count = (wanted: string) => cases.filter((c) => outcome(c) === wanted).length
    expect(count('on centre')).toBeGreaterThan(300)
    expect(count('off centre')).toBeGreaterThan(300)
    expect(count('lacking')).toBeGreaterThan(200)
  })

  it('[S22] stands over and is trimmed as told once it is moved as told', () => {
    const wrong = cases.flatMap(({ seed, answer, over, trim }) =>
      answer.edges.flatMap(({ side, ends }) =>
        ends.flatMap((end) => {
          const place = `${side} ${end.at}`
          const off = Math.max(Math.abs(end.over - over[place]!), Math.abs(end.trim - trim[place]!))
          return off > 1e-6 ? [`${seed} ${place}: ${off}`] : []
        }),
      ),
    )
    expect(wrong).toEqual([])
  })

  it('[S22] has its seams where they are told to lie', () => {
    const wrong = cases.flatMap(({ seed, answer: { off }, seam, cross, sizes: { core } }) => {
      const found = [xAt(seam, core.min.y), xAt(seam, core.max.y), yAt(cross, core.min.x), yAt(cross, core.max.x)]
      const told = [off.top, off.bottom, off.left ?? found[2]!, off.right ?? found[3]!]
      return told.some((at, i) => Math.abs(at - found[i]!) > 1e-6) ? [`${seed}: ${told}, found ${found}`] : []
    })
    expect(wrong).toEqual([])
  })

  it('[S20] lies on the centre whenever no edge is short there, and only then is said to', () => {
    const wrong = cases.flatMap(({ seed, answer, corners, sizes, measured, seam, cross }) => {
      const there = overOf(corners, sizes.core)
      const told = Object.entries(there).filter(([place]) => measured.along || /^(left|right)/.test(place))
      const could = told.every(([, over]) => over >= LEAST)
      const { min, max } = sizes.core
      const offs = [
        ...[min.y, max.y].map((y) => xAt(seam, y)),
        ...(measured.along ? [min.x, max.x].map((x) => yAt(cross, x)) : []),
      ]
      const does = Math.max(...offs.map(Math.abs)) < 1e-9
      return could !== answer.onCentre || (could && !does) ? [`${seed}: could ${could}, ${answer.onCentre}`] : []
    })
    expect(wrong).toEqual([])
  })

  it('[S21] says of each edge whether it keeps the least overhang, and so of the sheet', () => {
    const wrong = cases.flatMap(({ seed, answer, over }) => {
      const really = (side: string) =>
        Object.entries(over).every(([place, by]) => !place.startsWith(`${side} `) || by >= LEAST - 2e-3)
      const sides = answer.edges.flatMap(({ side, keeps }) =>
        keeps === really(side) ? [] : [`${seed} ${side}: ${keeps}`],
      )
      return answer.keeps === answer.edges.every(({ side }) => really(side))
        ? sides
        : [...sides, `${seed}: ${answer.keeps}`]
    })
    expect(wrong).toEqual([])
  })

  it('[S21] of a four-way sheet that is too small the worst lack is shared by two edges that lie against each other', () => {
    const lacking = cases.filter(({ answer, measured }) => measured.along && !answer.keeps)
    const wrong = lacking.flatMap(({ seed, over }) => {
      const worst = Math.min(...Object.values(over))
      const against = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const
      const short = Object.keys(over).filter((place) => over[place]! < worst + 1e-3)
      // were one alone the worst, the sheet could be moved or turned away from it
      const sides = new Set(short.map((place) => place.split(' ')[0] as keyof typeof against))
      return [...sides].some((side) => sides.has(against[side])) ? [] : [`${seed}: ${short}`]
    })
    expect(lacking.length).toBeGreaterThan(100)
    expect(wrong).toEqual([])
  })

  it('[S21] keeps the least overhang with the smallest shift, or splits the lack', () => {
    const wrong = cases
      .filter(({ answer, measured }) => !answer.onCentre && !measured.along)
      .flatMap(({ seed, answer, over }) =>
        (['top', 'bottom'] as const).flatMap((end) => {
          const [left, right] = [over[`left ${end}`]!, over[`right ${end}`]!]
          const off = answer.off[end]
          const both = left + right >= 2 * LEAST - 1e-6
          if (!both) return Math.abs(left - right) < 1e-5 ? [] : [`${seed} ${end}: lack ${left}, ${right}`]
          if (Math.min(left, right) < LEAST - 1e-5) return [`${seed} ${end}: short ${left}, ${right}`]
          // off the centre only as far as the edge that it moves away from the seam's side asks for
          const asked = off > 0 ? right : left
          return Math.abs(off) < 1e-5 || Math.abs(asked - LEAST) < 1e-5 ? [] : [`${seed} ${end}: ${off} for nothing`]
        }),
      )
    expect(wrong).toEqual([])
  })

  it('[S21] with a cross seam no other lie of a grid is better to be seen', () => {
    const wrong = cases
      .filter(({ answer, measured, seed }) => !answer.onCentre && measured.along && seed % 7 === 1)
      .flatMap(({ seed, answer, corners, sizes }) => {
        const mine = worthOf(corners, sizes.core, answer)
        const better = liesAbout(answer).find((lie) => {
          const laid = corners.map((p) => turned(p, lie.angle, lie))
          const lack = LEAST - Math.min(...Object.values(overOf(laid, sizes.core)))
          const off = offAt(lie, sizes.core)
          return mine.lack > 1e-4 ? lack < mine.lack - SEEN : lack <= 1e-4 && off < mine.off - SEEN
        })
        return better ? [`${seed}: ${JSON.stringify(better)} beats ${JSON.stringify(mine)}`] : []
      })
    expect(wrong).toEqual([])
  })
})

interface GridLie extends Place {
  readonly angle: number
}

function worthOf(corners: readonly Place[], core: Box<'panel'>, answer: AsCut) {
  const { top, bottom, left, right } = answer.off
  const lacks = answer.edges.flatMap(({ ends }) => ends.map(({ over }) => LEAST - over))
  return { lack: Math.max(0, ...lacks), off: Math.max(...[top, bottom, left!, right!].map(Math.abs)) }
}

/** How far the seams of a lie are off at the core's edges. */
function offAt({ x, y, angle }: GridLie, { min, max }: Box<'panel'>): number {
  const slope = Math.tan(angle)
  const upright = (at: number) => x - slope * (at - y)
  const level = (at: number) => y + slope * (at - x)
  return Math.max(...[upright(min.y), upright(max.y), level(min.x), level(max.x)].map(Math.abs))
}

/** Lies near the answer, in all three ways. */
function liesAbout({ off }: AsCut): readonly GridLie[] {
  const steps = [-3, -2, -1, -0.5, 0, 0.5, 1, 2, 3]
  const [x, y] = [(off.top + off.bottom) / 2, (off.left! + off.right!) / 2]
  return steps.flatMap((i) =>
    steps.flatMap((j) => steps.map((k) => ({ x: x + i * 0.4, y: y + j * 0.4, angle: k * 0.0015 }))),
  )
}
