import { closing, CUT_FULL_DEGREES, type Sunburst } from '../seams/closing'
import { showAngle } from '../units/read-angle'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'

/** What happens at the last joint when each wedge is wrong by so many degrees, and what to do about it. */
export function closingSentences(sunburst: Sunburst, errorDegrees: number, unit: LengthUnit): readonly string[] {
  return [closingSentence(sunburst, errorDegrees, unit), adviceSentence(sunburst, unit)]
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180

function closingSentence(sunburst: Sunburst, errorDegrees: number, unit: LengthUnit): string {
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

function adviceSentence({ count, radius }: Sunburst, unit: LengthUnit): string {
  const angle = 360 / count
  const { least, most } = CUT_FULL_DEGREES
  const takes = [least, most].flatMap((full) => closing({ count, radius }, radians(full)).truing ?? [])
  const cost =
    takes.length === 0
      ? ''
      : ` Truing the halves then takes ${takes.map((length) => showLength(length, unit, 'seam')).join(' to ')} off each half edge at the rim.`
  return `Cut each wedge ${showAngle(least)} to ${showAngle(most)} full, ${showAngle(angle + least)} to ${showAngle(angle + most)}.${cost}`
}
