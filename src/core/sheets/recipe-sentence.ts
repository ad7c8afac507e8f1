import type { LaidFace } from '../fit/lay-face'
import type { Part } from '../job/job'
import type { FourWayRecipe, RadialRecipe, StripRecipe } from '../patterns/recipe'
import { showAngle } from '../units/read-angle'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

const JOINTING: Readonly<Record<Part['jointing'], string>> = {
  packet: 'in a packet',
  pair: 'in pairs',
  overlap: 'overlapped and cut through both',
}

/** What has been decided about a face, as one sentence: the same that heads the face on the screen. */
export function recipeSentence({ part, count }: LaidFace, unit: LengthUnit): string {
  const say = (length: number) => showLength(length, unit, 'seam')
  const { recipe, overhang } = part
  const leaves = `${count} ${count === 1 ? 'leaf' : 'leaves'} from leaf ${recipe.firstLeaf}`
  const sides =
    overhang.left === overhang.right
      ? `${say(overhang.left)} over at the sides`
      : `${say(overhang.left)} over at the left, ${say(overhang.right)} at the right`
  const ends =
    overhang.top === overhang.bottom
      ? `${say(overhang.top)} at the ends`
      : `${say(overhang.top)} at the top, ${say(overhang.bottom)} at the bottom`
  const jointing = `${say(part.allowance)} an edge for jointing ${JOINTING[part.jointing]}`
  return `${part.name} is faced in ${matchWords(recipe, leaves)}, with ${sides}, ${ends}, and ${jointing}.`
}

function matchWords(recipe: Part['recipe'], leaves: string): string {
  switch (recipe.pattern) {
    case 'strips':
      return stripWords(recipe, leaves)
    case 'four-way':
      return fourWayWords(recipe, leaves)
    case 'radial':
      return radialWords(recipe, leaves)
  }
}

function stripWords(recipe: StripRecipe, leaves: string): string {
  const widths =
    recipe.arrangement === 'running'
      ? `each as wide as it goes, laid from the ${recipe.startAt} edge`
      : `equal ${recipe.equal}`
  const turns = recipe.match === 'book' ? `opened on its ${recipe.spine} edge` : `with the ${recipe.sideUp} side up`
  return `${recipe.arrangement}, a ${recipe.match} match of ${leaves}, ${widths}, ${turns}`
}

const fourWayWords = (recipe: FourWayRecipe, leaves: string): string =>
  `four-way, a book and end match of ${leaves}, equal ${recipe.equal}, opened on its ${recipe.spine} edge, ` +
  `numbered ends at the ${recipe.numberedEnds === 'inside' ? 'cross seam' : 'outer ends'}`

const radialWords = (recipe: RadialRecipe, leaves: string): string =>
  `radial, a ${recipe.match} match of ${leaves}, numbered ends at the ${recipe.numberedEnds === 'inside' ? 'centre' : 'rim'}, ` +
  `the first seam at ${showAngle(recipe.firstSeam)}`
