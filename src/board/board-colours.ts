import type { BoardColours } from './board-types'

interface Both {
  readonly light: string
  readonly dark: string
}

/** Where the theme has no colour of that name. The boards are legible on their own. */
const OTHERWISE: Readonly<Record<ThemeColour, Both>> = {
  ground: { light: '#e6ebe9', dark: '#151c1d' },
  sheet: { light: '#f7f9f7', dark: '#1e2728' },
  ink: { light: '#1c2628', dark: '#e9efed' },
  inkSoft: { light: '#5b6a6c', dark: '#9db0b0' },
  line: { light: '#c3cdca', dark: '#35423f' },
  act: { light: '#0a6a72', dark: '#6fd0d3' },
  onAct: { light: '#ffffff', dark: '#10191a' },
  note: { light: '#5a3ea8', dark: '#b9a2ff' },
  onNote: { light: '#ffffff', dark: '#1a1230' },
  good: { light: '#2e6b3a', dark: '#8fd19b' },
  wood: { light: '#dcc6a4', dark: '#7d6247' },
  woodEdge: { light: '#9c7a50', dark: '#4c3823' },
  grain: { light: '#a27f55', dark: '#523d28' },
}

type ThemeColour = Exclude<keyof BoardColours, 'dark' | 'font' | 'tagUp' | 'onTagUp' | 'tagDown' | 'onTagDown'>

const variableOf = (name: string): string => `--${name.replace(/[A-Z]/g, (capital) => `-${capital.toLowerCase()}`)}`

/** The colours of the theme as they are at an element now. */
export function boardColours(element: Element): BoardColours {
  const style = getComputedStyle(element)
  const dark = matchMedia('(prefers-color-scheme: dark)').matches
  const read = (name: ThemeColour): string =>
    style.getPropertyValue(variableOf(name)).trim() || OTHERWISE[name][dark ? 'dark' : 'light']
  const colours = Object.fromEntries(
    (Object.keys(OTHERWISE) as ThemeColour[]).map((name) => [name, read(name)]),
  ) as Record<ThemeColour, string>
  return {
    ...colours,
    dark,
    // a tag is a sign on the wood, not a part of the theme: white and dark in both
    tagUp: '#ffffff',
    onTagUp: '#1c2628',
    tagDown: '#1c2628',
    onTagDown: '#ffffff',
    font: style.fontFamily || 'system-ui, sans-serif',
  }
}

/** Tells when the system goes from light to dark or back, or asks for forced colours; gives the way to stop. */
export function onColoursChange(changed: () => void): () => void {
  const queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((query) => matchMedia(query))
  for (const query of queries) query.addEventListener('change', changed)
  return () => {
    for (const query of queries) query.removeEventListener('change', changed)
  }
}
