import { boxHeight, boxWidth } from '../../core/geometry/box'
import { point, type Point } from '../../core/geometry/point'
import type { Arc, Drawing, Fill, Item, Line, Text } from '../../core/drawing/drawing'
import { CAP_HEIGHT } from '../../core/drawing/text-width'
import { dxfFrame, groupLines, Handles, TEXT_STYLE, type Group } from './dxf-frame'

/**
 * Writes a drawing as DXF of the year 2000, ASCII, millimetres, on the layers of the drawing. Here alone y is
 * turned up: the lower left corner of the drawing's extent is 0, 0. Lines are polylines, closed ones closed;
 * arcs and circles are true; fills are solid hatches. Pens and colours are left to the layers, and pictures are
 * left out: a DXF file cannot hold one.
 */
export function writeDxf(drawing: Drawing): string {
  const { min, max } = drawing.extent
  const handles = new Handles()
  const corner = { x: boxWidth(drawing.extent), y: boxHeight(drawing.extent) }
  const { before, after, modelSpace } = dxfFrame(handles, corner)
  const up: Up = (p) => point(p.x - min.x, max.y - p.y)
  const entities = drawing.items.flatMap((item) => {
    const body = entity(item, up)
    if (body === null) return []
    const common: Group[] = [
      [0, body.type],
      [5, handles.next()],
      [330, modelSpace],
      [100, 'AcDbEntity'],
      [8, item.layer],
    ]
    return [...common, ...body.groups]
  })
  return groupLines([...before(), ...entities, ...after()])
}

type Up = (p: Point<'sheet'>) => Point<'sheet'>

interface Entity {
  readonly type: string
  readonly groups: readonly Group[]
}

function entity(item: Item, up: Up): Entity | null {
  switch (item.kind) {
    case 'line':
      return polyline(item, up)
    case 'fill':
      return hatch(item, up)
    case 'arc':
      return arc(item, up)
    case 'text':
      return text(item, up)
    case 'picture':
      return null
  }
}

const xy = (p: Point<'sheet'>): Group[] => [
  [10, p.x],
  [20, p.y],
]

function polyline({ points, closed, dash }: Line, up: Up): Entity {
  const head: Group[] = [
    [100, 'AcDbPolyline'],
    [90, points.length],
    [70, closed ? 1 : 0],
  ]
  const lineType: Group[] = dash ? [[6, 'DASHED']] : []
  return { type: 'LWPOLYLINE', groups: [...lineType, ...head, ...points.flatMap((p) => xy(up(p)))] }
}

/** One polyline boundary, filled. */
function hatch({ points }: Fill, up: Up): Entity {
  const plane: Group[] = [
    [100, 'AcDbHatch'],
    [10, 0],
    [20, 0],
    [30, 0],
    [210, 0],
    [220, 0],
    [230, 1],
  ]
  const boundary: Group[] = [
    [2, 'SOLID'],
    [70, 1],
    [71, 0],
    [91, 1],
    [92, 3],
    [72, 0],
    [73, 1],
    [93, points.length],
  ]
  const end: Group[] = [
    [97, 0],
    [75, 0],
    [76, 1],
    [98, 0],
  ]
  return { type: 'HATCH', groups: [...plane, ...boundary, ...points.flatMap((p) => xy(up(p))), ...end] }
}

/** Anticlockwise with y up, so the ends change places. */
function arc({ centre, radius, from, to }: Arc, up: Up): Entity {
  const circle: Group[] = [[100, 'AcDbCircle'], ...xy(up(centre)), [30, 0], [40, radius]]
  if (to - from >= 2 * Math.PI - 1e-9) return { type: 'CIRCLE', groups: circle }
  return { type: 'ARC', groups: [...circle, [100, 'AcDbArc'], [50, degrees(-to)], [51, degrees(-from)]] }
}

/** From 0 up to, not with, 360. */
function degrees(angle: number): number {
  const whole = ((((angle * 180) / Math.PI) % 360) + 360) % 360
  return 360 - whole < 1e-9 ? 0 : whole
}

const justified = { start: 0, middle: 1, end: 2 } as const

/** Its height is that of the capitals. Aligned text has its place in the second point. */
function text(item: Text, up: Up): Entity {
  const at = up(item.at)
  const second: Group[] =
    item.anchor === 'start'
      ? []
      : [
          [72, justified[item.anchor]],
          [11, at.x],
          [21, at.y],
          [31, 0],
        ]
  return {
    type: 'TEXT',
    groups: [
      [100, 'AcDbText'],
      ...xy(at),
      [30, 0],
      [40, item.size * CAP_HEIGHT],
      [1, dxfText(item.text)],
      [50, degrees(-item.angle)],
      [7, TEXT_STYLE],
      ...second,
      [100, 'AcDbText'],
    ],
  }
}

/** One line, in ASCII: other characters by their number, signs that mean something to a reader made harmless. */
const dxfText = (words: string): string =>
  words
    .normalize('NFC')
    // eslint-disable-next-line no-control-regex -- they are just what is meant
    .replace(/[\u0000-\u001f\u007f-\u009f]+/g, ' ')
    .replace(/\\(?=[UuMm]\+)/g, '\\U+005C')
    .replace(/%%/g, '%%%%%%')
    .replace(/\^/g, '^ ')
    .replace(/[^\u0020-\u007e]/g, (unit) => `\\U+${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`)
