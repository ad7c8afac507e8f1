import type { PageSize, SheetSet } from '../drawing/sheet-set'
import type { LeafRest } from '../ledger/offcuts'
import { storyStrips } from '../templates/story-strip'
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
import { drawStoryStrip } from './draw-story-strip'
import { drawTaping } from './draw-taping'
import { drawWindowTemplate } from './draw-window-template'
import type { JudgedFace } from './judged-face'

/** What is printed to cut one part: the seam map, where to cut on each leaf, and a full-scale template for each shape. */
export function partSheets(face: JudgedFace, unit: LengthUnit, rests: readonly LeafRest[] = []): SheetSet {
  return {
    title: face.part.name,
    sheets: [
      { kind: 'page', title: 'Seam map', draw: (page) => drawSeamMap(face, unit, page) },
      ...(face.pieces.some(({ made }) => made)
        ? [{ kind: 'page' as const, title: 'Made-up leaves', draw: (page: PageSize) => drawMakeUps(face, unit, page) }]
        : []),
      { kind: 'page', title: 'Where to cut', draw: (page) => drawLeafPlaces(face, unit, page) },
      ...cards(face, unit),
      ...repairSheet(face, unit),
      ...offcutSheet(face, rests, unit),
      ...seamSheets(face, unit),
      ...storyStrips(face).map((strip) => ({
        kind: 'full scale' as const,
        title: `Story strip ${strip.axis}`,
        drawing: drawStoryStrip(face, strip, unit),
      })),
      ...windowTemplates(face).map((template) => ({
        kind: 'full scale' as const,
        title: `Template ${template.name}`,
        drawing: drawWindowTemplate(face, template, unit),
      })),
    ],
  }
}

/** Only where there is something to mend, or something that need not be. */
const repairSheet = (face: JudgedFace, unit: LengthUnit): SheetSet['sheets'] =>
  face.repairs.repairs.length + face.repairs.spared.length > 0
    ? [{ kind: 'page', title: 'Repairs', draw: (page) => drawRepairs(face, unit, page) }]
    : []

/** A card for each packet, and one for each leaf that is cut alone. */
function cards(face: JudgedFace, unit: LengthUnit): SheetSet['sheets'] {
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
const offcutSheet = (face: JudgedFace, rests: readonly LeafRest[], unit: LengthUnit): SheetSet['sheets'] =>
  rests.length > 0
    ? [{ kind: 'page', title: 'Left over', draw: (page) => drawOffcuts(face.part.name, rests, unit, page) }]
    : []
/** How the pieces are joined and taped; a face of one piece has no seams. */
const seamSheets = (face: JudgedFace, unit: LengthUnit): SheetSet['sheets'] =>
  face.seams.length === 0
    ? []
    : [
        { kind: 'page', title: 'Order of jointing', draw: (page) => drawJointingOrder(face, unit, page) },
        { kind: 'page', title: 'Glue side', draw: (page) => drawTaping(face, 'glue side', unit, page) },
        { kind: 'page', title: 'Show side', draw: (page) => drawTaping(face, 'show side', unit, page) },
      ]
