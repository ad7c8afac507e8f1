/** The unit of a job: bare numbers are typed in it and lengths are shown in it. */
export type LengthUnit = 'mm' | 'in'

/** The units that may be typed behind a number. */
export type UnitName = LengthUnit | 'cm' | 'm' | 'ft'

/** Millimetres in each; the inch by the international yard and pound agreement of 1959. */
export const MM_PER: Readonly<Record<UnitName, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 }

/** The longest length that is read at all: 100 m. */
export const LONGEST = 100_000

/** Lengths are kept to the nanometre, so that 16.5 x 25.4 is 419.1 and not a hair less. */
export const toNanometre = (mm: number): number => Math.round(mm * 1e6) / 1e6 + 0

const WORDS: Readonly<Record<UnitName, readonly string[]>> = {
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['in', 'ins', 'inch', 'inches', '"'],
  ft: ['ft', 'foot', 'feet', "'"],
}

const NAME_OF: ReadonlyMap<string, UnitName> = new Map(
  (Object.keys(WORDS) as UnitName[]).flatMap((name) => WORDS[name].map((word) => [word, name] as const)),
)

/** The unit that a small-lettered word or sign means, a full stop behind it or not; null when it means none. */
export const unitNamed = (word: string): UnitName | null => NAME_OF.get(word.replace(/\.$/, '')) ?? null
