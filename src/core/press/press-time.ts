import { pressHoursAt, type GlueInUse } from './glues'
import { showHours, showTemperature } from './measures'
import { coldSentence } from './choose-glue'

/** How long under pressure, and how long standing afterwards. */
export function pressTimeSentences(glue: GlueInUse, coreTemperature: number): string[] {
  const hours = pressHoursAt(glue, coreTemperature)
  if (hours === null) return [coldSentence(glue, coreTemperature)]
  const press =
    hours === 0
      ? 'It holds on touch; roll it down hard.'
      : `At least ${showHours(hours)} under pressure with cores and glue line at ${showTemperature(coreTemperature)}; ${fromWords(glue.pressHours.from)}.`
  return [press, standSentence(glue)]
}

const fromWords = (from: GlueInUse['pressHours']['from']): string =>
  from === 'data sheet'
    ? 'by its data sheet'
    : `${from === 'seen' ? 'by general figures' : from}; its data sheet goes first`

/** Why a panel must not be laid flat on the bench when it comes out. */
export function standSentence(glue: GlueInUse): string {
  const stand = `Then stand it on edge with air on both sides for ${showHours(glue.cureDays.value * 24)} before it is trimmed`
  return glue.figures.water
    ? `${stand}: the glue’s water must leave both faces alike, and seams settle as it goes.`
    : `${stand}.`
}
