import type { Side } from '../../core/geometry/box'
import type { BalanceLack } from '../../core/press/balance'
import type { GlueVerdict } from '../../core/press/choose-glue'
import type { PressPlan } from '../../core/press/press-plan'
import type { ClampName, EdgeWork, GlueName, Method } from '../../core/press/pressing'

export const METHODS: readonly { readonly value: Method; readonly name: string }[] = [
  { value: 'bag', name: 'in the vacuum bag' },
  { value: 'cauls', name: 'between cauls and clamps' },
  { value: 'leaf by leaf', name: 'leaf by leaf with the hammer' },
]

/** What a glue is called where it is chosen. */
export const GLUE_CHOICES: Readonly<Record<GlueName, string>> = {
  PVA: 'PVA glue',
  'plastic resin, powder': 'plastic resin (powder)',
  'plastic resin, liquid': 'plastic resin (liquid)',
  epoxy: 'epoxy',
  polyurethane: 'polyurethane',
  hide: 'hide glue',
  'contact cement': 'contact cement',
}

export const VERDICT_WORDS: Readonly<Record<GlueVerdict['verdict'], string>> = {
  suits: 'suits',
  'with care': 'with care',
  no: 'not for this',
}

/** Never by colour alone. */
export const VERDICT_SIGNS: Readonly<Record<GlueVerdict['verdict'], string>> = { suits: '✓', 'with care': '!', no: '✕' }

export const EDGE_WORKS: readonly { readonly value: EdgeWork['edge']; readonly name: string }[] = [
  { value: 'bare', name: 'bare' },
  { value: 'lipped before', name: 'lipped, then faced over' },
  { value: 'lipped after', name: 'lipped after facing' },
  { value: 'edge veneer first', name: 'edge veneer, then the face' },
  { value: 'edge veneer last', name: 'edge veneer last' },
]

export const SIDES: readonly { readonly side: Side; readonly name: string }[] = [
  { side: 'top', name: 'Top end' },
  { side: 'left', name: 'Left side' },
  { side: 'right', name: 'Right side' },
  { side: 'bottom', name: 'Bottom end' },
]

/** The edge done another way; its thickness is kept from one lipping, or one edge veneer, to the other. */
export function edgeDone(work: EdgeWork, edge: EdgeWork['edge'], leaf: number): EdgeWork {
  if (edge === 'bare') return { edge }
  const isLipping = edge.startsWith('lipped')
  const alike = work.edge !== 'bare' && work.edge.startsWith('lipped') === isLipping
  return { edge, thickness: alike ? work.thickness : isLipping ? 6 : leaf }
}

/** How the edges are done, in a few words: `lipped before (all)`, `bare`. */
export function edgesWords(edges: Readonly<Record<Side, EdgeWork>>): string {
  const kinds = [...new Set(Object.values(edges).map(({ edge }) => edge))]
  return kinds.length === 1 ? kinds[0]! : `${kinds.filter((kind) => kind !== 'bare').join(', ')} in part`
}

export const CLAMP_WORDS: Readonly<Record<ClampName, string>> = {
  'light bar': 'Light bar clamps',
  'F-clamp': 'F-clamps',
  'parallel-jaw': 'Parallel-jaw clamps',
  pipe: 'Pipe clamps',
  'heavy C-clamp': 'Heavy C-clamps',
}

const LACKS: Readonly<Record<BalanceLack['lack'], string>> = {
  backer: 'no backer',
  face: 'no face',
  thickness: 'faces of two thicknesses',
  species: 'faces of two woods',
  cut: 'faces cut in two ways',
  grain: 'grain lies two ways',
  moisture: 'faces of two moistures',
  core: 'core not the same both ways',
  'cross-band behind': 'cross-band without its fellow',
  'cross-band in front': 'cross-band without its fellow',
}

/** The balance in a few words: what is missing first. */
export function balanceWords({ verdict, lacks }: Pick<PressPlan['balance'], 'verdict' | 'lacks'>): string {
  if (verdict === 'advice') return 'grain every way'
  return lacks[0] ? LACKS[lacks[0].lack] : 'balanced'
}
