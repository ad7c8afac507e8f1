const INVISIBLE = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g
const READY_FRACTION = /[\u00bc-\u00be\u2150-\u215f\u2189]/g
const RAISED_NUMERATOR = /[\u2070\u00b9\u00b2\u00b3\u2074-\u2079]+(?=\s*[/\u2044\u2215])/g
const LOWERED = /[\u2080-\u2089]/g
const WIDE = /[\uff01-\uff5e]/g

const compatible = (text: string): string => text.normalize('NFKC')

/**
 * What a person typed or pasted, in plain signs: small letters, `'` and `"` for feet and inches in any
 * typographic dress, `-` for every dash and minus, `1/2` for ½ (kept apart from a whole number before it),
 * single spaces, nothing invisible. Any text in, text out; the length is not limited here.
 */
export function plainTyping(text: string): string {
  return text
    .replace(INVISIBLE, '')
    .replace(WIDE, compatible)
    .replace(READY_FRACTION, (sign) => ` ${compatible(sign)}`)
    .replace(RAISED_NUMERATOR, (digits) => ` ${compatible(digits)}`)
    .replace(LOWERED, compatible)
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[\u2018-\u201b\u2032\u02b9\u02bc\u00b4`]/g, "'")
    .replace(/[\u201c-\u201f\u2033\u02ba]|''/g, '"')
    .replace(/\s+/g, ' ')
    .trim()
    .toLowerCase()
}

/** The text for use in a sentence: what was typed, cut short if someone pasted a page. */
export function quoted(text: string): string {
  const visible = text.replace(INVISIBLE, '').replace(/\s+/g, ' ').trim()
  const signs = [...visible]
  return `“${signs.length > 40 ? `${signs.slice(0, 40).join('')}…` : visible}”`
}
