import { GLUE_NAMES, GLUE_WORDS, glueInUse, type GlueInUse } from './glues'
import { showTemperature } from './measures'
import { minutesToPressure, openSentence, openVerdict } from './open-time'
import { NO_DATA_SHEET, type DataSheet, type GlueName, type Method } from './pressing'
import { practice } from './provenance'

/** What a glue has to do. */
export interface GlueTask {
  /** m² of glue line in this pressing, all panels together. */
  readonly squareMetres: number
  readonly panels: number
  /** The longest side of the largest panel, mm. */
  readonly longestSide: number
  readonly method: Method
  readonly curved: boolean
  /** The face has no single grain, or its leaves meet across the grain. */
  readonly noSingleGrain: boolean
  /** The species is known to be oily. */
  readonly oily: boolean
  /** °C, of the cores: what the glue line will have. */
  readonly coreTemperature: number
  readonly hands: number
}

export interface GlueVerdict {
  readonly glue: GlueName
  readonly verdict: 'suits' | 'with care' | 'no'
  /** Why, the gravest first. */
  readonly reasons: readonly string[]
}

type Remark = readonly [GlueVerdict['verdict'], string]

/** A panel longer than this counts as large: a glue that creeps shows at its seams (common practice). */
export const LARGE_PANEL = practice(900)

const RANK: Readonly<Record<GlueVerdict['verdict'], number>> = { suits: 0, 'with care': 1, no: 2 }

/** Every glue judged for a task, the fittest first; data sheets by glue override the general figures. */
export function chooseGlue(task: GlueTask, sheets: Partial<Record<GlueName, DataSheet>> = {}): GlueVerdict[] {
  const verdicts = GLUE_NAMES.map((name) => judgeGlue(glueInUse(name, sheets[name] ?? NO_DATA_SHEET), task))
  return verdicts.sort((a, b) => RANK[a.verdict] - RANK[b.verdict])
}

/** One glue judged. */
export function judgeGlue(glue: GlueInUse, task: GlueTask): GlueVerdict {
  const remarks = [
    ...temperatureRemarks(glue, task),
    ...methodRemarks(glue, task),
    ...openRemarks(glue, task),
    ...creepRemarks(glue, task),
    ...ownRemarks(glue, task),
  ].sort((a, b) => RANK[b[0]] - RANK[a[0]])
  return { glue: glue.name, verdict: remarks[0]?.[0] ?? 'suits', reasons: remarks.map(([, words]) => words) }
}

function temperatureRemarks(glue: GlueInUse, { coreTemperature }: GlueTask): Remark[] {
  const least = glue.leastTemperature.value
  if (coreTemperature >= least) return []
  return [['no', coldSentence(glue, coreTemperature)]]
}

/** What a cold core does. */
export function coldSentence(glue: GlueInUse, coreTemperature: number): string {
  const end = glue.figures.water && glue.figures.creeps ? 'it would dry to chalk' : 'it won’t cure'
  return `The core is at ${showTemperature(coreTemperature)}; ${GLUE_WORDS[glue.name]} needs ${showTemperature(glue.leastTemperature.value)} in the core and the glue line, whatever the air has: ${end}. Warm the cores right through first.`
}

function methodRemarks(glue: GlueInUse, { method }: GlueTask): Remark[] {
  if (glue.name === 'contact cement') return [] // has its say below, whatever the method
  if (method === 'leaf by leaf' && glue.name !== 'hide')
    return [['no', 'Laid leaf by leaf the glue must grip as the hammer passes: only hide glue does.']]
  if (method !== 'leaf by leaf' && glue.name === 'hide')
    return [['with care', 'Hide glue gels before a press is closed unless cores and cauls are hot.']]
  return []
}

function openRemarks(glue: GlueInUse, task: GlueTask): Remark[] {
  if (task.method === 'leaf by leaf' || glue.name === 'contact cement') return []
  const minutes = minutesToPressure(task.squareMetres, task.panels, task.method, task.hands)
  const verdict = openVerdict(glue, minutes)
  if (verdict === 'in time') return []
  return [[verdict === 'tight' ? 'with care' : 'no', openSentence(glue, minutes)]]
}

function creepRemarks(glue: GlueInUse, task: GlueTask): Remark[] {
  if (glue.name !== 'PVA') return []
  const remarks: Remark[] = []
  if (task.curved) remarks.push(['no', 'PVA gives with time: a bent panel would spring back. Take a rigid glue.'])
  if (task.longestSide > LARGE_PANEL.value)
    remarks.push([
      'with care',
      'PVA gives with time: fine on small work, on a panel this large seams may open. A rigid glue is safer.',
    ])
  if (task.noSingleGrain)
    remarks.push([
      'with care',
      'Where grain meets grain at an angle the leaves pull at each other: a rigid glue holds them better than PVA.',
    ])
  return remarks
}

const OWN: Readonly<Record<GlueName, readonly Remark[]>> = {
  PVA: [],
  'plastic resin, powder': [],
  'plastic resin, liquid': [],
  epoxy: [
    [
      'with care',
      'Epoxy bleeds through open grain and makes many people allergic: gloves, and a release sheet on both sides.',
    ],
  ],
  polyurethane: [
    [
      'with care',
      'Polyurethane foams and pushes joints apart, so pressure must stay on; it needs a damped face and good air.',
    ],
  ],
  hide: [],
  'contact cement': [
    [
      'no',
      'Contact cement never hardens: the raw leaf goes on moving, finishes crack over it, heat and solvents loosen it and edges lift. It grips on touch, so a taped face can’t be shifted either.',
    ],
  ],
}

function ownRemarks(glue: GlueInUse, { oily }: GlueTask): Remark[] {
  const wiped: Remark[] =
    oily && glue.figures.water
      ? [
          [
            'with care',
            'The wood is oily: wipe the leaf just before gluing and try a scrap first; epoxy or polyurethane hold it better.',
          ],
        ]
      : []
  return [...OWN[glue.name], ...wiped]
}
