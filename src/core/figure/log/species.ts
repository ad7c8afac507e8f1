/** Red, green and blue, 0 to 255. */
export type Rgb = readonly [number, number, number]

export type SpeciesName = 'walnut' | 'maple' | 'oak' | 'sapele'

/** How one species looks. Lengths in mm, strengths as shares of the way from light to dark wood. */
export interface Species {
  readonly name: string
  readonly botanical: string
  readonly light: Rgb
  readonly dark: Rgb
  readonly sapwood: Rgb
  /** Measured in from the bark. */
  readonly sapwoodWidth: number
  /** Darkness of the plainest wood. */
  readonly ground: number
  readonly ring: {
    readonly meanWidth: number
    /** Spread of the widths as a share of the mean. */
    readonly spread: number
    /** Darkness gained towards the end of a year, and how late it comes (a power). */
    readonly latewood: number
    readonly lateness: number
    /** The thin dark line that closes a year. */
    readonly line: number
    /** Darkness of the porous wood that opens a year (ring-porous species), and its share of the year. */
    readonly earlyPores: number
    readonly earlyShare: number
  }
  /** Bands of colour that follow the rings. */
  readonly pigment: number
  /** Streaks that follow the fibre. */
  readonly streak: number
  /** Warm and cool patches: the swing of red against blue. */
  readonly warmth: number
  readonly pores: {
    /** Dashes per square mm. */
    readonly density: number
    readonly width: number
    readonly length: number
    readonly darkness: number
    /** 0: evenly spread; 1: only in the wood that opens a year. */
    readonly early: number
  }
  /** Slow play of light. */
  readonly sheen: number
  /** Bands of light across the grain, and how far apart they lie. */
  readonly curl: { readonly strength: number; readonly pitch: number }
  /** Stripes of light along the grain, from fibre that leans one way and then the other. */
  readonly ribbon: { readonly strength: number; readonly pitch: number }
  /** Flakes of ray where the knife runs along them. */
  readonly rays: number
}

export const SPECIES: Readonly<Record<SpeciesName, Species>> = {
  walnut: {
    name: 'walnut',
    botanical: 'Juglans nigra',
    light: [146, 108, 80],
    dark: [70, 47, 36],
    sapwood: [196, 168, 130],
    sapwoodWidth: 9,
    ground: 0.17,
    ring: { meanWidth: 3.7, spread: 0.4, latewood: 0.34, lateness: 1.8, line: 0.26, earlyPores: 0.1, earlyShare: 0.3 },
    pigment: 0.44,
    streak: 0.15,
    warmth: 0.035,
    pores: { density: 0.34, width: 0.13, length: 8, darkness: 0.68, early: 0.5 },
    sheen: 0.06,
    curl: { strength: 0.012, pitch: 14 },
    ribbon: { strength: 0, pitch: 9 },
    rays: 0,
  },
  maple: {
    name: 'maple',
    botanical: 'Acer saccharum',
    light: [232, 209, 176],
    dark: [184, 142, 102],
    sapwood: [238, 220, 190],
    sapwoodWidth: 30,
    ground: 0.1,
    ring: { meanWidth: 3.2, spread: 0.3, latewood: 0.13, lateness: 3, line: 0.36, earlyPores: 0, earlyShare: 0.2 },
    pigment: 0.14,
    streak: 0.07,
    warmth: 0.02,
    pores: { density: 0.12, width: 0.1, length: 2.2, darkness: 0.5, early: 0 },
    sheen: 0.03,
    curl: { strength: 0.06, pitch: 9 },
    ribbon: { strength: 0, pitch: 9 },
    rays: 0,
  },
  oak: {
    name: 'oak',
    botanical: 'Quercus alba',
    light: [208, 178, 134],
    dark: [140, 102, 66],
    sapwood: [222, 200, 160],
    sapwoodWidth: 12,
    ground: 0.16,
    ring: { meanWidth: 2.8, spread: 0.3, latewood: 0.2, lateness: 0.8, line: 0, earlyPores: 0.42, earlyShare: 0.26 },
    pigment: 0.16,
    streak: 0.1,
    warmth: 0.02,
    pores: { density: 0.26, width: 0.24, length: 5, darkness: 0.8, early: 0.9 },
    sheen: 0.03,
    curl: { strength: 0.01, pitch: 16 },
    ribbon: { strength: 0, pitch: 9 },
    rays: 0.62,
  },
  sapele: {
    name: 'sapele',
    botanical: 'Entandrophragma cylindricum',
    light: [150, 96, 68],
    dark: [96, 50, 36],
    sapwood: [206, 176, 146],
    sapwoodWidth: 14,
    ground: 0.34,
    ring: { meanWidth: 4.2, spread: 0.4, latewood: 0.16, lateness: 1.6, line: 0.08, earlyPores: 0, earlyShare: 0.2 },
    pigment: 0.16,
    streak: 0.1,
    warmth: 0.03,
    pores: { density: 0.3, width: 0.16, length: 4, darkness: 0.8, early: 0 },
    sheen: 0.03,
    curl: { strength: 0.012, pitch: 18 },
    ribbon: { strength: 0.13, pitch: 11 },
    rays: 0,
  },
}
