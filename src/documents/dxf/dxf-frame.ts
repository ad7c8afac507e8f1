import { LAYERS, type Layer } from '../../core/drawing/drawing'
import { numeral } from '../numerals'

/** A group code and its value: what a DXF file is made of. */
export type Group = readonly [code: number, value: string | number]

/** Coordinates and lengths to 0.000001 mm. */
export const groupLines = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${code}\n${typeof value === 'number' ? numeral(value, 6) : value}\n`).join('')

/** Hands out the handles, hexadecimal, each once. */
export class Handles {
  private last = 0x0f

  next(): string {
    return (++this.last).toString(16).toUpperCase()
  }
}

/** Colours of the layers by AutoCAD's index: red to cut, the rest told apart on white and on black. */
const layerColours: Readonly<Record<Layer, number>> = { cut: 1, seam: 5, trim: 3, mark: 8, text: 7, wood: 32 }

export const TEXT_STYLE = 'SHEET'

/** What stands before and after the entities of a DXF file of the year 2000 (AC1015), millimetres, model space only. */
export function dxfFrame(handles: Handles, corner: { readonly x: number; readonly y: number }) {
  const modelSpace = handles.next()
  const paperSpace = handles.next()
  const tables = tablesSection(handles, modelSpace, paperSpace)
  const blocks = blocksSection(handles, modelSpace, paperSpace)
  const objects = objectsSection(handles)
  return {
    modelSpace,
    before: (): Group[] => [
      ...headerSection(handles, corner),
      ...section('CLASSES', []),
      ...tables,
      ...blocks,
      [0, 'SECTION'],
      [2, 'ENTITIES'],
    ],
    after: (): Group[] => [[0, 'ENDSEC'], ...objects, [0, 'EOF']],
  }
}

const section = (name: string, groups: readonly Group[]): Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...groups,
  [0, 'ENDSEC'],
]

/** Written last, since it holds the next free handle. */
function headerSection(handles: Handles, { x, y }: { readonly x: number; readonly y: number }): Group[] {
  const variables: readonly (readonly [name: string, ...values: Group[]])[] = [
    ['$ACADVER', [1, 'AC1015']],
    ['$DWGCODEPAGE', [3, 'ANSI_1252']],
    ['$HANDSEED', [5, handles.next()]],
    ['$INSUNITS', [70, 4]],
    ['$MEASUREMENT', [70, 1]],
    ['$EXTMIN', [10, 0], [20, 0], [30, 0]],
    ['$EXTMAX', [10, x], [20, y], [30, 0]],
  ]
  return section(
    'HEADER',
    variables.flatMap(([name, ...values]) => [[9, name] as const, ...values]),
  )
}

function table(handles: Handles, name: string, subclass: string, entries: readonly (readonly Group[])[]): Group[] {
  const owner = handles.next()
  const records = entries.flatMap((entry): Group[] => [
    [0, name],
    [name === 'DIMSTYLE' ? 105 : 5, handles.next()],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, subclass],
    ...entry,
  ])
  const head: Group[] = [
    [0, 'TABLE'],
    [2, name],
    [5, owner],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, entries.length],
  ]
  return [...head, ...(name === 'DIMSTYLE' ? ([[100, 'AcDbDimStyleTable']] as const) : []), ...records, [0, 'ENDTAB']]
}

function tablesSection(handles: Handles, modelSpace: string, paperSpace: string): Group[] {
  const lineType = (name: string, looks: string, lengths: readonly number[]): Group[] => [
    [2, name],
    [70, 0],
    [3, looks],
    [72, 65],
    [73, lengths.length],
    [40, lengths.reduce((sum, length) => sum + Math.abs(length), 0)],
    ...lengths.flatMap((length): Group[] => [
      [49, length],
      [74, 0],
    ]),
  ]
  const layer = (name: string, colour: number): Group[] => [
    [2, name],
    [70, 0],
    [62, colour],
    [6, 'Continuous'],
  ]
  const style: Group[] = [
    [2, TEXT_STYLE],
    [70, 0],
    [40, 0],
    [41, 1],
    [50, 0],
    [71, 0],
    [42, 2.5],
    [3, 'SourceSans3-Regular.ttf'],
    [4, ''],
  ]
  return section('TABLES', [
    ...table(handles, 'VPORT', 'AcDbViewportTableRecord', []),
    ...table(handles, 'LTYPE', 'AcDbLinetypeTableRecord', [
      lineType('ByBlock', '', []),
      lineType('ByLayer', '', []),
      lineType('Continuous', 'Solid line', []),
      lineType('DASHED', '__ __ __', [3, -1.5]),
    ]),
    ...table(handles, 'LAYER', 'AcDbLayerTableRecord', [
      layer('0', 7),
      ...LAYERS.map((name) => layer(name, layerColours[name])),
    ]),
    ...table(handles, 'STYLE', 'AcDbTextStyleTableRecord', [style, [[2, 'Standard'], ...style.slice(1)]]),
    ...table(handles, 'VIEW', 'AcDbViewTableRecord', []),
    ...table(handles, 'UCS', 'AcDbUCSTableRecord', []),
    ...table(handles, 'APPID', 'AcDbRegAppTableRecord', [
      [
        [2, 'ACAD'],
        [70, 0],
      ],
    ]),
    ...table(handles, 'DIMSTYLE', 'AcDbDimStyleTableRecord', [
      [
        [2, 'Standard'],
        [70, 0],
      ],
    ]),
    ...blockRecords(handles, modelSpace, paperSpace),
  ])
}

function blockRecords(handles: Handles, modelSpace: string, paperSpace: string): Group[] {
  const owner = handles.next()
  const record = (handle: string, name: string): Group[] => [
    [0, 'BLOCK_RECORD'],
    [5, handle],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbBlockTableRecord'],
    [2, name],
  ]
  return [
    [0, 'TABLE'],
    [2, 'BLOCK_RECORD'],
    [5, owner],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, 2],
    ...record(modelSpace, '*Model_Space'),
    ...record(paperSpace, '*Paper_Space'),
    [0, 'ENDTAB'],
  ]
}

function blocksSection(handles: Handles, modelSpace: string, paperSpace: string): Group[] {
  const block = (owner: string, name: string): Group[] => [
    [0, 'BLOCK'],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, 0],
    [10, 0],
    [20, 0],
    [30, 0],
    [3, name],
    [1, ''],
    [0, 'ENDBLK'],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockEnd'],
  ]
  return section('BLOCKS', [...block(modelSpace, '*Model_Space'), ...block(paperSpace, '*Paper_Space')])
}

/** The root dictionary and the one it must name. */
function objectsSection(handles: Handles): Group[] {
  const [root, groups] = [handles.next(), handles.next()]
  return section('OBJECTS', [
    [0, 'DICTIONARY'],
    [5, root],
    [330, '0'],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'ACAD_GROUP'],
    [350, groups],
    [0, 'DICTIONARY'],
    [5, groups],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, 1],
  ])
}
