import { line, text } from '../drawing/build'
import { SMALLEST_TEXT, type Item } from '../drawing/drawing'
import type { PageSize, SheetSet } from '../drawing/sheet-set'
import { point, type Point } from '../geometry/point'
import type { Part } from '../job/job'
import { caulSize } from '../press/bag-advice'
import { FIRST_OF_ALL } from '../press/cautions'
import { GLUE_WORDS, pressHoursAt } from '../press/glues'
import { showHours, showTemperature } from '../press/measures'
import type { PressPlan } from '../press/press-plan'
import type { GlueName, Method, PressRoom } from '../press/pressing'
import { showLength } from '../units/show-length'
import type { LengthUnit } from '../units/unit'
import { bold, column, plain } from './card'
import { tickBox } from './draw-packet-card'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { sectionItems } from './press-section'
import { pressSteps, type PressStep } from './press-steps'
import type { Paragraph } from './text-block'

/** A part and how it is glued up. */
export interface PartAtPress {
  readonly part: Part
  readonly press: PressPlan
}

/** The share of the width for the section and the figures; the order of hands has the rest. */
const FIGURES = 0.36
const GAP = 7
const STEP_SIZE = SMALLEST_TEXT

const METHOD_WORDS: Readonly<Record<Method, string>> = {
  bag: 'in the vacuum bag',
  cauls: 'between cauls and clamps',
  'leaf by leaf': 'leaf by leaf with the hammer',
}

/** What is taken to the press for one part. */
export const pressSheets = (of: PartAtPress, room: PressRoom, unit: LengthUnit): SheetSet => ({
  title: of.part.name,
  sheets: [{ kind: 'page', title: 'Press sheet', draw: (page) => drawPressSheet(of, room, unit, page) }],
})

/**
 * The section, the figures and the order of hands of one part, on one page where the paper is large enough; else the
 * order goes on by itself.
 */
export function drawPressSheet(
  { part, press }: PartAtPress,
  room: PressRoom,
  unit: LengthUnit,
  page: PageSize,
): readonly (readonly Item[])[] {
  const head = pageHead(page, part.name, 'Press sheet', pressSentence(part, press))
  const foot = pageFoot(page, [FIRST_OF_ALL])
  const width = page.width - 2 * PAGE_ROOM
  const split = PAGE_ROOM + width * FIGURES
  const top = head.bottom + 2
  const section = sectionItems(part.pressing, unit, { x: PAGE_ROOM, y: top }, width * FIGURES - GAP / 2)
  const figures = columnDownTo(
    foot.bottom,
    point(PAGE_ROOM, section.bottom + 2),
    width * FIGURES - GAP / 2,
    figureLines(part, press, room, unit),
  )
  const steps = pressSteps(part.pressing, press, room)
  const first = stepItems(
    steps,
    0,
    { x: split + GAP / 2, y: top, width: width - width * FIGURES - GAP / 2 },
    foot.bottom,
  )
  const pages = [
    [
      ...head.items,
      ...section.items,
      ...figures.items,
      line('mark', [point(split, top), point(split, foot.bottom)], { pen: 0.15 }),
      ...first.items,
      ...foot.items,
    ],
  ]
  for (let done = first.done; done < steps.length;) {
    const more = stepItems(steps, done, { x: PAGE_ROOM, y: top, width }, foot.bottom)
    pages.push([...head.items, ...more.items, ...foot.items])
    done = Math.max(done + 1, more.done)
  }
  return pages
}

/** What there is room for; the last words are those that can be spared. */
function columnDownTo(
  bottom: number,
  at: Point<'sheet'>,
  width: number,
  lines: readonly Paragraph[],
): ReturnType<typeof column> {
  const set = column(at, width, lines)
  return set.bottom <= bottom || lines.length === 1 ? set : columnDownTo(bottom, at, width, lines.slice(0, -1))
}

/** The same sentence that heads the station. */
const pressSentence = ({ name, pressing }: Part, { glue }: PressPlan): string =>
  `${name} is pressed ${METHOD_WORDS[pressing.method]} with ${glueWords(glue.inUse.name)}${glue.verdict.verdict === 'no' ? '. This glue is not for it: see below' : ''}.`

const glueWords = (name: GlueName): string => (name.startsWith('plastic') ? name : GLUE_WORDS[name])

function figureLines(part: Part, press: PressPlan, room: PressRoom, unit: LengthUnit): readonly Paragraph[] {
  const { glue, balance, thickness } = press
  const { inUse, verdict } = glue
  const caul = caulSize(press.pressed)
  const hours = pressHoursAt(inUse, Math.max(room.coreTemperature, inUse.leastTemperature.value)) ?? 0
  const size = (of: { width: number; length: number }, grain: 'seam' | 'whole'): string =>
    `${showLength(of.width, unit, grain)} × ${showLength(of.length, unit, grain)}`
  const grave = verdict.verdict === 'no' ? verdict.reasons : []
  return [
    plain(thickness.join(' '), SMALLEST_TEXT + 0.2),
    bold(balance.sentences[0] ?? '', 4),
    ...balance.sentences.slice(1).map((words) => plain(words, SMALLEST_TEXT + 0.2)),
    bold(`Core as pressed ${size(press.pressed, 'seam')}`, 4),
    bold(glueFigure(press, unit), 6),
    ...grave.map((words) => bold(words, 3.6)),
    bold(`At least ${showTemperature(inUse.leastTemperature.value)} in core and glue line`, 4),
    ...(part.pressing.method === 'leaf by leaf'
      ? []
      : [
          bold(`Under pressure within ${inUse.openMinutes.value} min`, 4),
          bold(`${showHours(hours)} under pressure`, 6),
        ]),
    bold(`Then stand ${showHours(inUse.cureDays.value * 24)}, air on both sides`, 4),
    ...(part.pressing.method === 'bag' ? [plain(`Caul ${size(caul, 'whole')}, never larger than the core.`, 3.6)] : []),
    ...pressureLines(part.pressing.method, press).map((words) => plain(words, SMALLEST_TEXT + 0.2)),
    ...press.curve.map((words) => plain(words, SMALLEST_TEXT + 0.2)),
    ...press.warp.sentences.slice(0, 4).map((words) => plain(words, SMALLEST_TEXT + 0.2)),
  ]
}

/** As a pot is filled, by weight and by the measure of the shop. */
function glueFigure({ glue: { need } }: PressPlan, unit: LengthUnit): string {
  const up = (value: number, step: number): number => Math.ceil(value / step - 1e-9) * step
  const volume = unit === 'mm' ? `${up(need.millilitres, 5)} ml` : `${up(need.fluidOunces, 0.1).toFixed(1)} US fl oz`
  return `Glue ${up(need.grams, 5)} g, ${volume}`
}

/** Pressure and force; the hammer has none. */
const pressureLines = (method: Method, { press }: PressPlan): readonly string[] =>
  method === 'bag' ? press.slice(0, 2) : method === 'cauls' ? press.slice(0, 2) : []

/** Steps one below another with a box to tick, from the one named on, as many as there is room for. */
function stepItems(
  steps: readonly PressStep[],
  from: number,
  at: { readonly x: number; readonly y: number; readonly width: number },
  bottom: number,
): { readonly items: readonly Item[]; readonly done: number } {
  const items: Item[] = []
  let y = at.y
  for (let nth = from; nth < steps.length; nth++) {
    const { words, cautions } = steps[nth]!
    const set = column(point(at.x + 13, y), at.width - 13, [
      plain(words, STEP_SIZE),
      ...cautions.map((caution) => bold(`Mind: ${caution}`, SMALLEST_TEXT)),
    ])
    if (set.bottom > bottom) return { items, done: nth }
    items.push(tickBox(at.x + 2.6, y + 3.2), text(point(at.x + 7, y + 4.4), String(nth + 1), { size: STEP_SIZE }))
    items.push(...set.items)
    y = Math.max(set.bottom, y + 5.8)
  }
  return { items, done: steps.length }
}
