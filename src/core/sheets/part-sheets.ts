import type { FullScaleSheet, PageSheet, PageSize, SheetSet } from '../drawing/sheet-set'
import type { LeafRest } from '../ledger/offcuts'
import { storyStrips } from '../templates/story-strip'
import { sheetTemplates } from '../templates/sheet-template'
import { viewfinders, type Sights } from '../templates/viewfinder'
import { windowTemplates } from '../templates/window-template'
import type { LengthUnit } from '../units/unit'
import { drawMakeUps } from './draw-make-up'
import { cuttingOf } from '../templates/packets'
import { drawJointingOrder } from './draw-jointing-order'
import { drawLeafCards } from './draw-leaf-cards'
import { drawLeafPlaces } from './draw-leaf-places'
import { drawOffcuts } from './draw-offcuts'
import { drawPacketCard } from './draw-packet-card'
import { drawRepairs } from './draw-repairs'
import { drawSeamMap } from './draw-seam-map'
import { drawShopSheet } from './draw-shop-sheet'
import { drawStoryStrip } from './draw-story-strip'
import { drawTaping } from './draw-taping'
import { cardParts, cardTitle, drawViewfinder } from './draw-viewfinder'
import { drawViewfinderLeaves } from './draw-viewfinder-leaves'
import { drawSheetTemplate, drawWindowTemplate } from './draw-window-template'
import type { JudgedFace } from './judged-face'

/** Where a sheet is taken, in the order in which one walks. */
export const SHEET_GROUPS = ['shop', 'leaves', 'saw', 'bench'] as const
export type SheetGroup = (typeof SHEET_GROUPS)[number]

type Sheets = readonly (PageSheet | FullScaleSheet)[]

/** What is printed beside what every part has, where it is there. */
export interface MoreSheets {
  readonly rests?: readonly LeafRest[]
  /** Viewfinders are printed when this is there, whatever was found. */
  readonly sights?: Sights | null
}

/**
 * What is printed for one part: for the shop's wall, for the leaves (viewfinders, if wanted), for the saw (cards, places,
 * templates, strips), and for the bench where it is joined and taped.
 */
export function partSheets(
  face: JudgedFace,
  unit: LengthUnit,
  { rests = [], sights = null }: MoreSheets = {},
): SheetSet {
  const group = (name: SheetGroup, sheets: Sheets) => sheets.map((sheet) => ({ ...sheet, group: name }))
  return {
    title: face.part.name,
    sheets: [
      ...group('shop', [
        { kind: 'page', title: 'Shop sheet', draw: (page) => drawShopSheet(face, unit, page) },
        { kind: 'page', title: 'Seam map', draw: (page) => drawSeamMap(face, unit, page) },
      ]),
      ...group('leaves', sights ? finders(face, sights, unit) : []),
      ...group('saw', [
        ...(face.pieces.some(({ made }) => made)
          ? [
              {
                kind: 'page' as const,
                title: 'Made-up leaves',
                draw: (page: PageSize) => drawMakeUps(face, unit, page),
              },
            ]
          : []),
        { kind: 'page', title: 'Where to cut', draw: (page) => drawLeafPlaces(face, unit, page) },
        ...cards(face, unit),
        ...offcutSheet(face, rests, unit),
      ]),
      ...group('bench', [...repairSheet(face, unit), ...seamSheets(face, unit)]),
      ...group('saw', [...strips(face, unit), ...templates(face, unit)]),
    ],
  }
}

const strips = (face: JudgedFace, unit: LengthUnit): Sheets =>
  storyStrips(face).map((strip) => ({
    kind: 'full scale',
    title: `Story strip ${strip.axis}`,
    drawing: drawStoryStrip(face, strip, unit),
  }))

/** What is cut on the leaves, and behind it what is cut from jointed sheets. */
const templates = (face: JudgedFace, unit: LengthUnit): Sheets => [
  ...windowTemplates(face).map((template) => ({
    kind: 'full scale' as const,
    title: `Template ${template.name}`,
    drawing: drawWindowTemplate(face, template, unit),
  })),
  ...sheetTemplates(face).map((template) => ({
    kind: 'full scale' as const,
    title: `Sheet template ${template.name}`,
    drawing: drawSheetTemplate(face, template, unit),
  })),
]

/** The cards, then what lies where on each leaf; none where no leaf is left to be cut. */
function finders(face: JudgedFace, sights: Sights, unit: LengthUnit): Sheets {
  const cards = viewfinders(face)
  if (cards.length === 0) return []
  return [
    {
      kind: 'page',
      title: 'Viewfinder, leaf by leaf',
      draw: (page) => drawViewfinderLeaves(face, sights, unit, page),
    },
    ...cards.flatMap((card) =>
      cardParts(card).map((part) => ({
        kind: 'full scale' as const,
        title: cardTitle(card, part),
        drawing: drawViewfinder(face, card, part, sights, unit),
      })),
    ),
  ]
}

/** Only where there is something to mend, or something that need not be. */
const repairSheet = (face: JudgedFace, unit: LengthUnit): Sheets =>
  face.repairs.repairs.length + face.repairs.spared.length > 0
    ? [{ kind: 'page', title: 'Repairs', draw: (page) => drawRepairs(face, unit, page) }]
    : []

/** A card for each packet, and one for each leaf that is cut alone. */
function cards(face: JudgedFace, unit: LengthUnit): Sheets {
  const { packets, alone } = cuttingOf(face)
  const leaves = alone.filter(({ piece }) => piece.leaf !== null)
  return [
    ...packets.map((packet) => ({
      kind: 'page' as const,
      title: `Packet card ${packet.name}`,
      draw: (page: PageSize) => drawPacketCard(face, packet, unit, page),
    })),
    ...(leaves.length > 0
      ? [
          {
            kind: 'page' as const,
            title: 'Leaf cards',
            draw: (page: PageSize) => drawLeafCards(face, leaves, unit, page),
          },
        ]
      : []),
  ]
}

/** Only where it has been found what is left. */
const offcutSheet = (face: JudgedFace, rests: readonly LeafRest[], unit: LengthUnit): Sheets =>
  rests.length > 0 ? [{ kind: 'page', title: 'Left over', draw: (page) => drawOffcuts(face, rests, unit, page) }] : []
/** How the pieces are joined and taped; a face of one piece has no seams. */
const seamSheets = (face: JudgedFace, unit: LengthUnit): Sheets =>
  face.seams.length === 0
    ? []
    : [
        { kind: 'page', title: 'Order of jointing', draw: (page) => drawJointingOrder(face, unit, page) },
        { kind: 'page', title: 'Glue side', draw: (page) => drawTaping(face, 'glue side', unit, page) },
        { kind: 'page', title: 'Show side', draw: (page) => drawTaping(face, 'show side', unit, page) },
      ]
