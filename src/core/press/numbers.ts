/**
 * Every number of this room that is not mere geometry, as rows: what it is, how much, how it is known and from where.
 * The page docs/press-numbers.md is this list; a test compares them.
 */
import { BAG_CLEAR, BAG_OVERHANG, CAUL_SMALLER } from './bag-advice'
import { PANEL_GAP } from './bag-load'
import { BIRCH, BOARD_NAMES, boardFigures, LIGHT_PLYWOOD_TOLERANCE, MDF_TOLERANCE } from './boards'
import { CAUL_PRESSURE, CLAMP_NAMES, CLAMPS, CROWNED } from './cauls'
import { LARGE_PANEL } from './choose-glue'
import { SAWN_AFTER, STRIP_MARGIN } from './edges'
import { GLUE_NAMES, GLUES, RESIN_TIMES } from './glues'
import { LAP } from './hammer-work'
import { AVERAGE_SHRINKAGE, LENGTHWISE } from './moisture'
import { HAND_TIMES } from './open-time'
import type { BoardName } from './pressing'
import type { Mark, Sourced, SourcedRange } from './provenance'
import { SANDING } from './sanding'
import { AVERAGE_BENDING, POISSON, RATIOS, TRUE_ALONG } from './stiffness'
import { RATES } from './timeline'
import { WOODS } from './woods'

export interface NumberRow {
  readonly group: string
  readonly what: string
  readonly value: string
  readonly mark: Mark
  readonly source: string
}

const plain = (value: number): string => String(Number(value.toPrecision(6)))

const row = (group: string, what: string, number: Sourced | SourcedRange, unit: string, source: string): NumberRow => {
  const span = 'value' in number ? plain(number.value) : `${plain(number.least)}–${plain(number.most)}`
  return { group, what, value: unit === '' ? span : `${span} ${unit}`, mark: number.mark, source }
}

const HANDBOOK = 'Wood Handbook, FPL-GTR-190 (2010)'

const woodRows = (): NumberRow[] =>
  WOODS.flatMap((wood) => [
    row('Woods', `${wood.name}: shrinkage, radial`, wood.shrinkage.radial, '%', `${HANDBOOK}, tables 4-3 and 4-4`),
    row(
      'Woods',
      `${wood.name}: shrinkage, tangential`,
      wood.shrinkage.tangential,
      '%',
      `${HANDBOOK}, tables 4-3 and 4-4`,
    ),
    ...(wood.coefficient
      ? [
          row('Woods', `${wood.name}: change per 1 %, radial`, wood.coefficient.radial, '', `${HANDBOOK}, table 13-5`),
          row(
            'Woods',
            `${wood.name}: change per 1 %, tangential`,
            wood.coefficient.tangential,
            '',
            `${HANDBOOK}, table 13-5`,
          ),
        ]
      : []),
    row('Woods', `${wood.name}: bending modulus`, wood.bending, 'MPa', `${HANDBOOK}, table 5-3a`),
    row('Woods', `${wood.name}: specific gravity at 12 %`, wood.gravity, '', `${HANDBOOK}, table 5-3a`),
  ])

const ratioRows = (): NumberRow[] =>
  Object.entries(RATIOS).flatMap(([species, ratios]) => {
    const of = (what: string, number: Sourced | null): NumberRow[] =>
      number ? [row('Stiffness of woods', `${species}: ${what}`, number, '', `${HANDBOOK}, table 5-1`)] : []
    return [
      ...of('E tangential / E along', ratios.tangential),
      ...of('E radial / E along', ratios.radial),
      ...of('G along-radial / E along', ratios.shearRadial),
      ...of('G along-tangential / E along', ratios.shearTangential),
    ]
  })

const stiffnessRows = (): NumberRow[] => [
  row('Stiffness of woods', 'E along / bending modulus', TRUE_ALONG, '', `${HANDBOOK}, note to table 5-1`),
  row(
    'Stiffness of woods',
    'Poisson ratio along-radial',
    POISSON.radial,
    '',
    'a digest of the Wood Handbook, sugar maple',
  ),
  row(
    'Stiffness of woods',
    'Poisson ratio along-tangential',
    POISSON.tangential,
    '',
    'a digest of the Wood Handbook, sugar maple',
  ),
  row(
    'Stiffness of woods',
    'bending modulus of an unknown hardwood',
    AVERAGE_BENDING,
    'MPa',
    'about the middle of table 5-3a',
  ),
  row('Stiffness of woods', 'change lengthwise per 1 %', LENGTHWISE, '', `${HANDBOOK}, chapter 4: 0.1–0.2 % in all`),
  row(
    'Stiffness of woods',
    'shrinkage of an unknown hardwood, radial',
    AVERAGE_SHRINKAGE.radial,
    '%',
    'about the middle of table 4-3',
  ),
  row(
    'Stiffness of woods',
    'shrinkage of an unknown hardwood, tangential',
    AVERAGE_SHRINKAGE.tangential,
    '%',
    'about the middle of table 4-3',
  ),
]

const STIFFNESS: Readonly<Record<BoardName, string>> = {
  MDF: 'test reports: 3000–3600',
  particleboard: 'the middle of 1600–2400 by class, a data sheet',
  'birch plywood': 'plywood handbooks',
  'light plywood': 'plywood handbooks',
}

const boardRows = (): NumberRow[] => [
  ...BOARD_NAMES.flatMap((name) => {
    const board = boardFigures(name)
    return [
      row('Boards', `${name}: stiffness along`, board.along, 'MPa', STIFFNESS[name]),
      row('Boards', `${name}: stiffness across`, board.across, 'MPa', STIFFNESS[name]),
      row('Boards', `${name}: shear stiffness`, board.shear, 'MPa', 'E / 2(1 + ν) where derived'),
      row('Boards', `${name}: Poisson ratio`, board.poisson, '', 'textbooks'),
      row(
        'Boards',
        `${name}: movement per 1 % of the wood’s moisture`,
        board.movement,
        '',
        `${HANDBOOK}, chapter 12; ANSI A208.2`,
      ),
      row('Boards', `${name}: density`, board.density, 'kg/m³', 'data sheets'),
    ]
  }),
  row('Boards', 'MDF to 30 mm: thickness off by', MDF_TOLERANCE.thin, 'mm', 'a European MDF industry site'),
  row('Boards', 'MDF above 30 mm: thickness off by', MDF_TOLERANCE.thick, 'mm', 'a European MDF industry site'),
  row('Boards', 'light plywood: thickness off by', LIGHT_PLYWOOD_TOLERANCE, 'mm', 'forums: made to 5.0–5.2 mm'),
  {
    group: 'Boards',
    what: 'particleboard, faced: thickness off by',
    value: '−0.3/+0.5 mm',
    mark: 'seen',
    source: 'EN 324 in a data sheet',
  },
  ...BIRCH.map(({ nominal, tolerance, plies }): NumberRow => ({
    group: 'Boards',
    what: `birch plywood ${nominal} mm: thickness off by${plies === null ? '' : `; ${plies} plies`}`,
    value: `−${tolerance.under}/+${tolerance.over} mm`,
    mark: 'seen',
    source: 'a plywood maker’s table',
  })),
]

const glueRows = (): NumberRow[] =>
  GLUE_NAMES.flatMap((name) => {
    const glue = GLUES[name]
    return [
      row('Glues', `${name}: spread on one glue line`, glue.spread, 'g/m²', 'makers and glue guides'),
      row(
        'Glues',
        `${name}: spread reckoned with`,
        glue.usualSpread,
        'g/m²',
        'PVA: 6 mil wet; others: the middle of the range',
      ),
      row('Glues', `${name}: open`, glue.openMinutes, 'min', 'two magazine tables'),
      row('Glues', `${name}: under pressure at 20–21 °C`, glue.pressHours, 'h', 'magazine tables, labels, makers'),
      row('Glues', `${name}: least temperature`, glue.leastTemperature, '°C', 'glue guides'),
      row('Glues', `${name}: stands`, glue.cureDays, 'days', 'makers'),
      row('Glues', `${name}: density as mixed`, glue.density, 'g/ml', 'data sheets'),
      ...(glue.ratio
        ? [
            row(
              'Glues',
              `${name}: ${glue.ratio.to} to one part of ${glue.ratio.of}, by weight`,
              glue.ratio,
              '',
              'labels, makers',
            ),
          ]
        : []),
    ]
  })

const pressRows = (): NumberRow[] => [
  row(
    'Pressing',
    'plastic resin powder at 70 °F',
    { value: RESIN_TIMES.cool.hours, mark: 'seen' },
    'h',
    'a label, quoted by a user',
  ),
  row(
    'Pressing',
    'plastic resin powder at 100 °F',
    { value: RESIN_TIMES.warm.hours, mark: 'seen' },
    'h',
    'a label, quoted by a user',
  ),
  row('Pressing', 'platen inside the bag, all round', BAG_CLEAR, 'mm', 'a guide to bag presses'),
  row('Pressing', 'caul smaller than the board below', CAUL_SMALLER, 'mm', 'a guide to bag presses'),
  row('Pressing', 'overhang in the bag at the sides, least', BAG_OVERHANG.sides.least, 'mm', 'makers'),
  row('Pressing', 'overhang in the bag at the sides, most', BAG_OVERHANG.sides.most, 'mm', 'makers'),
  row('Pressing', 'overhang in the bag at the ends, least', BAG_OVERHANG.ends.least, 'mm', 'makers'),
  row('Pressing', 'overhang in the bag at the ends, most', BAG_OVERHANG.ends.most, 'mm', 'makers'),
  row('Pressing', 'between two panels in the bag', PANEL_GAP, 'mm', 'makers'),
  row('Pressing', 'pressure for a thin flat leaf under cauls', CAUL_PRESSURE.thin, 'kPa', 'as a good bag'),
  row('Pressing', 'pressure that glue sheets ask for', CAUL_PRESSURE.sheet, 'kPa', 'glue guides: 100–250 psi'),
  ...CLAMP_NAMES.map((name) => row('Pressing', `${name} clamp`, CLAMPS[name], 'lbf', 'planning figures')),
  row('Pressing', 'crowned caul: width', CROWNED.width, 'mm', 'a woodworking magazine'),
  row('Pressing', 'crowned caul: crown', CROWNED.crown, 'mm', 'a woodworking magazine'),
  row('Pressing', 'crowned caul: one every', CROWNED.every, 'mm', 'a woodworking magazine'),
  row('Pressing', 'a panel is large from', LARGE_PANEL, 'mm', 'makers'),
  row('Pressing', 'lap of leaves cut through together', LAP, 'mm', 'makers'),
  row('Pressing', 'sawn off an edge after pressing', SAWN_AFTER, 'mm', 'makers'),
  row('Pressing', 'edge strip wider than the edge, a side', STRIP_MARGIN, 'mm', 'makers'),
  row('Pressing', 'share of a leaf that may be sanded off', SANDING.share, '', 'makers'),
  row('Pressing', 'sanded off a knife-cut leaf, at most', SANDING.most, 'mm', 'makers'),
  row('Pressing', 'sanded off a sawn leaf, at most', SANDING.sawnMost, 'mm', 'makers'),
]

const spaced = (name: string): string => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

const timeRows = (): NumberRow[] => [
  ...Object.entries(HAND_TIMES).map(([name, number]) => row('Times', spaced(name), number, 'min', 'makers')),
  ...Object.entries(RATES).map(([name, number]) => row('Times', spaced(name), number, 'h', 'makers')),
]

/** All of them, group by group. */
export const numberRows = (): NumberRow[] => [
  ...woodRows(),
  ...ratioRows(),
  ...stiffnessRows(),
  ...boardRows(),
  ...glueRows(),
  ...pressRows(),
  ...timeRows(),
]

/** The rows as tables for the page, a heading for each group. */
export function numbersPage(): string {
  const rows = numberRows()
  return [...new Set(rows.map(({ group }) => group))]
    .map((group) => {
      const lines = rows
        .filter((line) => line.group === group)
        .map(({ what, value, mark, source }) => `| ${what} | ${value} | ${mark} | ${source} |`)
      return [`## ${group}`, '', '| number | value | how known | source |', '|---|---|---|---|', ...lines, ''].join(
        '\n',
      )
    })
    .join('\n')
}
