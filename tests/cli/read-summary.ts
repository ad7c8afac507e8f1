/** The form of summary.json as it is promised to those who read it: mm, [x, y], y down. */
export interface Summary {
  readonly unit: 'mm'
  readonly parts: readonly PartSummary[]
  /** How all parts are pressed: g, ml, hours; loads by the names of their parts. */
  readonly pressing: {
    readonly parts: readonly {
      readonly id: string
      readonly grams: number
      readonly thickness: { readonly nominal: number; readonly least: number; readonly most: number }
    }[]
    readonly loads: readonly { readonly method: string; readonly glue: string; readonly parts: readonly string[] }[]
    readonly tooLarge: readonly string[]
    readonly hours: {
      readonly hands: number
      readonly days: number
      readonly steps: readonly { readonly step: string; readonly hands: number; readonly waits: number }[]
    }
  }
}

type Pair = readonly [number, number]
type Ring = readonly Pair[]

/** Edges that go on alike: from point `from` of the polygon on, until the next entry. */
interface EdgeRun {
  readonly from: number
  readonly kind: 'seam' | 'outer'
  readonly joint?: string
  readonly side?: string
  readonly source?: number
  readonly jointed?: boolean
  readonly curve: { readonly centre: Pair; readonly radius: number } | 'free' | null
}

export interface PartSummary {
  readonly name: string
  readonly match: string
  readonly radialMatch?: string
  readonly arrangement: string | null
  readonly leafCount: number
  /** What would make it fit; null where it does. */
  readonly waysToFit: { readonly ways: readonly { readonly remedy: string; readonly sentence: string }[] } | null
  readonly firstLeaf: number
  readonly panel: { readonly width: number; readonly length: number }
  /** The rings of the three sizes, about the panel's middle. */
  readonly outline: { readonly shape: string; readonly finished: Ring; readonly core: Ring; readonly sheet: Ring }
  readonly overhang: readonly number[]
  readonly core: readonly number[]
  readonly cells: readonly {
    readonly id: string
    /** Leaf numbers are unique within a flitch only. */
    readonly flitch: string
    readonly leaf: number | null
    readonly turnedOver: boolean
    readonly spun: boolean | null
    readonly polygon: Ring
    readonly edges: readonly EdgeRun[]
    /** What it is cut to where that is more than its place in the face, laid there. */
    readonly cutTo?: { readonly polygon: Ring; readonly edges: readonly EdgeRun[] }
    /** Leaf mm to panel mm: x' = a·x + c·y + e, y' = b·x + d·y + f. */
    readonly placement: readonly [number, number, number, number, number, number]
    readonly window: {
      readonly group: string
      readonly position: Pair
      readonly nudge: readonly number[]
      readonly drift: readonly number[]
    }
  }[]
  /** null without one; `stringBetween` are the two edges of its string. */
  readonly border: {
    readonly width: number
    readonly string: { readonly width: number } | null
    readonly leaves: number
    readonly stringLength: number
    readonly play: { readonly empty: boolean; readonly polygons: readonly (readonly Ring[])[] }
    readonly stringBetween: { readonly outside: Ring; readonly inside: Ring } | null
  } | null
  readonly rough: readonly {
    readonly cell: string
    readonly flitch: string
    readonly leaf: number | null
    readonly polygon: Ring
  }[]
  /** Only where pieces are cut from jointed sheets; `lay` carries a sheet as it is made to the panel. */
  readonly sheets?: readonly {
    readonly cell: string
    readonly strips: readonly string[]
    readonly leaves: readonly (number | null)[]
    readonly turnedOver: boolean
    readonly template: string
    readonly lay: readonly [number, number, number, number, number, number]
    readonly window: Ring
    readonly rough: Ring
    readonly joints: readonly (readonly [Pair, Pair])[]
  }[]
  readonly leaves: readonly {
    readonly flitch: string
    readonly leaf: number
    readonly outline: Ring
    readonly usable: readonly (readonly Ring[])[]
  }[]
  readonly seams: readonly {
    readonly letter: string
    readonly kind: string
    readonly from: Pair
    readonly to: Pair
    readonly length: number
    /** Points along it, where it is not straight. */
    readonly line?: Ring
    readonly finishedLength: number
    readonly meets: 'mirrors' | 'repeats' | 'breaks'
    readonly depthOffset: number | null
    readonly stretches: readonly {
      readonly from: Pair
      readonly to: Pair
      readonly left: string
      readonly right: string
    }[]
  }[]
  readonly centre: { readonly x: number | null; readonly y: number | null }
  readonly finished: { readonly widths: readonly number[] | null }
  readonly play: { readonly empty: boolean; readonly area: number; readonly polygons: readonly (readonly Ring[])[] }
  readonly findings: readonly {
    readonly code: string
    readonly measured: number | null
    readonly limit: number | null
    readonly sentence: string
  }[]
  readonly templates: {
    readonly file: string | null
    readonly picture: string | null
    readonly paper: string
    readonly pages: number
    readonly correction: { readonly across: number; readonly along: number }
  }
  readonly files: readonly {
    readonly file: string
    readonly holds: readonly { readonly sheet: string; readonly from: number; readonly to: number }[]
  }[]
}
