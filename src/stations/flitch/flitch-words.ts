import type { Cut, FigureKind } from '../../core/leaves/flitch'

export const CUTS: readonly { readonly value: Cut; readonly name: string }[] = [
  { value: 'flat', name: 'flat cut' },
  { value: 'quarter', name: 'quarter cut' },
  { value: 'rift', name: 'rift cut' },
  { value: 'half round', name: 'half-round cut' },
  { value: 'rotary', name: 'rotary cut' },
  { value: 'sawn', name: 'sawn' },
]

export const FIGURES: readonly { readonly value: FigureKind; readonly name: string }[] = [
  { value: 'straight', name: 'along the grain' },
  { value: 'burl', name: 'burl' },
  { value: 'crotch', name: 'crotch' },
]

export const FIGURE_HINTS: Readonly<Record<Exclude<FigureKind, 'straight'>, string>> = {
  burl: 'Wild wood without a grain line. The window may be turned on its leaves by any angle; figure still mirrors at the seams, but nothing is said of its grain.',
  crotch:
    'The feather where a trunk forks. It has an end that is up; the program tells where a leaf would lie upside down.',
}

/** Species to choose from; anything else can be typed. */
export const SPECIES: readonly string[] = [
  'ash (Fraxinus excelsior)',
  'beech (Fagus sylvatica)',
  'birch (Betula pendula)',
  'black cherry (Prunus serotina)',
  'elm (Ulmus glabra)',
  'European oak (Quercus robur)',
  'maple (Acer saccharum)',
  'pear (Pyrus communis)',
  'sapele (Entandrophragma cylindricum)',
  'sycamore (Acer pseudoplatanus)',
  'teak (Tectona grandis)',
  'walnut (Juglans nigra)',
  'walnut (Juglans regia)',
  'white oak (Quercus alba)',
]

/** `1 leaf`, `24 leaves`. */
export const leavesInWords = (count: number): string => `${count} ${count === 1 ? 'leaf' : 'leaves'}`
