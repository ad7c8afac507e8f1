import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import type { Recipe } from '../patterns/recipe'
import type { SeamReport } from '../seams/seam-report'

/** Whether the figure does at every seam what the match promises. */
export function checkMeeting(face: LaidFace, seams: readonly SeamReport[]): readonly Finding[] {
  if (seams.length === 0 || face.pieces.some(({ leaf }) => leaf === null)) return []
  const promised = promisedBy(face.part.recipe)
  if (!promised) return []
  const broken = seams.filter(({ meets }) => meets !== promised)
  return broken.length === 0 ? [allMeet(face, seams, promised)] : broken.map((seam) => breaks(face, seam, promised))
}

/** A slipped sunburst promises nothing: each wedge shows the same figure, but grain runs against grain at its seams. */
function promisedBy(recipe: Recipe): 'mirrors' | 'repeats' | null {
  if (recipe.pattern === 'four-way' || recipe.match === 'book') return 'mirrors'
  return recipe.pattern === 'strips' ? 'repeats' : null
}

const allMeet = (face: LaidFace, seams: readonly SeamReport[], promised: string): Finding => ({
  code: 'figure-meets',
  grade: 'good',
  part: face.part.id,
  place: { on: 'face' },
  measured: Math.max(...seams.map(({ depthOffset }) => depthOffset ?? 0)),
  limit: null,
  about: { promised, seams: seams.length },
  remedies: [],
})

const breaks = (face: LaidFace, seam: SeamReport, promised: string): Finding => ({
  code: 'figure-breaks',
  grade: 'note',
  part: face.part.id,
  place: { on: 'seam', letter: seam.letter },
  measured: promised === 'mirrors' ? seam.jump : null,
  limit: 0.1,
  about: { letter: seam.letter, promised, meets: seam.meets },
  remedies: [],
})
