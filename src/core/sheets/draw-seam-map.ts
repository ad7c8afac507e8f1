import { findingSentence } from '../checks/wording'
import { text } from '../drawing/build'
import type { Item } from '../drawing/drawing'
import { itemBox } from '../drawing/item-box'
import type { PageSize } from '../drawing/sheet-set'
import { textCutTo, textLines } from '../drawing/text-width'
import { boxCentre, boxHeight, boxWidth, type Box } from '../geometry/box'
import { point } from '../geometry/point'
import { compose, rotation, translation, type Transform } from '../geometry/transform'
import { panelPins } from '../templates/panel-pins'
import type { LengthUnit } from '../units/unit'
import { coreMarks, coreMarkWords } from './core-marks'
import { faceDimensions } from './face-dimensions'
import { faceWithLetters, writingSize } from './face-items'
import type { JudgedFace } from './judged-face'
import { PAGE_ROOM, pageFoot, pageHead } from './page-head'
import { faceSentence } from './border-sentence'
import { seamTable, seamTableHeight, seamTablePages } from './seam-table'

const DIMENSION = 4.2
/** Room for letters and dimensions round the face. */
const AROUND = 26
/** Findings that stand on the sheet; the rest are on the screen. */
const MOST_FINDINGS = 4

const KEY =
  'White number: numbered side up. Black number with an arrow: turned over. Dashes: sheet as taped. Heavy line: finished panel. Deeper: how far on in the log one of the two faces lies.'

const BORDER_KEY = 'X and on: pieces of the border, numbered clockwise along each edge, by their names on the cards.'

/** The edges keep their names when the picture is turned. */
const LYING =
  'Shown lying, numbered end to the left: the left edge is the lower one here, the right edge the upper one.'

/**
 * The face on one page, as large as it goes, seen from the show side, with a table of its seams and what to mind. Where
 * there are so many seams that the table would leave the face too little, it stands on pages of its own.
 */
export function drawSeamMap(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const sentence = faceSentence(face, unit)
  const head = pageHead(page, face.part.name, 'Seam map, show side', sentence)
  const pins = panelPins(face.sizes, face.seams)
  const keys = [
    ...(face.part.lying ? [LYING] : []),
    KEY,
    ...(face.border ? [BORDER_KEY] : []),
    coreMarkWords(face, pins, unit),
  ]
  const minds = mindLines(face, unit, page)
  const levels = (foot: number) => {
    const mindTop = foot - minds.length * MIND_LINE
    return { mindTop, tableTop: mindTop - seamTableHeight(face) - 4 }
  }
  const besideFace = pageFoot(page, keys)
  const isApart = levels(besideFace.bottom).tableTop - head.bottom - 2 * AROUND < leastHeight(face, page)
  const foot = isApart ? pageFoot(page, [...keys, TABLE_APART]) : besideFace
  const { mindTop, tableTop } = levels(foot.bottom)
  const mapBottom = isApart ? mindTop : tableTop
  const panelToSheet = fittedFace(face, page, {
    top: head.bottom + AROUND,
    bottom: mapBottom - AROUND,
    around: AROUND,
  })
  const dimensions = faceDimensions(face, panelToSheet, unit, DIMENSION)
  const within: Box<'sheet'> = {
    min: point(PAGE_ROOM, head.bottom),
    max: point(page.width - PAGE_ROOM, mapBottom - 2 * MIND_LINE),
  }
  const map = faceWithLetters(face, { panelToSheet, size: writingSize(face), taken: wordBoxes(dimensions), within })
  const tables = isApart ? tablePages(face, unit, page) : []
  return [
    [
      ...head.items,
      ...map.items,
      ...leftOutWords(map.leftOut, page, mapBottom),
      ...coreMarks(face, pins, panelToSheet),
      ...dimensions,
      ...(isApart ? [] : seamTable(face, unit, page, tableTop)),
      ...minds.map((words, i) => text(point(PAGE_ROOM, mindTop + i * MIND_LINE), words, { size: MIND })),
      ...foot.items,
    ],
    ...tables,
  ]
}

const TABLE_APART = 'The seams are listed on the next page.'

/** Seams whose letters have no room are told under the map: the table says where they lie. */
function leftOutWords(letters: readonly string[], page: PageSize, bottom: number): readonly Item[] {
  if (letters.length === 0) return []
  const words = `No room here for the letters of ${letters.length} seams, which the table tells: ${letters.join(', ')}`
  return [
    text(point(PAGE_ROOM, bottom - MIND_LINE), textCutTo(words, page.width - 2 * PAGE_ROOM, MIND), { size: MIND }),
  ]
}

/** Less than this is no map, mm; a face that is much longer than high needs no more than it takes at the page's width. */
const LEAST_MAP = 75

function leastHeight({ sizes: { sheet }, part }: JudgedFace, page: PageSize): number {
  const [across, along] = part.lying ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  return Math.min(LEAST_MAP, (along / across) * (page.width - 2 * PAGE_ROOM - 2 * AROUND))
}

function tablePages(face: JudgedFace, unit: LengthUnit, page: PageSize): readonly (readonly Item[])[] {
  const head = pageHead(page, face.part.name, 'Seams of the map', faceSentence(face, unit))
  const foot = pageFoot(page, [])
  return seamTablePages(face, unit, page, { top: head.bottom + 3, bottom: foot.bottom }).map((items) => [
    ...head.items,
    ...items,
    ...foot.items,
  ])
}

const MIND = 3.8
const MIND_LINE = 5

/** Where words stand that no letter may cover. */
const wordBoxes = (items: readonly Item[]) => items.filter(({ kind }) => kind === 'text').map(itemBox)

/** What is wrong with the face, in the words of the screen. */
function mindLines({ findings }: JudgedFace, unit: LengthUnit, page: PageSize): readonly string[] {
  const wrong = findings.filter(({ grade }) => grade === 'wrong')
  const kept = wrong.slice(0, MOST_FINDINGS).map((finding) => `Mind: ${findingSentence(finding, unit)}`)
  const more = wrong.length - kept.length
  const all = more > 0 ? [...kept, `Mind: ${more} more findings stand beside the face on the screen.`] : kept
  return all.flatMap((words) => textLines(words, page.width - 2 * PAGE_ROOM, MIND))
}

/** A face as large as it goes between two levels of a page, seen from the show side; a lying part lies. */
export function fittedFace(
  face: JudgedFace,
  page: PageSize,
  { top, bottom, around }: { readonly top: number; readonly bottom: number; readonly around: number },
): Transform<'panel', 'sheet'> {
  const { sheet } = face.sizes
  const turned = face.part.lying
  const [across, along] = turned ? [boxHeight(sheet), boxWidth(sheet)] : [boxWidth(sheet), boxHeight(sheet)]
  const scale = Math.min((page.width - 2 * PAGE_ROOM - 2 * around) / across, (bottom - top) / along)
  const centre = boxCentre(sheet)
  const turn = rotation<'panel', 'sheet'>(turned ? -Math.PI / 2 : 0)
  const scaled: Transform<'sheet', 'sheet'> = {
    a: scale,
    b: 0,
    c: 0,
    d: scale,
    e: page.width / 2,
    f: (top + bottom) / 2,
  }
  return compose(compose(scaled, turn), translation<'panel'>(-centre.x, -centre.y))
}
