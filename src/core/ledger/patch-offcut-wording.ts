import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import type { OffcutSpot } from './patch-offcut'

/** The offcut of the same leaf that a patch can be cut from, and where on the leaf that place lies. */
export function offcutSpotSentence({ offcut, spot, along, across, sameLines }: OffcutSpot, unit: LengthUnit): string {
  const say = (length: number) => showLength(Math.abs(length), unit, 'place')
  const way = along < 0 ? 'towards the numbered end' : 'towards the far end'
  const aside = sameLines ? '' : ` and ${say(across)} to the ${across < 0 ? 'left' : 'right'}`
  const figure = sameLines ? 'the same lines run on there' : 'look for like figure'
  return (
    `Offcut ${offcut.label} of the same leaf: ${say(along)} ${way}${aside}; ${figure}. ` +
    `Before it is cut off, that is ${say(spot.fromNumberedEnd)} from the numbered end, ` +
    `${say(spot.fromLeft)} from the left edge and ${say(spot.fromRight)} from the right.`
  )
}
