import { closing, CUT_FULL_DEGREES, leftToPlane, type Sunburst } from '../seams/closing'
import { showAngle } from '../units/read-angle'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** What happens at the last joint when each wedge is wrong by so many degrees, and what to do about it. */
export function closingSentence(sunburst: Sunburst, errorDegrees: number, unit: LengthUnit): string {
  const { count, radius } = sunburst
  const say = (length: number) => showLength(length, unit, 'seam')
  const { state, opening, truing } = closing(sunburst, radians(errorDegrees))
  const at = `at ${say(radius)} from the centre`
  const each = `${count} wedges each ${showAngle(Math.abs(errorDegrees))}`
  if (state === 'closes') return `${count} wedges of ${showAngle(360 / count)} close all the way.`
  if (state === 'overlaps')
    return truing === null
      ? `${each} too wide overlap by ${say(opening)} ${at}. An odd number has no joint straight across: trim the last wedge to fit.`
      : `${each} too wide overlap by ${say(opening)} ${at}. Join them in two halves and true those: ${say(truing)} comes off each half edge there, and nothing at the centre.`
  return truing === null
    ? `${each} too narrow gape by ${say(opening)} ${at}. Cut a wider wedge to close it.`
    : `${each} too narrow gape by ${say(opening)} ${at}. To true the halves a strip of ${say(truing)} comes off each at the centre, and the centre is lost. Better cut the wedges anew.`
}

/** How full each wedge is cut, and what that leaves to plane off each half. */
export function cutFullSentence(sunburst: Sunburst, fullDegrees: number, unit: LengthUnit): string {
  const { count, radius } = sunburst
  const say = (length: number) => showLength(length, unit, 'seam')
  const share = 360 / count
  if (fullDegrees === 0) {
    const { least, most } = CUT_FULL_DEGREES
    return `Each wedge is cut to its share, ${showAngle(share)}: nothing is left to plane, and one that comes out narrow costs the centre. Common practice is ${showAngle(least)} to ${showAngle(most)} full.`
  }
  const cut = `Each wedge is cut ${showAngle(fullDegrees)} full, to ${showAngle(share + fullDegrees)}, alike on both sides of its middle.`
  const left = leftToPlane(sunburst, radians(fullDegrees))
  if (!left)
    return `${cut} An odd number has no joint straight across: the last wedge is trimmed by ${showAngle(count * fullDegrees)}, ${say(closing(sunburst, radians(fullDegrees)).opening)} at ${say(radius)} from the centre.`
  return `${cut} Each half of ${count / 2} then stands ${showAngle((count / 2) * fullDegrees)} over straight. Plane that off along its last seam, ${say(left.inAll)} at ${say(radius)} from the centre, shared between its two edges, and nothing at the centre.`
}
