export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json | undefined }

const WIDTH = 110

/**
 * JSON to be read by people: what fits on a line stands on one, lists of numbers and points fill their lines,
 * and everything else has a line for each entry. Fields that are undefined are left out.
 */
export const layoutJson = (value: Json): string => `${laidOut(value, '', 0)}\n`

function laidOut(value: Json, indent: string, used: number): string {
  const flat = onOneLine(value)
  // the outermost object always has a line for each field
  if (indent.length + used + flat.length <= WIDTH && (indent !== '' || !isObject(value))) return flat
  const inner = `${indent}  `
  if (Array.isArray(value)) return bracketed('[', arrayLines(value, inner), ']', indent)
  if (!isObject(value)) return flat
  const lines = fieldsOf(value).map(([key, held]) => {
    const name = `${JSON.stringify(key)}: `
    return `${inner}${name}${laidOut(held, inner, name.length)}`
  })
  return bracketed('{', lines.join(',\n'), '}', indent)
}

const bracketed = (open: string, body: string, close: string, indent: string): string =>
  body === '' ? `${open}${close}` : `${open}\n${body}\n${indent}${close}`

function arrayLines(values: readonly Json[], indent: string): string {
  if (!values.every(isNumberOrPoint)) return values.map((v) => `${indent}${laidOut(v, indent, 0)}`).join(',\n')
  const lines: string[] = []
  let line = ''
  for (const text of values.map(onOneLine)) {
    if (line !== '' && indent.length + line.length + 2 + text.length > WIDTH) {
      lines.push(`${indent}${line}`)
      line = ''
    }
    line += line === '' ? text : `, ${text}`
  }
  lines.push(`${indent}${line}`)
  return lines.join(',\n')
}

function onOneLine(value: Json): string {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(', ')}]`
  if (!isObject(value)) return JSON.stringify(value)
  const fields = fieldsOf(value).map(([key, held]) => `${JSON.stringify(key)}: ${onOneLine(held)}`)
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`
}

const isObject = (value: Json): value is { readonly [key: string]: Json | undefined } =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const isNumberOrPoint = (value: Json): boolean =>
  typeof value === 'number' || (Array.isArray(value) && value.length > 0 && value.every((v) => typeof v === 'number'))

const fieldsOf = (value: { readonly [key: string]: Json | undefined }): [string, Json][] =>
  Object.entries(value).filter((entry): entry is [string, Json] => entry[1] !== undefined)
