import type { LaidBorder, LaidFace } from '../fit/lay-face'
import { ringEdges } from '../geometry/polygon'
import { edgeLength } from '../geometry/segment'
import type { Part } from '../job/job'
import { ofFlitch } from '../leaves/flitch-words'
import type { Border } from '../patterns/border'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { recipeSentence } from './recipe-sentence'

/** All that heads a sheet: the recipe, and the border where there is one. */
export const faceSentence = (face: LaidFace, unit: LengthUnit): string =>
  [recipeSentence(face.part, face.count, unit), borderSentence(face, unit)].filter(Boolean).join(' ')

/** How the corners of a border are made. */
export const CORNER_WORDS: Readonly<Record<Border['corners'], string>> = {
  mitred: 'mitred',
  'sides through': 'butted, the sides running through',
  'ends through': 'butted, top and bottom running through',
}

/** A round panel has no corners: its border is made of segments. */
export const hasCorners = ({ outline: { shape } }: Part): boolean => shape !== 'circle' && shape !== 'ellipse'

/** What has been decided about a border as one sentence, or two; nothing without one. */
export function borderSentence({ part, flitch, border: laid }: LaidFace, unit: LengthUnit): string {
  const { border } = part
  if (!border || !laid) return ''
  const say = (length: number) => showLength(length, unit, 'seam')
  const corners = hasCorners(part) ? `its corners ${CORNER_WORDS[border.corners]}, ` : ''
  const pieces = hasCorners(part) ? 'pieces' : 'segments'
  const isOther = laid.flitch.id !== flitch.id
  const next = isOther ? 'from its first one' : 'the next after those of the field'
  const from = border.firstLeaf === 'after the field' ? next : `from leaf ${border.firstLeaf}`
  const leaves = `${laid.leaves} ${laid.leaves === 1 ? 'leaf' : 'leaves'}${ofFlitch(isOther ? laid.flitch.name : null)}`
  return `A border ${say(border.width)} wide lies round the field, ${corners}its grain ${border.grain} the band, in ${pieces} at most ${say(border.pieceLength)} long, of ${leaves}, ${from}, the ${border.sideUp} side up.${stringSentence(laid, border, unit)}`
}

/** How much string it takes: measured along its outer edge, from mitre to mitre. */
export const stringLength = ({ string }: LaidBorder): number =>
  string ? ringEdges(string.outside.ring).reduce((sum, edge) => sum + edgeLength(edge), 0) : 0

function stringSentence(laid: LaidBorder, { string }: Border, unit: LengthUnit): string {
  if (!string) return ''
  const wood = string.species === '' ? '' : ` of ${string.species}`
  return ` A string${wood}, ${showLength(string.width, unit, 'exact')} wide, lies between border and field: ${showLength(stringLength(laid), unit, 'place')} of it.`
}
