import { bandPassed } from './band-pass'
import { mirrored, type GreyPicture } from './grey'
import { likenessAt } from './likeness'

/**
 * How alike a picture is to itself seen from behind, −1 to 1: 1 for a crown in the middle of the window, near 0 for a
 * figure that runs off to one side. null where there is too little wood to say.
 */
export const symmetryScore = (window: GreyPicture): number | null => figureSymmetry(bandPassed(window))

/** The same of a picture that slow changes of light have been taken off already. */
export const figureSymmetry = (figure: GreyPicture): number | null =>
  likenessAt(figure, mirrored(figure), { across: 0, along: 0 })

/**
 * How much goes on in a picture: the root mean square of its figure in darkness by the logarithm, 0 for a plain board,
 * about 0.1 for a bold one. null where there is no wood.
 */
export const livelinessScore = (window: GreyPicture): number | null => figureLiveliness(bandPassed(window))

/** The same of a picture that slow changes of light have been taken off already. */
export function figureLiveliness({ values, known }: GreyPicture): number | null {
  let [sum, count] = [0, 0]
  for (let i = 0; i < values.length; i++) {
    if (known[i] === 0) continue
    sum += values[i]! * values[i]!
    count++
  }
  return count > 0 ? Math.sqrt(sum / count) : null
}
