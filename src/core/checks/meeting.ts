import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import { MEETS } from '../geometry/tolerance'
import { isBandJoint } from '../patterns/pattern'
import type { Recipe } from '../patterns/recipe'
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
  if (judged.length === 0) return []
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
    case 'diamond':
      return 'mirrors'
    case 'box':
    case 'herringbone':
      return seam.kind === 'mitre' ? 'mirrors' : null
    case 'parquet':
    case 'planks':
      return null
    case 'radial':
      return recipe.match === 'book' ? 'mirrors' : null
    case 'strips':
      if (recipe.match === 'reverse slip') return null
      if (recipe.match === 'slip-centre-book') return isBetweenHalves(seam) ? 'mirrors' : 'repeats'
      return recipe.match === 'book' ? 'mirrors' : 'repeats'
  }
}

/** Round a box that is not square the four mirrors compose to a slide: the grain mirrors, the figure cannot everywhere. Of burl nothing is said but that the figure breaks. */
const onlyGrain = ({ part: { recipe, width, length }, flitch }: LaidFace): boolean =>
  recipe.pattern === 'box' && Math.abs(width - length) > MEETS && flitch.figure !== 'burl'

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
  return figureMeets(face, seams, { promised, seams: judged.length, of: all, mirrored: mirrored.length })
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

const breaks = (face: LaidFace, seam: SeamReport, promised: string): Finding => ({
  code: 'figure-breaks',
  grade: 'note',
  part: face.part.id,
  place: { on: 'seam', letter: seam.letter },
  measured: promised === 'mirrors' ? seam.jump : null,
  limit: 0.1,
  about: { letter: seam.letter, promised: onlyGrain(face) ? 'grain' : promised, meets: seam.meets },
  remedies: [],
})
