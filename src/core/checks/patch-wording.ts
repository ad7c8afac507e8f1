import { ofFlitch } from '../leaves/flitch-words'
import type { LeafSpot, PatchLeaf, PatchPlace } from '../seams/find-patch'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** No more leaves than this are told of: farther off in the log the figure is another. */
const NEAREST = 3

/**
 * Where a spot of the face came from, where the same figure is to be had, and how to lay the patch; between them what is
 * to be said of an offcut of the same leaf.
 */
export function patchSentences(place: PatchPlace, unit: LengthUnit, offcut: string | null = null): readonly string[] {
  const free = place.others.find(({ trouble }) => trouble === null)
  return [
    `This is leaf ${place.leaf}${ofFlitch(place.ofFlitch)}, ${place.turnedOver ? 'turned over' : 'number up'}. ${spotWords(place.spot, unit)}`,
    ...(offcut ? [offcut] : []),
    ...place.others.slice(0, NEAREST).map((other) => otherSentence(other, unit)),
    ...(free && place.others.indexOf(free) >= NEAREST
      ? [`The nearest free one: ${lowered(otherSentence(free, unit))}`]
      : []),
    ...(free ? [] : [`No other leaf has this spot free.${offcut ? '' : ' Look for like figure among the spares.'}`]),
    ...(free || offcut
      ? [
          `Cut the patch with the number up, and lay it ${place.turnedOver ? 'turned over, as the leaf lies' : 'so'}, its grain the same way.`,
        ]
      : []),
  ]
}

/** For the mark on the face itself: `leaf 4, turned over`. */
export const patchMark = ({ leaf, ofFlitch: of, turnedOver }: PatchPlace): string =>
  `leaf ${leaf}${ofFlitch(of)}, ${turnedOver ? 'turned over' : 'number up'}`

function spotWords(spot: LeafSpot | null, unit: LengthUnit): string {
  const say = (length: number) => showLength(length, unit, 'place')
  return spot === null
    ? 'The window reaches past the leaf here.'
    : `With the number up, the spot lies ${say(spot.fromNumberedEnd)} from the numbered end, ${say(spot.fromLeft)} from the left edge and ${say(spot.fromRight)} from the right.`
}

function otherSentence({ leaf, state, steps, spot, trouble }: PatchLeaf, unit: LengthUnit): string {
  const far = Math.abs(steps)
  const name = `Leaf ${leaf}${state === 'spare' ? ', a spare' : ''}, ${far} ${far === 1 ? 'leaf' : 'leaves'} ${steps > 0 ? 'on' : 'back'}`
  switch (trouble?.trouble) {
    case 'off the leaf':
      return `${name}: the spot lies on or beside its edge.`
    case 'defect':
      return `${name}: there is a ${trouble.kind} at the spot.`
    case 'taken':
      return `${name}: “${trouble.part}” takes this wood.`
    default:
      return `${name}, has the same figure free. ${spotWords(spot, unit)}`
  }
}

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
