/**
 * Laws of every face, tried on faces of all recipes with lopsided leaves. What the core says is held against
 * `witness.ts` and against what is worked out here from the definitions. LEAFTURN_CASES sets how many faces are tried.
 * Cells, seams and mirrors of every pattern are tried more often, without leaves, in `pattern-laws`.
 *
 * [C1] Cells cover the taped sheet without gap or overlap.
 * [F2] A placement mirrors the leaf if and only if the leaf is turned over; the turn says how its axes lie.
 * [F3] A window laid by its placement is its cell; the rough piece stands over it by the allowance of each edge.
 * [F4] In the play every rough piece lies in sound wood; outside it at least one does not.
 * [S1] Where two cells meet there is one seam that names them, left and right as they lie.
 * [S2] Book, four-way and an even radial face mirror at every seam, drift or not; a slip match repeats.
 * [S3] Depth offsets are those of the bundle as it stands on the bench.
 */
import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { DerivedPart } from '../../src/core/derive'
import type { Piece } from '../../src/core/fit/lay-face'
import { point, type Point } from '../../src/core/geometry/point'
import type { Transform } from '../../src/core/geometry/transform'
import type { Flitch } from '../../src/core/leaves/flitch'
import type { Recipe } from '../../src/core/patterns/recipe'
import { USUAL_SHOP } from '../../src/core/shop'
import { chanceFrom, spread, whole, type Chance } from '../fixtures/geometry/shapes'
import { anyFace, type AnyFace } from './any-face'
import { faceOf } from './job-builders'
import * as witness from './witness'

const CASES = Number(process.env.LEAFTURN_CASES ?? 500)
vi.setConfig({ testTimeout: 3_600_000 })

/** Slack for the grid, and for round clearances drawn as polygons. */
const FITS = 0.008
const CLEAR = 0.02

interface Case extends AnyFace {
  readonly seed: number
  readonly chance: Chance
  readonly face: DerivedPart
}

let cases: readonly Case[] = []

beforeAll(() => {
  cases = Array.from({ length: CASES }, (_, seed) => {
    const chance = chanceFrom(9_000 + seed)
    const any = anyFace(chance)
    return { ...any, seed, chance, face: faceOf(any.part, any.flitch) }
  })
}, 3_600_000)

const laid = (t: Transform<'leaf', 'panel'>, { x, y }: witness.Place) => ({
  x: t.a * x + t.c * y + t.e,
  y: t.b * x + t.d * y + t.f,
})

const back = (t: Transform<'leaf', 'panel'>, { x, y }: witness.Place): Point<'leaf'> => {
  const det = t.a * t.d - t.c * t.b
  return point((t.d * (x - t.e) - t.c * (y - t.f)) / det, (t.a * (y - t.f) - t.b * (x - t.e)) / det)
}

const apart = (p: witness.Place, q: witness.Place) => Math.hypot(p.x - q.x, p.y - q.y)

const ringOf = ({ cell }: Piece) => cell.face.ring

/** What is wrong with the cases, each said once. */
function wrongOf(judge: (c: Case, say: (what: string) => void) => void): readonly string[] {
  return cases.flatMap((c) => {
    const said = new Set<string>()
    judge(c, (what) => said.add(`case ${c.seed} (${c.part.recipe.pattern}): ${what}`))
    return [...said].slice(0, 3)
  })
}

describe('cells', () => {
  it('[C1] cover the sheet once', () => {
    const wrong = wrongOf(({ face, chance }, say) => {
      const { min, max } = face.sizes.sheet
      const whole = (max.x - min.x) * (max.y - min.y)
      const sum = face.pieces.reduce((area, piece) => area + witness.areaOf(ringOf(piece)), 0)
      if (Math.abs(sum - whole) > 1e-6 * whole) say(`${sum} mm² of cells on ${whole} mm² of sheet`)
      for (let i = 0; i < 30; i++) {
        const p = { x: spread(chance, min.x, max.x), y: spread(chance, min.y, max.y) }
        const over = face.pieces.filter((piece) => witness.isIn(ringOf(piece), p)).length
        const atBorder = face.pieces.some((piece) =>
          witness.sides(ringOf(piece)).some((s) => witness.awayFromSide(s, p) < 1e-3),
        )
        if (over !== 1 && !atBorder) say(`${over} cells at ${p.x}, ${p.y}`)
      }
    })
    expect(wrong).toEqual([])
  })

  it('[C1] are finished, pressed and taped at the sizes asked for', () => {
    const wrong = wrongOf(({ face, part: { width, length, core, overhang } }, say) => {
      const { min, max } = face.sizes.sheet
      const is = [min.x, min.y, max.x, max.y]
      const ought = [
        -width / 2 - core.left - overhang.left,
        -length / 2 - core.top - overhang.top,
        width / 2 + core.right + overhang.right,
        length / 2 + core.bottom + overhang.bottom,
      ]
      if (is.some((x, i) => Math.abs(x - ought[i]!) > 1e-9)) say(`sheet ${is}, not ${ought}`)
    })
    expect(wrong).toEqual([])
  })
})

describe('placements', () => {
  it('[F2] mirror exactly when the numbered side is down, and turn as they say', () => {
    const seen = new Map<string, number>()
    const wrong = wrongOf(({ face }, say) => {
      for (const { cell, leafToPanel: t } of face.pieces) {
        const { turnedOver, spun } = cell.turn
        seen.set(`${turnedOver} ${spun}`, (seen.get(`${turnedOver} ${spun}`) ?? 0) + 1)
        const det = t.a * t.d - t.b * t.c
        if (Math.abs(Math.abs(det) - 1) > 1e-12) say(`${cell.id} is stretched: ${det}`)
        if (det < 0 !== turnedOver) say(`${cell.id} turned over: ${turnedOver}, determinant ${det}`)
        if (spun === null) continue
        // as it lies (x, y); turned over (-x, y); spun (-x, -y); turned over and spun, which is end over end, (x, -y)
        const [x, y] = turnedOver ? (spun ? [1, -1] : [-1, 1]) : spun ? [-1, -1] : [1, 1]
        if (t.a !== x || t.d !== y || t.b !== 0 || t.c !== 0) say(`${cell.id} lies ${t.a} ${t.b} ${t.c} ${t.d}`)
      }
    })
    expect(wrong).toEqual([])
    // every turn has been tried
    expect([...seen.keys()].sort()).toEqual([
      'false false',
      'false null',
      'false true',
      'true false',
      'true null',
      'true true',
    ])
  })

  it('[F2] lay a wedge with its grain on the bisector, its numbered end where the recipe says', () => {
    const wrong = wrongOf(({ face, part: { recipe } }, say) => {
      if (recipe.pattern !== 'radial') return
      face.pieces.forEach(({ cell, leafToPanel: t }) => {
        const i = Number.parseInt(cell.id.slice(1), 10) - 1
        const bisector = ((recipe.firstSeam + ((i + 0.5) * 360) / face.count) * Math.PI) / 180
        const way = recipe.numberedEnds === 'inside' ? 1 : -1
        const off = Math.hypot(t.c - way * Math.cos(bisector), t.d - way * Math.sin(bisector))
        if (off > 1e-9) say(`${cell.id} runs ${t.c}, ${t.d}`)
      })
    })
    expect(wrong).toEqual([])
  })

  it('[F3] carry the window to its cell and the rough piece as far beyond as its edges lose', () => {
    const wrong = wrongOf(({ face, part }, say) => {
      for (const { cell, leafToPanel, windowOnLeaf, rough } of face.pieces) {
        const placed = windowOnLeaf.map((p) => laid(leafToPanel, p))
        const lost = placed.filter((p) => !ringOfNear(cell.face.ring, p))
        if (placed.length !== cell.face.ring.length || lost.length) say(`${cell.id}: window beside its cell`)
        // a wedge is cut full: its rough piece stands over what it is jointed to
        witness.sides(cell.toCut.ring).forEach((side, i) => {
          const tag = cell.toCut.tags[i]!
          const later = tag.kind === 'seam' && (tag.joint === 'cross' || tag.joint === 'diameter')
          const isLongEdge =
            tag.kind === 'seam' || (hasColumns(part.recipe) && (tag.side === 'left' || tag.side === 'right'))
          // round a sheet of booked leaves everything is trued when they are joined
          const aroundSheet = cell.sheet !== null && tag.kind === 'seam' && tag.joint !== 'sheet'
          const ought = aroundSheet
            ? Math.max(part.allowance, part.laterAllowance)
            : later
              ? part.laterAllowance
              : isLongEdge
                ? part.allowance
                : 0
          const out = -Math.min(...rough.map((p) => witness.depth(side, p)))
          // a short edge beside one that loses nothing is past its corner there
          const isGone = cell.sheet !== null && out < ought && apart(...side) < 3 * ought
          if (Math.abs(out - ought) > 1e-6 && !isGone) say(`${cell.id} edge ${i} stands out ${out}, not ${ought}`)
        })
      }
    })
    expect(wrong).toEqual([])
  })

  it('[F3] carry a spot of the log to where the same spot of the leaf lies, which has drifted', () => {
    const wrong = wrongOf(({ face, chance }, say) => {
      for (const { leaf, leafToPanel, logToPanel, cell } of face.pieces) {
        if (!leaf) continue
        const spot = { x: spread(chance, 0, 300), y: spread(chance, 0, 2000) }
        const onLeaf = { x: spot.x + leaf.drift.x, y: spot.y + leaf.drift.y }
        if (apart(laid(logToPanel, spot), laid(leafToPanel, onLeaf)) > 1e-9) say(`${cell.id} drifts the wrong way`)
      }
    })
    expect(wrong).toEqual([])
  })
})

const hasColumns = ({ pattern }: Recipe) =>
  pattern === 'strips' || pattern === 'four-way' || pattern === 'end match' || pattern === 'planks'

const ringOfNear = (ring: witness.Line, p: witness.Place) => ring.some((q) => apart(p, q) < 1e-6)

describe('the play', () => {
  it('[F4] holds the positions at which all rough pieces lie in sound wood, and no others', () => {
    const seen = { inside: 0, outside: 0, faces: 0, lackInside: 0 }
    const wrong = wrongOf(({ face, flitch, chance }, say) => {
      if (face.play.region.length > 0) seen.faces++
      for (const at of placesIn(chance, face)) {
        seen.inside++
        const least = keepsAt(face, flitch, at)
        if (least.inside < -FITS || least.clear < -CLEAR)
          say(`in the play at ${at.x}, ${at.y} lacks ${least.inside} ${least.clear}`)
      }
      for (const at of placesOutside(chance, face)) {
        seen.outside++
        const least = keepsAt(face, flitch, at)
        if (least.inside > 0.004 && least.clear > CLEAR) say(`outside the play at ${at.x}, ${at.y} everything fits`)
      }
      const at = face.position
      if (face.play.region.length > 0) {
        const least = keepsAt(face, flitch, at)
        if (least.inside < -FITS || least.clear < -CLEAR) say(`lies where ${least.inside} ${least.clear} is lacking`)
      }
    })
    expect(wrong).toEqual([])
    expect(seen.faces).toBeGreaterThan(CASES / 2)
    expect(seen.inside).toBeGreaterThan(CASES * 2)
    expect(seen.outside).toBeGreaterThan(CASES * 2)
  })
})

/** By how much the worst piece keeps inside its outline, less the margins, and clear of its defects. */
function keepsAt(face: DerivedPart, flitch: Flitch, at: witness.Place): { inside: number; clear: number } {
  let [inside, clear] = [Infinity, Infinity]
  for (const { leaf, rough } of face.pieces) {
    if (!leaf) continue
    const piece = rough.map(({ x, y }) => ({ x: x + at.x + leaf.drift.x, y: y + at.y + leaf.drift.y }))
    const swept = witness.sweptByBox(piece, flitch.sideMargin, flitch.endMargin)
    inside = Math.min(inside, witness.keepsInside(leaf.outline ?? flitch.outline, swept))
    for (const defect of leaf.defects) {
      if (USUAL_SHOP.tolerates[face.part.showClass].includes(defect.kind)) continue
      const kept = Math.max(USUAL_SHOP.clearance[defect.kind], defect.shape === 'line' ? 0.5 : 0)
      clear = Math.min(clear, witness.keepsClear(piece, defect) - kept)
    }
  }
  return { inside, clear }
}

const ringsOf = (face: DerivedPart): readonly (readonly witness.Line[])[] => face.play.region

function placesIn(chance: Chance, face: DerivedPart): witness.Place[] {
  const points = ringsOf(face).flatMap(([outer]) => outer!)
  if (points.length === 0) return []
  const corners = [0, 1, 2].map(() => points[whole(chance, 0, points.length - 1)]!)
  const [x, y] = [points.map((p) => p.x), points.map((p) => p.y)]
  const inner = Array.from({ length: 5 }, () => ({
    x: spread(chance, Math.min(...x), Math.max(...x)),
    y: spread(chance, Math.min(...y), Math.max(...y)),
  }))
  return [...corners, ...inner.filter((p) => witness.isInAny(ringsOf(face), p))]
}

function placesOutside(chance: Chance, face: DerivedPart): witness.Place[] {
  const lines = ringsOf(face).flat()
  const anywhere = Array.from({ length: 4 }, () => ({ x: spread(chance, 40, 280), y: spread(chance, 100, 2000) }))
  const beside = lines.length
    ? Array.from({ length: 6 }, () => {
        const ring = lines[whole(chance, 0, lines.length - 1)]!
        const p = ring[whole(chance, 0, ring.length - 1)]!
        const [angle, reach] = [spread(chance, 0, 7), spread(chance, 0.06, chance() < 0.5 ? 0.2 : 6)]
        return { x: p.x + reach * Math.cos(angle), y: p.y + reach * Math.sin(angle) }
      })
    : []
  return [...anywhere, ...beside].filter(
    (p) =>
      !witness.isInAny(ringsOf(face), p) &&
      lines.every((ring) => witness.sides(ring).every((side) => witness.awayFromSide(side, p) > 0.05)),
  )
}

describe('seams', () => {
  it('[S1] lie wherever two cells meet, each stretch between the cells it names', () => {
    const wrong = wrongOf(({ face }, say) => {
      const { min, max } = face.sizes.sheet
      const around = face.pieces.reduce((sum, piece) => sum + witness.perimeterOf(ringOf(piece)), 0)
      const inner = (around - 2 * (max.x - min.x + max.y - min.y)) / 2
      const stretches = face.seams.flatMap(({ sides }) => sides)
      const length = stretches.reduce((sum, { edge }) => sum + apart(edge.a, edge.b), 0)
      if (Math.abs(length - inner) > 0.01) say(`${length} mm of seams, but cells meet along ${inner}`)
      const pairs = stretches.map(({ left, right }) => [left, right].sort().join(' '))
      if (new Set(pairs).size !== pairs.length) say('a pair meets twice')
      for (const { edge, left, right, round } of face.seams.flatMap((seam) =>
        seam.sides.map((side) => ({ ...side, round: seam.round })),
      )) {
        const [dx, dy] = [edge.b.x - edge.a.x, edge.b.y - edge.a.y]
        const isRound = round
        // left of an upright seam is where x is less, above a level one where y is less, anticlockwise of a ray
        const by = 0.01 / Math.hypot(dx, dy)
        const side = isRound
          ? { x: dy * by, y: -dx * by }
          : Math.abs(dy) > Math.abs(dx) - 1e-3
            ? { x: -0.01, y: 0 }
            : { x: 0, y: -0.01 }
        const middle = { x: (edge.a.x + edge.b.x) / 2, y: (edge.a.y + edge.b.y) / 2 }
        const cellAt = (way: number) =>
          face.pieces.find((piece) =>
            witness.isIn(ringOf(piece), { x: middle.x + way * side.x, y: middle.y + way * side.y }),
          )
        if (cellAt(1)?.cell.id !== left || cellAt(-1)?.cell.id !== right) say(`between ${left} and ${right} lie others`)
      }
      for (const { letter, edge, finishedLength } of face.seams) {
        const ought = lengthWithin(edge, face.part)
        if (Math.abs(finishedLength - ought) > 0.01 * apart(edge.a, edge.b))
          say(`seam ${letter} is ${finishedLength} long, not ${ought}`)
      }
      const letters = face.seams.map(({ letter }) => letter)
      if (new Set(letters).size !== letters.length) say('a letter twice')
    })
    expect(wrong).toEqual([])
  })

  it('[S1] are lettered from left to right, and round a centre clockwise from the first', () => {
    const wrong = wrongOf(({ face, part: { recipe } }, say) => {
      face.seams.forEach(({ edge }, i) => {
        if (recipe.pattern === 'radial') {
          // within the wedges behind those round the centre, wedge by wedge
          const nth = i < face.count ? i : i - face.count + 0.5
          const angle = ((recipe.firstSeam + (360 * nth) / face.count) * Math.PI) / 180
          const at = { x: Math.cos(angle), y: Math.sin(angle) }
          const out = apart(edge.a, { x: 0, y: 0 }) < 0.01 && Math.abs(edge.b.x * at.y - edge.b.y * at.x) < 0.01
          if (!out || edge.b.x * at.x + edge.b.y * at.y < 0) say(`seam ${i} runs to ${edge.b.x}, ${edge.b.y}`)
        } else if (i > 0) {
          const middle = (n: number) => (face.seams[n]!.edge.a.x + face.seams[n]!.edge.b.x) / 2
          const [before, here] = [face.seams[i - 1]!, face.seams[i]!]
          // those within sheets behind all others, sheet by sheet
          const sheets = [before, here].map(({ stretches }) => sheetIn(face, stretches[0]!.left))
          if (here.kind === 'sheet') {
            if (before.kind === 'sheet' && sheets[0]! > sheets[1]!) say(`seam ${i} is of a sheet before`)
          } else if (before.kind === 'sheet' || middle(i) < middle(i - 1) - 0.01)
            say(`seam ${i} lies left of the one before`)
        }
      })
    })
    expect(wrong).toEqual([])
  })

  it('[S2] mirror where the match is a mirror and repeat where it repeats, by the leaves themselves', () => {
    const seen = { mirrors: 0, repeats: 0, breaks: 0 }
    const wrong = wrongOf(({ face, part: { recipe }, chance }, say) => {
      const pieceOf = (id: string) => face.pieces.find(({ cell }) => cell.id === id)!
      for (const seam of face.seams)
        for (const { edge, left, right, meets } of seam.sides) {
          const [one, other] = [pieceOf(left), pieceOf(right)]
          const spots = Array.from({ length: 3 }, () => back(one.logToPanel, near(chance, edge)))
          const mirror = spots.every(
            (p) => apart(witness.mirrored(edge, laid(one.logToPanel, p)), laid(other.logToPanel, p)) < 1e-6,
          )
          const slides = spots.map((p) => {
            const [l, r] = [laid(one.logToPanel, p), laid(other.logToPanel, p)]
            return { x: r.x - l.x, y: r.y - l.y }
          })
          const slid = slides.every((s) => apart(s, slides[0]!) < 1e-6)
          const is = mirror ? 'mirrors' : slid ? 'repeats' : 'breaks'
          seen[is]++
          if (meets !== is) say(`${left} ${right} ${is}, but is said: ${meets}`)
          const ought = meetsByPattern(recipe, face, left, right)
          if (ought && is !== ought) say(`${left} ${right} ${is}, not ${ought}`)
        }
    })
    expect(wrong).toEqual([])
    expect(Math.min(seen.mirrors, seen.repeats, seen.breaks)).toBeGreaterThan(CASES / 20)
  })

  it('[S3] lie as deep apart as the shown faces do in the bundle', () => {
    const wrong = wrongOf(({ face, flitch }, say) => {
      const shown = new Map(face.pieces.map((piece) => [piece.cell.id, heightShown(flitch, piece)]))
      for (const { sides } of face.seams)
        for (const { left, right, depthOffset } of sides) {
          const [one, other] = [shown.get(left)!, shown.get(right)!]
          const ought = one === null || other === null ? null : Math.abs(one - other)
          if (depthOffset === null ? ought !== null : Math.abs(depthOffset - (ought ?? -1)) > 1e-9)
            say(`${left} ${right} ${depthOffset} apart, not ${ought}`)
        }
    })
    expect(wrong).toEqual([])
  })
})

/** Which of the sheets, in the order of the pieces, a strip is of. */
function sheetIn({ pieces }: DerivedPart, strip: string): number {
  const sheet = pieces.find(({ cell }) => cell.id === strip)!.cell.sheet?.id
  return pieces.findIndex(({ cell }) => cell.sheet?.id === sheet)
}

/** What the figure does between two cells, from what each pattern is; null where it may do as it likes. */
function meetsByPattern(recipe: Recipe, face: DerivedPart, left: string, right: string) {
  if (recipe.pattern === 'radial')
    return recipe.eachFrom === 'one leaf' && (recipe.match === 'slip' || face.count % 2 === 1) ? null : 'mirrors'
  if ((recipe.pattern === 'box' || recipe.pattern === 'diamond') && recipe.sheetOf > 1) {
    const [p, q] = [left.slice(0, -1), right.slice(0, -1)]
    return p === q ? 'repeats' : recipe.pattern === 'box' ? boxMeets(face, p, q) : 'mirrors'
  }
  if (recipe.pattern === 'box') return boxMeets(face, left, right)
  if (recipe.pattern === 'herringbone') return left.split(/[+-]/)[0] === right.split(/[+-]/)[0] ? 'repeats' : 'mirrors'
  if (recipe.pattern === 'parquet' || recipe.pattern === 'planks') return null
  if (recipe.pattern !== 'strips' || recipe.match === 'book') return 'mirrors'
  if (recipe.match === 'reverse slip') return 'breaks'
  return recipe.match === 'slip-centre-book' && left === 'L1' && right === 'R1' ? 'mirrors' : 'repeats'
}

/** How much of an edge lies in the finished panel, by looking at 500 places of it. */
function lengthWithin({ a, b }: { a: witness.Place; b: witness.Place }, { width, length }: AnyFace['part']): number {
  const within = Array.from({ length: 500 }, (_, i) => {
    const t = (i + 0.5) / 500
    return Math.abs(a.x + t * (b.x - a.x)) <= width / 2 && Math.abs(a.y + t * (b.y - a.y)) <= length / 2
  })
  return (apart(a, b) * within.filter(Boolean).length) / 500
}

/** A square box mirrors all round; else at the mitres of the long piece that was laid first, and at no others. */
function boxMeets({ part: { width, length } }: DerivedPart, left: string, right: string) {
  if (Math.abs(width - length) < 1e-9) return 'mirrors'
  return [left, right].includes(width > length ? 'T' : 'L') && !['TB', 'BT', 'LR', 'RL'].includes(left + right)
    ? 'mirrors'
    : 'breaks'
}

/** A spot within 100 mm of a seam. */
function near(chance: Chance, { a, b }: { a: witness.Place; b: witness.Place }): witness.Place {
  const t = chance()
  return {
    x: a.x + t * (b.x - a.x) + spread(chance, -100, 100),
    y: a.y + t * (b.y - a.y) + spread(chance, -100, 100),
  }
}

/** How high above the bench lies the face that a piece shows, the bundle standing there with nothing taken from it. */
function heightShown(flitch: Flitch, { leaf, cell }: Piece): number | null {
  if (!leaf) return null
  const sliced: number[] = []
  for (const { number } of flitch.leaves) {
    sliced.push(number)
    const gap = flitch.missing.find(({ after }) => after === number)
    for (let i = 0; i < (gap?.count ?? 0); i++) sliced.push(-1)
  }
  const fromBelow = flitch.leafOneAt === 'bottom' ? sliced : [...sliced].reverse()
  const lower = fromBelow.indexOf(leaf.number) * (flitch.thickness + flitch.lossBetween)
  const numbered = flitch.numberedFace === 'upper' ? lower + flitch.thickness : lower
  const other = flitch.numberedFace === 'upper' ? lower : lower + flitch.thickness
  return cell.turn.turnedOver ? other : numbered
}
