import { bagOrder, NEVER_HOLLOW } from '../press/bag-advice'
import { edgeOrder } from '../press/edges'
import { amountSentence, BOTH_AT_ONCE, coatingSentence } from '../press/glue-amount'
import type { PressPlan } from '../press/press-plan'
import { pressTimeSentences } from '../press/press-time'
import type { Pressing, PressRoom } from '../press/pressing'
import type { StepName } from '../press/steps'

/** One thing to do at the press, with what can hurt there. */
export interface PressStep {
  readonly words: string
  readonly cautions: readonly string[]
}

const CENTRE_LINES = 'Draw centre lines on all four edges of the core and on the tape.'
const STRIP = 'Take all tape off the glue side. Core, leaves and cauls at the temperature of the shop, clean and dry.'

/** The order of hands on one sheet, from the core to the finished edges; each caution stands where it first applies. */
export function pressSteps(pressing: Pressing, plan: PressPlan, room: PressRoom): readonly PressStep[] {
  const shown = new Set<string>()
  const fresh = (steps: readonly StepName[]): string[] => {
    const words = steps.flatMap((step) => plan.cautions[step].map((caution) => caution.words))
    const first = words.filter((sentence, i) => !shown.has(sentence) && words.indexOf(sentence) === i)
    for (const sentence of first) shown.add(sentence)
    return first
  }
  const row = (words: string, ...at: readonly StepName[]): PressStep => ({ words, cautions: fresh(at) })
  const edges = edgeOrder(pressing.edges)
  const pressed = edges.indexOf(PRESSED)
  const [time, stand] = pressTimeSentences(plan.glue.inUse, room.coreTemperature)
  return [
    row(plan.edges[0] ?? ''),
    ...edges.slice(0, pressed).map((words) => row(words, 'edges')),
    row(pressing.method === 'leaf by leaf' ? STRIP : `${STRIP} ${CENTRE_LINES}`),
    ...(pressing.method === 'leaf by leaf' ? [] : [...rehearsal(plan).map((words) => row(words, 'rehearse'))]),
    row(amountSentence(plan.glue.need, plan.glue.inUse), 'press'),
    row([coatingSentence(plan.glue.inUse), ...bothAtOnce(plan)].join(' ')),
    ...atThePress(pressing, plan).map((words, i) => withHollow(row(words), pressing.method === 'bag' && i === 0)),
    row(time ?? ''),
    ...(stand ? [row(stand)] : []),
    ...edges.slice(pressed + 1).map((words) => row(words, 'trim', 'edges')),
    row('Damp and scrape off the tape, scrape, then sand.', 'scrape the tape', 'scrape', 'sand'),
    row(plan.afterwards.slice(0, 2).join(' ')),
  ].filter(({ words }) => words !== '')
}

/** As the order of work at the edges has it. */
const PRESSED = 'Press face and back.'

function rehearsal({ glue }: PressPlan): readonly string[] {
  const open = glue.sentences.find((sentence) => sentence.startsWith('Spreading and closing'))
  return [`Rehearse without glue, with a watch.${open ? ` ${open}` : ''}`]
}

/** What is laid on what, in the bag, between cauls, or by the hammer. */
function atThePress({ method, layers }: Pressing, plan: PressPlan): readonly string[] {
  if (method === 'bag') return inFewRows(bagOrder(layers))
  // the clamps' forces stand among the figures
  return method === 'cauls' ? plan.press.slice(2) : plan.press
}

const bothAtOnce = ({ glue }: PressPlan): readonly string[] => (glue.need.lines.length > 1 ? [BOTH_AT_ONCE] : [])

const withHollow = (step: PressStep, bagged: boolean): PressStep =>
  bagged ? { ...step, cautions: [...step.cautions, NEVER_HOLLOW] } : step

/** Short sentences that follow on each other share a row, so that the order fits the page. */
function inFewRows(sentences: readonly string[]): string[] {
  const rows: string[] = []
  for (const sentence of sentences) {
    const last = rows.at(-1)
    if (last !== undefined && last.length + sentence.length < 165) rows[rows.length - 1] = `${last} ${sentence}`
    else rows.push(sentence)
  }
  return rows
}
