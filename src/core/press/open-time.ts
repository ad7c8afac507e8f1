import type { GlueInUse } from './glues'
import type { Method } from './pressing'
import { practice } from './provenance'

/** How long a pair of hands takes, common practice: minutes to roll a square metre, to lay a panel, to close the press. */
export const HAND_TIMES = {
  spreadPerSquareMetre: practice(3),
  layPerPanel: practice(2),
  closeBag: practice(3),
  closeCauls: practice(6),
} as const

/** Minutes from the first stroke of the roller till the last panel is under pressure. */
export function minutesToPressure(squareMetres: number, panels: number, method: Method, hands = 1): number {
  const { spreadPerSquareMetre, layPerPanel, closeBag, closeCauls } = HAND_TIMES
  const closing = method === 'cauls' ? closeCauls.value * panels : closeBag.value
  return (squareMetres * spreadPerSquareMetre.value + panels * layPerPanel.value) / hands + closing
}

/** Whether the glue is sure to stay open long enough, may, or won't. */
export type OpenVerdict = 'in time' | 'tight' | 'too late'

export const openVerdict = (glue: GlueInUse, minutes: number): OpenVerdict =>
  minutes <= glue.openMinutes.value ? 'in time' : minutes <= glue.openAtMost ? 'tight' : 'too late'

/** The same in a sentence. */
export function openSentence(glue: GlueInUse, minutes: number): string {
  const need = `Spreading and closing takes about ${Math.ceil(minutes)} min`
  const { value } = glue.openMinutes
  const open = value === glue.openAtMost ? `${value} min` : `${value} to ${glue.openAtMost} min, depending on the kind`
  switch (openVerdict(glue, minutes)) {
    case 'in time':
      return `${need}; the glue stays open ${open}.`
    case 'tight':
      return `${need}; the glue stays open ${open}: read its data sheet and rehearse without glue.`
    case 'too late':
      return `${need}, longer than the glue stays open (${open}): press fewer panels at once, take a slower glue or a second pair of hands.`
  }
}

/** How many panels of this many m² of glue line each can be closed while the glue is sure to be open; 0 when not even one. */
export function panelsInTime(glue: GlueInUse, squareMetresEach: number, method: Method, hands = 1): number {
  let panels = 0
  while (
    panels < 100 &&
    minutesToPressure(squareMetresEach * (panels + 1), panels + 1, method, hands) <= glue.openMinutes.value
  )
    panels++
  return panels
}
