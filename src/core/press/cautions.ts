import type { GlueName, Method } from './pressing'
import type { Mark } from './provenance'
import type { StepName } from './steps'

/** Stands above all cautions, wherever some are shown. */
export const FIRST_OF_ALL = 'The glue’s data sheet and the local rules come first; these are general words.'

export interface Caution {
  readonly steps: readonly StepName[]
  readonly words: string
  readonly source: string
  readonly mark: Mark
  /** Only with these; left out: always. */
  readonly glues?: readonly GlueName[]
  readonly methods?: readonly Method[]
  readonly onlyWhen?: 'warmed' | 'oily wood'
}

const RESINS: readonly GlueName[] = ['plastic resin, powder', 'plastic resin, liquid']

export const CAUTIONS: readonly Caution[] = [
  {
    steps: ['crosscut', 'joint', 'trim'],
    words:
      'Knife and straightedge: the blade can ride up over the rule. Use a high or guarded rule and many light passes, and keep the holding hand off the line.',
    source: 'a tool supplier’s tutorial',
    mark: 'seen',
  },
  {
    steps: ['joint', 'trim', 'edges'],
    words:
      'Table saw: guard on, hands out of the line of the cut, push stick, stand clear of kickback; veneer goes between two boards over a closed insert, or it slips under the fence.',
    source: 'OSHA 29 CFR 1910.213 and its woodworking pages; the sandwich from a how-to',
    mark: 'seen',
  },
  {
    steps: ['flatten'],
    words: 'Softeners, dyes and bleaches: by their sheets, with gloves and good air.',
    source: 'makers',
    mark: 'common practice',
  },
  {
    steps: ['press', 'glue seams'],
    words:
      'Plastic resin gives off formaldehyde, more when warm: open the windows (US limit 0.75 ppm over 8 hours, 2 ppm over 15 minutes). Don’t breathe the powder.',
    source: '29 CFR 1910.1048; the powder from makers',
    mark: 'seen',
    glues: RESINS,
  },
  {
    steps: ['press'],
    words:
      'Epoxy makes people allergic for good: nitrile gloves, no bare-hand wiping, no solvent on skin. Half-cured epoxy must not be sanded.',
    source: 'EU-OSHA and HSE RR079; the last from makers',
    mark: 'seen',
    glues: ['epoxy'],
  },
  {
    steps: ['press'],
    words: 'Polyurethane contains isocyanates, which can bring on asthma: gloves and good air.',
    source: 'HSE guidance',
    mark: 'from memory',
    glues: ['polyurethane'],
  },
  {
    steps: ['press'],
    words: 'Contact cement: its vapour burns. No flame, no pilot light, no sparks, good air.',
    source: 'an adhesive trade page',
    mark: 'seen',
    glues: ['contact cement'],
  },
  {
    steps: ['press'],
    words: 'Hot glue and hot water scald: a pot that can’t tip, held at 60 to 65 °C.',
    source: 'makers',
    mark: 'common practice',
    glues: ['hide'],
  },
  {
    steps: ['rehearse', 'press'],
    words:
      'The bag presses with tons: fingers out as it closes. Only tanks rated for vacuum, others can implode. The pump gets hot.',
    source: 'arithmetic and makers',
    mark: 'common practice',
    methods: ['bag'],
  },
  {
    steps: ['press'],
    words:
      'Warming: only sound blankets made for it, never folded, never left alone, with a thermometer and below what the film stands; no lamps near film or paper.',
    source: 'makers; blankets over bags seen in forums',
    mark: 'common practice',
    onlyWhen: 'warmed',
  },
  {
    steps: ['scrape', 'scrape the tape'],
    words: 'A fresh scraper burr cuts skin and gets hot: cover the edge that isn’t working.',
    source: 'makers',
    mark: 'common practice',
  },
  {
    steps: ['scrape', 'sand', 'joint'],
    words:
      'Wood dust harms nose and lungs (British limits: hardwood 3 mg/m³, softwood 5; European Union: hardwood 2): extraction and a mask, clean with a class M vacuum, never sweep or blow.',
    source: 'HSE; the European figure from trade news',
    mark: 'seen',
  },
  {
    steps: ['sand', 'scrape'],
    words:
      'Rosewoods, teak, iroko and western red cedar bring rashes or asthma to some; for rosewoods and true mahogany mind the trade rules (CITES).',
    source: 'HSE for cedar; the rest from memory',
    mark: 'from memory',
    onlyWhen: 'oily wood',
  },
]

export interface CautionCase {
  readonly glue: GlueName
  readonly method: Method
  readonly warmed: boolean
  readonly oily: boolean
}

/** What to mind at a step of this job. */
export function cautionsAt(step: StepName, { glue, method, warmed, oily }: CautionCase): Caution[] {
  const holds: Readonly<Record<NonNullable<Caution['onlyWhen']>, boolean>> = {
    warmed,
    'oily wood': oily,
  }
  return CAUTIONS.filter(
    ({ steps, glues, methods, onlyWhen }) =>
      steps.includes(step) &&
      (!glues || glues.includes(glue)) &&
      (!methods || methods.includes(method)) &&
      (!onlyWhen || holds[onlyWhen]),
  )
}

/** Whether any of the bag's pages and sentences apply. */
export const usesBag = (method: Method): boolean => method === 'bag'
