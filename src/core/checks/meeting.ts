import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { MEETS } from '../geometry/tolerance'
import { isBandJoint } from '../patterns/pattern'
import { leavesEach } from '../patterns/jointed-sheet'
import type { Recipe } from '../patterns/recipe'
import { GRAIN_MEETS, grainMiss } from '../seams/grain-at-seam'
import type { SeamReport } from '../seams/seam-report'

/** Whether the figure does at every seam what the match promises. */
export function checkMeeting(face: LaidFace, all: readonly SeamReport[]): readonly Finding[] {
  // a border is laid to frame the figure, not to match it
  const seams = all.filter(({ kind }) => !isBandJoint(kind))
  if (seams.length === 0 || face.pieces.some(({ leaf }) => leaf === null)) return []
  const { recipe } = face.part
  const judged = seams.flatMap((seam) => {
    const promised = promisedAt(recipe, seam)
    return promised ? [{ seam, promised }] : []
  })
  if (judged.length === 0) return nothingAsked(face)
  const broken = judged.filter(({ seam, promised }) => seam.meets !== promised)
  return broken.length === 0
    ? [allMeet(face, judged, seams.length)]
    : broken.map(({ seam, promised }) => breaks(face, seam, promised))
}

type Promised = 'mirrors' | 'repeats'

/**
 * What the figure ought to do at a seam. Where grain runs against grain by the nature of the match (a slipped sunburst,
 * a reverse slip, whose neighbours lie end against end, a parquet) or no match is wanted, nothing is promised.
 */
function promisedAt(recipe: Recipe, seam: SeamReport): Promised | null {
  switch (recipe.pattern) {
    case 'four-way':
    case 'end match':
      return 'mirrors'
    case 'diamond':
      return seam.kind === 'sheet' ? 'repeats' : 'mirrors'
    case 'box':
      return seam.kind === 'sheet' ? 'repeats' : seam.kind === 'mitre' ? 'mirrors' : null
    case 'herringbone':
      return seam.kind === 'mitre' ? 'mirrors' : null
    case 'parquet':
    case 'planks':
      return null
    case 'radial':
      // a booked pair shows the same wood at both its edges
      return recipe.match === 'book' || recipe.eachFrom === 'booked pair' ? 'mirrors' : null
    case 'strips':
      if (recipe.match === 'reverse slip') return null
      if (recipe.match === 'slip-centre-book') return isBetweenHalves(seam) ? 'mirrors' : 'repeats'
      return recipe.match === 'book' ? 'mirrors' : 'repeats'
  }
}

/**
 * Why the figure cannot mirror at a seam however well the leaves are laid: round a box that is not square the four mirrors
 * compose to a slide, and of an odd number of wedges two neighbours lie the same side up. The grain mirrors all the same.
 */
function cannotMirror({ part, pieces }: LaidFace, { stretches }: SeamReport): 'box' | 'odd ring' | null {
  const { recipe, width, length } = part
  if (recipe.pattern === 'box') return Math.abs(width - length) > MEETS ? 'box' : null
  if (recipe.pattern !== 'radial') return null
  const isOver = (id: string) => pieces.find(({ cell }) => cell.id === id)?.cell.turn.turnedOver
  return stretches.some(({ left, right }) => isOver(left) === isOver(right)) ? 'odd ring' : null
}

const isBetweenHalves = ({ stretches }: SeamReport): boolean =>
  stretches.every(({ left, right }) => left === 'L1' && right === 'R1')

interface Judged {
  readonly seam: SeamReport
  readonly promised: Promised
}

function allMeet(face: LaidFace, judged: readonly Judged[], all: number): Finding {
  const mirrored = judged.filter(({ promised }) => promised === 'mirrors')
  const promised = mirrored.length === judged.length ? 'mirrors' : mirrored.length === 0 ? 'repeats' : 'both'
  // only where the figure mirrors does it matter how far apart the two faces lie in the log
  const seams = (promised === 'both' ? mirrored : judged).map(({ seam }) => seam)
  return figureMeets(face, seams, {
    promised,
    seams: judged.length,
    of: all,
    mirrored: mirrored.length,
    ...(face.part.recipe.pattern === 'herringbone' && { only: 'columns' }),
    ...(promised === 'both' && leavesEach(face.part.recipe) > 1 && { sheetOf: leavesEach(face.part.recipe) }),
  })
}

const figureMeets = (face: LaidFace, seams: readonly SeamReport[], about: Finding['about']): Finding => ({
  code: 'figure-meets',
  grade: 'good',
  part: face.part.id,
  place: { on: 'face' },
  measured: Math.max(...seams.map(({ depthOffset }) => depthOffset ?? 0)),
  limit: null,
  about,
  remedies: [],
})

function breaks(face: LaidFace, seam: SeamReport, promised: Promised): Finding {
  const why = promised === 'mirrors' ? cannotMirror(face, seam) : null
  // burl has no grain to speak of
  const hasGrain = face.flitch.figure !== 'burl'
  return {
    code: 'figure-breaks',
    grade: 'note',
    part: face.part.id,
    place: { on: 'seam', letter: seam.letter },
    measured: promised === 'mirrors' ? seam.jump : null,
    limit: MEETS,
    about: {
      letter: seam.letter,
      promised: why && hasGrain ? 'grain' : promised,
      meets: seam.meets,
      ...(why && { why }),
      ...(promised === 'mirrors' && !why && hasGrain && { grain: grainOff(face, seam) }),
    },
    remedies: [],
  }
}

/** By how many degrees the grain misses its mirror at a seam; 0 where it mirrors. */
function grainOff({ pieces }: LaidFace, { sides }: SeamReport): number {
  const laid = (id: string) => pieces.find(({ cell }) => cell.id === id)!.logToPanel
  const worst = Math.max(...sides.map(({ edge, left, right }) => grainMiss(edge, laid(left), laid(right))))
  return worst > GRAIN_MEETS ? worst : 0
}

/** The match asks nothing of the figure: that is said too, so that nobody waits for it. */
const nothingAsked = ({ part: { id, recipe }, flitch }: LaidFace): readonly Finding[] => {
  const what = whatIsLaid(recipe)
  // of burl no grain is told
  if (what === 'slip ring' && flitch.figure === 'burl') return []
  const place = { on: 'face' } as const
  return [
    {
      code: 'nothing-asked',
      grade: 'good',
      part: id,
      place,
      measured: null,
      limit: null,
      about: { what },
      remedies: [],
    },
  ]
}

function whatIsLaid(recipe: Recipe): string {
  switch (recipe.pattern) {
    case 'planks':
      return recipe.order
    case 'parquet':
      return recipe.strips === 1 ? 'parquet' : 'basket'
    case 'radial':
      return 'slip ring'
    default:
      return 'reverse slip'
  }
}
