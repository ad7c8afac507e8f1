import type { Edges } from '../geometry/box'
import { panelRing } from '../geometry/panel-outline'
import type { Flitch } from '../leaves/flitch'
import { countTaken, takesItsCount } from '../patterns/count-taken'
import { stripsInColumn } from '../patterns/herringbone'
import { parquetPieces } from '../patterns/parquet'
import { isRunning, type PlanksRecipe, type Recipe, type StripRecipe } from '../patterns/recipe'
import { pressingTroubles, roomTroubles } from '../press/press-trouble'
import type { PressRoom } from '../press/pressing'
import type { Shop } from '../shop'
import { borderTrouble } from './check-border'
import { fieldsTrouble, numberTrouble, pointTrouble } from './check-number'
import { makeUpTrouble } from './check-make-up'
import type { Part } from './job'
import { textTrouble } from './check-text'
import { outlineTrouble } from './check-outline'
import { LIMITS, LONGEST_NAME, MOST_PIECES, MOST_PLANKS, type Limits } from './limits'
import { inPlace } from './place-words'
import type { MeaningTrouble } from './trouble'

const { width, length, allowance, laterAllowance, windowTurn } = LIMITS

/** The first thing about a part that can't be so, or null. Whether its leaves are there is for the checks of the face. */
export function partTrouble(part: Part, owner: string): MeaningTrouble | null {
  return (
    textTrouble(part.name, LONGEST_NAME, inPlace([owner], ['name'])) ??
    fieldsTrouble(part, { width, length, allowance, laterAllowance, windowTurn }, [owner]) ??
    fieldsTrouble(part.core, allEdges(LIMITS.core), [owner], ['core']) ??
    fieldsTrouble(part.overhang, allEdges(LIMITS.overhang), [owner], ['overhang']) ??
    outlineTrouble(part, owner) ??
    coreTrouble(part, owner) ??
    borderTrouble(part, owner) ??
    recipeTrouble(part.recipe, owner) ??
    piecesTrouble(part.recipe, owner) ??
    countTrouble(part.recipe, owner) ??
    manyPieces(part, owner) ??
    placesTrouble(part, owner) ??
    madeUpTrouble(part, owner) ??
    asCutTrouble(part, owner) ??
    pressingTrouble(part, owner)
  )
}

const allEdges = (limits: Limits): Readonly<Record<keyof Edges, Limits>> => ({
  top: limits,
  right: limits,
  bottom: limits,
  left: limits,
})

/** A core that is smaller than the panel must still be there. */
function coreTrouble({ width, length, core, outline }: Part, owner: string): MeaningTrouble | null {
  const place = inPlace([owner], ['core'])
  const left = Math.min(width + core.left + core.right, length + core.top + core.bottom)
  if (left <= 0) return { trouble: 'nothing left', place, value: left }
  return panelRing(outline, { width, length }, core) ? null : { trouble: 'nothing left', place, value: 0 }
}

function recipeTrouble(recipe: Recipe, owner: string): MeaningTrouble | null {
  const place = (field: string) => inPlace([owner], ['recipe', field])
  return (
    (recipe.count === 'fewest' ? null : numberTrouble(recipe.count, LIMITS.count, place('count'))) ??
    numberTrouble(recipe.firstLeaf, LIMITS.leafNumber, place('firstLeaf')) ??
    (recipe.pattern === 'strips' ? togetherTrouble(recipe, place('arrangement')) : null) ??
    (recipe.pattern === 'end match' ? numberTrouble(recipe.rows, LIMITS.rows, place('rows')) : null) ??
    (recipe.pattern === 'diamond' && recipe.angle !== 'mid-sides'
      ? numberTrouble(recipe.angle, LIMITS.angle, place('angle'))
      : null) ??
    (recipe.pattern === 'diamond' || recipe.pattern === 'box'
      ? numberTrouble(recipe.sheetOf, LIMITS.sheetOf, place('sheetOf'))
      : null) ??
    (recipe.pattern === 'radial'
      ? (numberTrouble(recipe.firstSeam, LIMITS.firstSeam, place('firstSeam')) ??
        pointTrouble(recipe.centre, [owner], ['recipe', 'centre']) ??
        numberTrouble(recipe.cutFull, LIMITS.cutFull, place('cutFull')))
      : null)
  )
}

/** A count that the pattern can't lay is refused, never rounded. */
function countTrouble(recipe: Recipe, owner: string): MeaningTrouble | null {
  if (recipe.count === 'fewest' || takesItsCount(recipe)) return null
  const pattern = recipe.pattern === 'strips' ? `${recipe.match} match` : recipe.pattern
  return {
    trouble: 'count not taken',
    place: inPlace([owner], ['recipe', 'count']),
    value: recipe.count,
    pattern,
    taken: countTaken(recipe),
  }
}

/** The numbers of a herringbone, a parquet or a planked face. */
function piecesTrouble(recipe: Recipe, owner: string): MeaningTrouble | null {
  const place = (field: string) => inPlace([owner], ['recipe', field])
  switch (recipe.pattern) {
    case 'herringbone':
      return (
        numberTrouble(recipe.angle, LIMITS.boneAngle, place('angle')) ??
        numberTrouble(recipe.stripWidth, LIMITS.stripWidth, place('stripWidth')) ??
        numberTrouble(recipe.columns, LIMITS.boneColumns, place('columns'))
      )
    case 'parquet':
      return (
        numberTrouble(recipe.columns, LIMITS.grid, place('columns')) ??
        numberTrouble(recipe.rows, LIMITS.grid, place('rows')) ??
        numberTrouble(recipe.strips, LIMITS.blockStrips, place('strips'))
      )
    case 'planks':
      return (
        numberTrouble(recipe.seed, LIMITS.seed, place('seed')) ??
        numberTrouble(recipe.unevenness, LIMITS.unevenness, place('unevenness')) ??
        plankTrouble(recipe.widths, place('widths'))
      )
    default:
      return null
  }
}

function plankTrouble(widths: PlanksRecipe['widths'], place: string): MeaningTrouble | null {
  if (widths === 'seeded') return null
  if (widths.length > MOST_PLANKS)
    return { trouble: 'too many', place, value: widths.length, things: 'widths', limit: MOST_PLANKS }
  for (const strip of widths) {
    const wrong = numberTrouble(strip, LIMITS.plankWidth, place)
    if (wrong) return wrong
  }
  return null
}

/** Narrow strips on a large panel would make more pieces than anyone lays. */
function manyPieces(part: Part, owner: string): MeaningTrouble | null {
  const pieces = pieceCount(part)
  if (pieces <= MOST_PIECES) return null
  return {
    trouble: 'too many',
    place: inPlace([owner], ['recipe']),
    value: pieces,
    things: 'pieces',
    limit: MOST_PIECES,
  }
}

function pieceCount({ recipe, width, length, core, overhang, allowance, laterAllowance }: Part): number {
  if (recipe.pattern === 'parquet') return parquetPieces(recipe)
  if (recipe.pattern !== 'herringbone') return 0
  const beyond = {
    top: core.top + overhang.top,
    right: core.right + overhang.right,
    bottom: core.bottom + overhang.bottom,
    left: core.left + overhang.left,
  }
  const lost = { first: allowance, later: laterAllowance }
  return recipe.columns * stripsInColumn(recipe, { width, length, beyond, lost, between: 0 })
}

/** Two halves booked at the centre leave no choice of arrangement. */
function togetherTrouble({ match, arrangement }: StripRecipe, place: string): MeaningTrouble | null {
  if (match !== 'slip-centre-book' || arrangement === 'centre balance') return null
  return { trouble: 'not together', place, value: match, needs: 'centre balance' }
}

function placesTrouble({ positions, chosen, nudges }: Part, owner: string): MeaningTrouble | null {
  for (const [group, at] of Object.entries(positions)) {
    const wrong = pointTrouble(at, [owner], ['positions', group])
    if (wrong) return wrong
  }
  for (const [cell, leaf] of Object.entries(chosen)) {
    const wrong = numberTrouble(leaf, LIMITS.leafNumber, inPlace([owner], ['chosen', cell]))
    if (wrong) return wrong
  }
  for (const [cell, { leaf, by }] of Object.entries(nudges)) {
    const within = ['nudges', cell]
    const wrong =
      numberTrouble(leaf, LIMITS.leafNumber, inPlace([owner], [...within, 'leaf'])) ??
      pointTrouble(by, [owner], [...within, 'by'])
    if (wrong) return wrong
  }
  return null
}

function madeUpTrouble({ madeUp }: Part, owner: string): MeaningTrouble | null {
  for (const [cell, makeUp] of Object.entries(madeUp)) {
    const wrong = makeUpTrouble(makeUp, [owner], ['madeUp', cell])
    if (wrong) return wrong
  }
  return null
}

function asCutTrouble({ asCut }: Part, owner: string): MeaningTrouble | null {
  for (const [at, measured] of Object.entries(asCut)) {
    const wrong = numberTrouble(measured, LIMITS.measured, inPlace([owner], ['asCut', at]))
    if (wrong) return wrong
  }
  return null
}

/** As `partTrouble`, for what a part asks of the figure of its flitch: only burl has no grain that a window must lie along. */
export function figureTrouble({ windowTurn, recipe }: Part, { figure }: Flitch, owner: string): MeaningTrouble | null {
  if (windowTurn === 0) return null
  const turned = { trouble: 'window not turned', place: owner, degrees: windowTurn } as const
  if (figure !== 'burl') return { ...turned, why: 'grain' }
  return isRunning(recipe) ? { ...turned, why: 'running' } : null
}

const pressingTrouble = ({ pressing }: Part, owner: string): MeaningTrouble | null =>
  pressingTroubles(pressing).length === 0
    ? null
    : { trouble: 'bad pressing', place: inPlace([owner], ['pressing']), pressing }

/** As `partTrouble`, for what the shop presses with. */
export const pressRoomTrouble = (room: PressRoom): MeaningTrouble | null =>
  roomTroubles(room).length === 0 ? null : { trouble: 'bad press room', place: 'the press room', room }

/** As `partTrouble`, for the shop's own figures. */
export function shopTrouble({ clearance, tolerates: _, splitTape: __, ...figures }: Shop): MeaningTrouble | null {
  const limits = Object.fromEntries(Object.keys(clearance).map((kind) => [kind, LIMITS.clearance]))
  return (
    fieldsTrouble(clearance, limits as Record<keyof Shop['clearance'], Limits>, [], ['shop', 'clearance']) ??
    fieldsTrouble(
      figures,
      {
        sliver: LIMITS.sliver,
        leastOverhang: LIMITS.leastOverhang,
        offCentre: LIMITS.offCentre,
        longestSeam: LIMITS.longestSeam,
        betweenPieces: LIMITS.betweenPieces,
      },
      [],
      ['shop'],
    )
  )
}
