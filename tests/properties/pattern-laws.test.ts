/**
 * Laws of every pattern by itself, before it meets a leaf: each tried with 1,000 random sizes and parameters
 * (LEAFTURN_CASES sets another number). The leaves are given a drift each, so that a mirror has to hold in the log.
 *
 * [N1] The cells of every pattern tile the sheet.
 * [N2] At every seam both sides are found, and cells meet nowhere else.
 * [N3] Every mirror that a pattern claims is a mirror in the log, and every repeat a slide.
 * [N4] A cell is laid mirrored if and only if its leaf is turned over; `spun` tells how the axes lie, or is null.
 * [N5] A cell keeps its name and its turn when the panel grows.
 */
import { describe, expect, it, vi } from 'vitest'
import { cutCells, taggedSheet, type Cell } from '../../src/core/faces/cells'
import { placement } from '../../src/core/fit/placement'
import { panelRing } from '../../src/core/geometry/panel-outline'
import { point } from '../../src/core/geometry/point'
import type { Transform } from '../../src/core/geometry/transform'
import { planRecipe } from '../../src/core/patterns/plan-recipe'
import type { Plan, Sizes } from '../../src/core/patterns/pattern'
import { turnedPlan } from '../../src/core/patterns/turned-plan'
import { findSeams, type Seam } from '../../src/core/seams/find-seams'
import { howFigureMeets, type Meets } from '../../src/core/seams/meeting'
import { chanceFrom, spread, type Chance } from '../fixtures/geometry/shapes'
import { anyPattern, EVERY_PATTERN, type AnyPattern } from './any-pattern'
import * as witness from './witness'

const CASES = Number(process.env.LEAFTURN_CASES ?? 1000)
vi.setConfig({ testTimeout: 3_600_000 })

/** A pattern cut from its sheet, its leaves lying somewhere in the log. */
interface Tried extends AnyPattern {
  readonly plan: Plan
  readonly cells: readonly Cell[]
  readonly byId: ReadonlyMap<string, Cell>
  readonly seams: readonly Seam[]
  readonly numberFacesNext: boolean
  /** Leaf → panel, by cell. */
  readonly laid: ReadonlyMap<string, Transform<'leaf', 'panel'>>
  /** How the leaf of a cell drifts. */
  readonly driftOf: (cell: Cell) => witness.Place
}

const sheetOf = ({ width, length, beyond }: Sizes) => panelRing({ shape: 'rectangle' }, { width, length }, beyond)!

function tried(any: AnyPattern, chance: Chance): Tried {
  const numberFacesNext = chance() < 0.5
  const flat = planRecipe(any.recipe, any.sizes, any.count, { numberFacesNext }, any.bands)
  // now and then of burl, turned on its leaves
  const plan = turnedPlan(flat, any.bands === null && chance() < 0.15 ? spread(chance, -180, 180) : 0)
  const cells = cutCells(plan, taggedSheet(sheetOf(any.sizes), plan))
  const centre = any.recipe.pattern === 'radial' ? any.recipe.centre : point<'panel'>(0, 0)
  const finished = panelRing({ shape: 'rectangle' }, any.sizes, { top: 0, right: 0, bottom: 0, left: 0 })!.ring
  const drifts = Array.from({ length: 200 }, () => point<'leaf'>(spread(chance, -9, 9), spread(chance, -30, 30)))
  const position = point<'leaf'>(spread(chance, 50, 250), spread(chance, 200, 2000))
  const driftOf = (cell: Cell) => drifts[cell.rank]!
  const laid = new Map(
    cells.map((cell) => [
      cell.id as string,
      placement(cell.lay, { position, drift: drifts[cell.rank]!, nudge: point(0, 0), farther: point(0, 0) }),
    ]),
  )
  const byId = new Map(cells.map((cell) => [cell.id as string, cell]))
  return { ...any, plan, cells, byId, laid, driftOf, numberFacesNext, seams: findSeams(cells, finished, centre) }
}

type Say = (what: string) => void

const LAWS: readonly ((t: Tried, say: Say, chance: Chance) => void)[] = [
  tiles,
  meetsItsNeighbours,
  meetsAsClaimed,
  isLaidAsTurned,
  keepsItsNames,
]

function tiles({ cells, sizes }: Tried, say: Say, chance: Chance) {
  const { ring } = sheetOf(sizes)
  const whole = witness.areaOf(ring)
  const sum = cells.reduce((area, { face }) => area + witness.areaOf(face.ring), 0)
  if (Math.abs(sum - whole) > 1e-6 * whole) say(`[N1] ${sum} mm² of cells on ${whole} mm² of sheet`)
  for (let i = 0; i < 4; i++) {
    const p = { x: spread(chance, ring[0]!.x, ring[2]!.x), y: spread(chance, ring[0]!.y, ring[2]!.y) }
    const over = cells.filter(({ face }) => witness.isIn(face.ring, p)).length
    const atBorder = () =>
      cells.some(({ face }) => witness.sides(face.ring).some((s) => witness.awayFromSide(s, p) < 1e-3))
    if (over !== 1 && !atBorder()) say(`[N1] ${over} cells at ${p.x}, ${p.y}`)
  }
}

function meetsItsNeighbours({ cells, byId, seams, sizes }: Tried, say: Say) {
  const around = cells.reduce((sum, { face }) => sum + witness.perimeterOf(face.ring), 0)
  const inner = (around - witness.perimeterOf(sheetOf(sizes).ring)) / 2
  const stretches = seams.flatMap((seam) => seam.stretches)
  const length = stretches.reduce((sum, { edge }) => sum + Math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y), 0)
  if (Math.abs(length - inner) > 0.02) say(`[N2] ${length} mm of seams, but cells meet along ${inner}`)
  for (const { edge, left, right } of stretches) {
    const middle = { x: (edge.a.x + edge.b.x) / 2, y: (edge.a.y + edge.b.y) / 2 }
    const [x, y] = [edge.b.x - edge.a.x, edge.b.y - edge.a.y]
    const by = 0.002 / Math.hypot(x, y)
    const beside = [1, -1].map((way) => ({ x: middle.x - way * y * by, y: middle.y + way * x * by }))
    const isIn = (id: string, p: witness.Place) => witness.isIn(byId.get(id)!.face.ring, p)
    const both = (p: witness.Place, q: witness.Place) => isIn(left, p) && isIn(right, q)
    if (!both(beside[0]!, beside[1]!) && !both(beside[1]!, beside[0]!))
      say(`[N2] ${left} and ${right} do not lie at their seam`)
  }
}

const onPanel = (t: Transform<'leaf', 'panel'>, { x, y }: witness.Place) => ({
  x: t.a * x + t.c * y + t.e,
  y: t.b * x + t.d * y + t.f,
})

const apart = (p: witness.Place, q: witness.Place) => Math.hypot(p.x - q.x, p.y - q.y)

function meetsAsClaimed(t: Tried, say: Say, chance: Chance) {
  const logOf = (cell: Cell): Transform<'leaf', 'panel'> => {
    // a spot of the log lies on the leaf where it has drifted to
    const [leafToPanel, drift] = [t.laid.get(cell.id)!, t.driftOf(cell)]
    const at = onPanel(leafToPanel, drift)
    return { ...leafToPanel, e: at.x, f: at.y }
  }
  for (const { stretches } of t.seams)
    for (const { edge, left, right } of stretches) {
      const [one, other] = [logOf(t.byId.get(left)!), logOf(t.byId.get(right)!)]
      const spots = [0, 1, 2].map(() => ({ x: spread(chance, 0, 300), y: spread(chance, 0, 2000) }))
      const pairs = spots.map((p) => [onPanel(one, p), onPanel(other, p)] as const)
      const slides = pairs.map(([p, q]) => ({ x: q.x - p.x, y: q.y - p.y }))
      const is: Meets = pairs.every(([p, q]) => apart(witness.mirrored(edge, p), q) < 1e-6)
        ? 'mirrors'
        : slides.every((s) => apart(s, slides[0]!) < 1e-6)
          ? 'repeats'
          : 'breaks'
      const said = howFigureMeets(edge, one, other)
      if (said !== is) say(`[N3] ${left} ${right} ${is}, but is said: ${said}`)
      const claim = claimed(t, left, right)
      if (claim && claim !== is) say(`[N3] ${left} ${right} ${is}, not ${claim}`)
    }
}

/** What a pattern promises of the figure at a seam, from what it is; null where it promises nothing. */
function claimed({ recipe, count, sizes }: Tried, left: string, right: string): Meets | null {
  switch (recipe.pattern) {
    case 'radial':
      // the two edges of a booked pair show the same wood
      return recipe.eachFrom === 'booked pair' || (recipe.match === 'book' && count % 2 === 0) ? 'mirrors' : null
    case 'diamond':
      return isInOneSheet(recipe.sheetOf, left, right) ? 'repeats' : 'mirrors'
    case 'box':
      return isInOneSheet(recipe.sheetOf, left, right) ? 'repeats' : boxClaim(sizes, pieceOf(left), pieceOf(right))
    case 'herringbone':
      return left.split(/[+-]/)[0] === right.split(/[+-]/)[0] ? 'repeats' : 'mirrors'
    case 'parquet':
      return blockOf(left) === blockOf(right) ? 'repeats' : 'breaks'
    case 'planks':
      return null
    case 'strips':
      return recipe.match === 'book'
        ? 'mirrors'
        : recipe.match === 'reverse slip'
          ? 'breaks'
          : recipe.match === 'slip-centre-book' && left === 'L1' && right === 'R1'
            ? 'mirrors'
            : 'repeats'
    default:
      return 'mirrors'
  }
}

/** Of slipped sheets: a strip goes by the name of its piece with a letter behind. */
const pieceOf = (id: string) => id.replace(/[a-f]$/, '')

const isInOneSheet = (leaves: number, left: string, right: string) => leaves > 1 && pieceOf(left) === pieceOf(right)

const blockOf = (id: string) => id.split('.')[0]

/** A square box mirrors all round; else at the mitres of the long piece that was laid first, and at no others. */
function boxClaim({ width, length }: Sizes, left: string, right: string): Meets {
  if (width === length) return 'mirrors'
  const first = width > length ? 'T' : 'L'
  return [left, right].includes(first) && !['TB', 'BT', 'LR', 'RL'].includes(left + right) ? 'mirrors' : 'breaks'
}

function isLaidAsTurned({ plan, cells, laid }: Tried, say: Say) {
  for (const cell of cells) {
    const { turnedOver, spun } = cell.turn
    const t = laid.get(cell.id)!
    const det = t.a * t.d - t.b * t.c
    if (Math.abs(Math.abs(det) - 1) > 1e-9) say(`[N4] ${cell.id} is stretched: ${det}`)
    if (det < 0 !== turnedOver) say(`[N4] ${cell.id} turned over: ${turnedOver}, determinant ${det}`)
    if (spun === null) continue
    const [x, y] = turnedOver ? (spun ? [1, -1] : [-1, 1]) : spun ? [-1, -1] : [1, 1]
    if (t.a !== x || t.d !== y || t.b !== 0 || t.c !== 0) say(`[N4] ${cell.id} lies ${t.a} ${t.b} ${t.c} ${t.d}`)
  }
  if (new Set(cells.map(({ id }) => id)).size !== cells.length) say('[N5] a name twice')
  const ranks = new Set(placesOf(plan).map(({ rank }) => rank))
  if (![...ranks].every((rank) => ranks.has(rank - 1) || rank === 0)) say('[N5] a leaf of the run is left out')
}

/** Where a leaf lies: a cell, or each strip of its sheet. */
const placesOf = (plan: Plan) =>
  plan.cells.flatMap(({ id, rank, turn, strips }) =>
    strips ? strips.map((strip) => ({ ...strip, id: `${id}${strip.name}` })) : [{ id: id as string, rank, turn }],
  )

function keepsItsNames({ recipe, plan, cells, bands, sizes, grown, numberFacesNext }: Tried, say: Say) {
  const more = bands && moreBands(bands, sizes, grown.sizes)
  const wider = planRecipe(grown.recipe, grown.sizes, grown.count, { numberFacesNext }, more)
  const turns = new Map(placesOf(wider).map(({ id, turn }) => [id, turn]))
  const isTurned = plan.cells.some(({ turn }) => turn.spun === null)
  for (const { id, turn } of cells) {
    const now = turns.get(id)
    if (!now) say(`[N5] ${id} is gone from the larger panel`)
    else if (keepsTurn(recipe, plan.cells.length) && now.turnedOver !== turn.turnedOver)
      say(`[N5] ${id} is turned otherwise`)
    else if (!isTurned && keepsTurn(recipe, plan.cells.length) && now.spun !== turn.spun)
      say(`[N5] ${id} is spun otherwise`)
  }
}

/** The turn of an odd number of booked leaves goes by the first pair that is laid, not by the leaf on the centre; a single leaf is not booked. */
function keepsTurn(recipe: AnyPattern['recipe'], cells: number): boolean {
  if (recipe.pattern === 'end match') return cells % (2 * recipe.rows) === 0
  return recipe.pattern !== 'strips' || recipe.match === 'reverse slip' || recipe.match === 'slip' || cells % 2 === 0
}

/** The run as before, the last leaf whole, and leaves as wide as it behind it. */
function moreBands(bands: NonNullable<AnyPattern['bands']>, before: Sizes, after: Sizes) {
  const last = bands.at(-1)!
  const added = Math.ceil((after.width - before.width) / (last.high - last.low)) % 9
  return [...bands, ...Array.from({ length: added }, () => last)]
}

describe('every pattern', () => {
  it.each(Object.keys(EVERY_PATTERN))('[N1-N5] %s', (name) => {
    const wrong = new Set<string>()
    for (let i = 0; i < CASES && wrong.size < 6; i++) {
      const chance = chanceFrom(70_000 + i)
      const t = tried(anyPattern(EVERY_PATTERN[name]!, chance), chance)
      for (const law of LAWS) law(t, (what) => wrong.add(`case ${i}: ${what}`), chance)
    }
    expect([...wrong]).toEqual([])
  })
})
