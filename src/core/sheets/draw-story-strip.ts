import { frame, line, text } from '../drawing/build'
import type { Drawing, Item } from '../drawing/drawing'
import { itemsBox } from '../drawing/item-box'
import { textWidth } from '../drawing/text-width'
import { point } from '../geometry/point'
import { present } from '../invariant'
import type { StoryStrip, StripLine, StripMark } from '../templates/story-strip'
import { bareLength, showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { bold, column, plain } from './card'
import type { JudgedFace } from './judged-face'
import { pairSentences } from './pair-words'

/** How wide a strip is, and the white round it. */
export const STRIP_WIDTH = 50
export const STRIP_ROOM = 6

/** Where the sizes of the fields stand, and where the upright names begin, below its upper edge. */
const FIELD = STRIP_WIDTH - 2.2
const NAMES_FROM = STRIP_WIDTH - 7.5
const NAME = 3.6
/** Names that stand upright need this much each. */
const NAME_STEP = 4.3

const WORDS: Readonly<Record<StripLine, string>> = {
  sheet: 'sheet',
  core: 'core',
  trim: 'trim',
  centre: 'centre',
  seam: 'seam',
}

const STROKES: Readonly<Record<StripLine, { readonly pen: number; readonly dash: readonly number[] | null }>> = {
  sheet: { pen: 0.5, dash: null },
  core: { pen: 0.3, dash: [0.8, 0.8] },
  trim: { pen: 0.3, dash: [8, 2, 1, 2] },
  centre: { pen: 0.2, dash: [4, 1, 0.8, 1] },
  seam: { pen: 0.35, dash: null },
}

/**
 * A strip at full scale, laid to the taped sheet's edge: every line to be set out with its distance from that edge, and
 * between the seams how far they are apart. Across, it begins at the sheet's left edge as seen from the show side; along,
 * at its upper edge.
 */
export function drawStoryStrip(face: JudgedFace, strip: StoryStrip, unit: LengthUnit): Drawing {
  const onStrip = (at: number) => STRIP_ROOM + at
  const items: readonly Item[] = [
    frame('mark', {
      min: point(onStrip(0), STRIP_ROOM),
      max: point(onStrip(strip.length), STRIP_ROOM + STRIP_WIDTH),
    }),
    ...strip.marks.flatMap((mark) => markLine(mark, onStrip(mark.at))),
    ...markNames(strip, unit),
    ...fields(strip, unit),
    ...heading(face, strip, unit),
  ]
  const { max } = present(itemsBox(items), 'a strip has lines')
  return {
    title: `${face.part.name}, story strip ${strip.axis}`,
    extent: { min: point(0, 0), max: point(max.x + STRIP_ROOM, max.y + 3) },
    items,
  }
}

/** The strongest line of those that fall together is drawn. */
const STRONGEST: readonly StripLine[] = ['sheet', 'seam', 'trim', 'core', 'centre']

function markLine({ lines }: StripMark, x: number): readonly Item[] {
  const kind = STRONGEST.find((one) => lines.includes(one)) ?? 'seam'
  const layer = kind === 'seam' ? 'seam' : kind === 'trim' ? 'trim' : kind === 'sheet' ? 'cut' : 'mark'
  return [line(layer, [point(x, STRIP_ROOM), point(x, STRIP_ROOM + STRIP_WIDTH)], STROKES[kind])]
}

/** What each line is and how far from the strip's beginning, upright beside it; those too near are moved along. */
function markNames({ marks, length }: StoryStrip, unit: LengthUnit): readonly Item[] {
  const places: number[] = []
  for (const { at } of marks) {
    // towards the end a name stands before its line, which is nearer to its neighbours there
    const beside = length - at < 60 && at > length / 2 ? at - 1 : at + NAME
    places.push(Math.max(beside, (places.at(-1) ?? -Infinity) + NAME_STEP))
  }
  // the last names are pushed back from the end
  for (let i = places.length - 1, limit = length - 1; i >= 0; i--, limit -= NAME_STEP) {
    if (places[i]! <= limit) break
    places[i] = limit
  }
  return marks.map((mark, i) =>
    text(point(STRIP_ROOM + places[i]!, STRIP_ROOM + NAMES_FROM), nameOf(mark, unit), {
      size: NAME,
      angle: -Math.PI / 2,
      weight: mark.letters.length > 0 ? 'bold' : 'regular',
    }),
  )
}

function nameOf({ lines, letters, at }: StripMark, unit: LengthUnit): string {
  const said = STRONGEST.filter((one) => lines.includes(one)).map((one) =>
    one === 'seam' ? `seam ${letters.join(' ')}` : WORDS[one],
  )
  return `${said.join(', ')} ${bareLength(at, unit, 'seam')}`
}

/** How far apart the seams and the trimmed edges are, along the lower edge. */
function fields({ marks }: StoryStrip, unit: LengthUnit): readonly Item[] {
  const ends = marks.filter(({ lines }) => lines.includes('seam') || lines.includes('trim'))
  return ends.slice(1).flatMap((mark, i) => {
    const [from, to] = [ends[i]!.at, mark.at]
    const words = showLength(to - from, unit, 'seam')
    if (textWidth(words, 4.2, 'bold') + 4 > to - from) return []
    return [
      text(point(STRIP_ROOM + (from + to) / 2, STRIP_ROOM + FIELD), words, {
        size: 4.2,
        weight: 'bold',
        anchor: 'middle',
      }),
    ]
  })
}

/** Where the strip runs across a gap: which of its ends is there, and what is lost. */
function pairLines({ pairs, part }: JudgedFace, axis: StoryStrip['axis'], unit: LengthUnit) {
  const across = pairs.filter(({ pair }) => (pair.meet === 'same leaves') === (axis === 'along'))
  return across.flatMap((report) => pairSentences(report, part, unit).map((words) => plain(words, 3.4)))
}

/** What it is, below the strip, and how far the paper is to be trusted. */
function heading(face: JudgedFace, { axis, length }: StoryStrip, unit: LengthUnit): readonly Item[] {
  const start = axis === 'across' ? 'left' : 'upper'
  const words = [
    bold(`${face.part.name}, story strip ${axis}: show side, laid to the sheet’s ${start} edge`, 4.2),
    plain(
      `${showLength(length, unit, 'seam')} over all; every line with its distance from that edge. Paper moves with the weather: on anything over 500 mm the printed figures hold.`,
      3.4,
    ),
    ...pairLines(face, axis, unit),
  ]
  return column(point(STRIP_ROOM, STRIP_ROOM + STRIP_WIDTH + 3), Math.max(length, 130), words).items
}
