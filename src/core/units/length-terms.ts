import { ok, refused, type Result } from '../result'
import { numeralValue, type Comma } from './numeral'
import { MM_PER, unitNamed, type UnitName } from './unit'

/** Why a text is not a length, before any limit is looked at. */
export type FormTrouble =
  | { readonly trouble: 'not a length'; readonly text: string }
  | { readonly trouble: 'unit'; readonly text: string; readonly word: string }
  | { readonly trouble: 'fraction'; readonly text: string; readonly fraction: string }
  | { readonly trouble: 'inches'; readonly text: string }

const NUMERAL = String.raw`\d{1,3}(?: \d{3}(?!\d| ?/))+(?:[.,]\d+)?|[.,]?\d[\d.,]*`
const FRACTION = String.raw`(\d+) ?/ ?(\d+)`
const TERM = new RegExp(
  String.raw`(?:(${NUMERAL})(?![\d.,]| ?/)(?:(?: | ?- ?)${FRACTION})?|${FRACTION}) ?([a-z]+\.?|['"])?`,
  'y',
)

/** One number with the unit typed behind it, as in the 3' and the 6 1/2" of 3' 6 1/2". */
interface Term {
  readonly numeral: string
  /** null: no fraction was typed. */
  readonly fraction: { readonly over: string; readonly under: string } | null
  /** '' when none was typed. */
  readonly unitWord: string
}

/**
 * The millimetres of an unsigned length in plain signs: `17 3/8"`, `3' 6`, `1 m 20 cm`. `bare` is the unit of a
 * number without one; after feet that is the inch.
 */
export function termsLength(plain: string, bare: UnitName, comma: Comma): Result<number, FormTrouble> {
  const terms = findTerms(plain)
  if (terms === null) return refused({ trouble: 'not a length', text: plain })
  let total = 0
  let before: UnitName | null = null
  for (const [at, term] of terms.entries()) {
    const size = termSize(term, { before, bare, comma, last: at === terms.length - 1 }, plain)
    if (!size.ok) return size
    total += size.value.number * MM_PER[size.value.unit]
    before = size.value.unit
  }
  return ok(total)
}

/** Where a term stands: the unit of the one before it, or null for the first. */
interface Standing {
  readonly before: UnitName | null
  readonly bare: UnitName
  readonly comma: Comma
  readonly last: boolean
}

function termSize(
  term: Term,
  { before, bare, comma, last }: Standing,
  plain: string,
): Result<{ number: number; unit: UnitName }, FormTrouble> {
  const unit = term.unitWord !== '' ? unitNamed(term.unitWord) : before === 'ft' ? 'in' : bare
  if (unit === null) return refused({ trouble: 'unit', text: plain, word: term.unitWord })
  const number = termNumber(term, comma, plain)
  if (!number.ok) return number
  // only the last number may be broken, and only after feet may its unit be left out
  const wholeBefore = last || (term.unitWord !== '' && Number.isInteger(number.value))
  const namedAfter = before === null || before === 'ft' || term.unitWord !== ''
  if (!wholeBefore || !namedAfter || !mayFollow(before, unit)) return refused({ trouble: 'not a length', text: plain })
  // three digits after a foot mark are a Swiss thousand, or a slip
  const overFoot = before === 'ft' && (number.value >= 12 || /^\d{3}/.test(term.numeral))
  if (overFoot) return refused({ trouble: 'inches', text: plain })
  return ok({ number: number.value, unit })
}

function findTerms(plain: string): Term[] | null {
  const terms: Term[] = []
  let at = 0
  while (at < plain.length) {
    TERM.lastIndex = at
    const found = TERM.exec(plain)
    if (found === null) return null
    const [whole, numeral = '', over1, under1, over2, under2, unitWord = ''] = found
    const over = over1 ?? over2
    const under = under1 ?? under2
    terms.push({ numeral, fraction: over === undefined || under === undefined ? null : { over, under }, unitWord })
    // the dash of 3'-6" joins feet and inches, and is no minus
    const joint = /^ ?-? ?/.exec(plain.slice(at + whole.length))
    at += whole.length + (joint?.[0].length ?? 0)
  }
  return /[- ]$/.test(plain) ? null : terms
}

function termNumber({ numeral, fraction }: Term, comma: Comma, plain: string): Result<number, FormTrouble> {
  const whole = numeral === '' ? 0 : numeralValue(numeral, comma)
  if (whole === null) return refused({ trouble: 'not a length', text: plain })
  if (fraction === null) return ok(whole)
  const over = Number(fraction.over)
  const under = Number(fraction.under)
  if (!Number.isInteger(whole)) return refused({ trouble: 'not a length', text: plain })
  if (under === 0 || (numeral !== '' && over >= under))
    return refused({ trouble: 'fraction', text: plain, fraction: `${fraction.over}/${fraction.under}` })
  return ok(whole + over / under)
}

/** Whether a length may go on in `unit` after one in `before`: to a smaller unit of the same family. */
function mayFollow(before: UnitName | null, unit: UnitName): boolean {
  if (before === null) return true
  const inchFamily = (name: UnitName) => name === 'in' || name === 'ft'
  return inchFamily(before) === inchFamily(unit) && MM_PER[unit] < MM_PER[before]
}
