import type { Finding } from '../finding'

/** Lengths as the job shows them. */
type Say = (length: number) => string

/** Lengths at the gap, and how far apart in the log. */
interface MeetSay {
  readonly seam: Say
  readonly depth: Say
}

/** What the words need of a finding. */
export type PairFacts = Pick<Finding, 'about' | 'measured'>

const text = ({ about }: PairFacts, key: string): string => String(about[key] ?? '')
const number = ({ about }: PairFacts, key: string): number => Number(about[key] ?? 0)

/** What the figure does across the gap, and what is lost there. */
export const pairMeetsWords = (f: PairFacts, say: MeetSay): string =>
  `Across the gap to “${text(f, 'other')}” ${MEETS[text(f, 'meets')]!(f, say)}. ${lostWords(f, say.seam)}`

const MEETS: Readonly<Record<string, (f: PairFacts, say: MeetSay) => string>> = {
  mirrors: (f, say) =>
    number(f, 'depth') < 0.01
      ? 'the figure mirrors; the two faces of one knife cut meet there'
      : `the figure mirrors; the faces that meet lie ${say.depth(number(f, 'depth'))} apart in the log`,
  repeats: () => 'the figure repeats, as a slip match does',
  'runs on': () => 'the figure runs on without a jump, from the same leaves',
  steps: (f, say) => `the figure runs on from the same leaves, but jumps ${say.seam(number(f, 'jump'))}`,
  breaks: (f, say) => `the figure does not meet: it jumps ${say.seam(number(f, 'jump'))}`,
}

/** What lies between the two finished edges, and what it is made of. */
const lostWords = (f: PairFacts, say: Say): string =>
  text(f, 'pressed') === 'one board'
    ? `Sawn from one board, the gap of ${say(number(f, 'gap'))} is all that is lost.`
    : `Pressed apart, ${say(f.measured ?? 0)} is lost between them: ${say(number(f, 'over'))} over at each edge and the gap of ${say(number(f, 'gap'))}.`

/** Why two parts can't be read as one, and what to do about it. */
export const pairVoidWords = (f: Finding, say: Say): string =>
  `The pair with “${text(f, 'other')}” does not hold: ${VOID[text(f, 'why')]!(f, say)}. Until then each is laid by itself.`

const VOID: Readonly<Record<string, (f: Finding, say: Say) => string>> = {
  pattern: () => 'only leaves side by side run on across a gap. Book the two, or choose leaves side by side',
  'running widths': () =>
    'where leaves are as wide as they go, the second can’t follow. Choose balance or centre balance for the first',
  'spun leaves': () =>
    'every other leaf is spun, and the turns don’t come out across the gap. Choose book or slip for the first, or book the two with an odd number of leaves',
  'no mirror image': () =>
    'the first’s pattern has no mirror image of this size. Make both as wide, with the same overhang, or choose another pattern',
  border: () => 'a border runs round one of them, so that the figure does not reach the gap. Take the border off',
  grain: () => 'the grain of one stands and that of the other lies. Turn one of them',
  outline: () => 'one of them has no straight edge at the gap with an overhang of its own. Choose another outline',
  lengths: (f, say) =>
    `along the gap this one is ${say(f.measured ?? 0)} and the other ${say(f.limit ?? 0)}. Make both the same`,
  'no more leaves': () => 'no leaves come after those of the first. Start the first at an earlier leaf',
}
