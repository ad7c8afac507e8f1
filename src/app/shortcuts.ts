import type { Workshop } from '../store/workshop.svelte'
import { STATIONS } from './station-words'

interface Shortcut {
  readonly keys: string
  readonly does: string
  readonly matches: (event: KeyboardEvent) => boolean
  readonly run: (workshop: Workshop) => void
}

const withCommand = (event: KeyboardEvent): boolean => event.ctrlKey || event.metaKey

/** Every shortcut of the program, in one place; the help lists them from here. */
export const SHORTCUTS: readonly Shortcut[] = [
  {
    keys: 'Ctrl Z',
    does: 'undo',
    matches: (event) => withCommand(event) && !event.shiftKey && event.key.toLowerCase() === 'z',
    run: (workshop) => workshop.undo(),
  },
  {
    keys: 'Ctrl Shift Z, Ctrl Y',
    does: 'redo',
    matches: (event) =>
      withCommand(event) && ((event.shiftKey && event.key.toLowerCase() === 'z') || event.key.toLowerCase() === 'y'),
    run: (workshop) => workshop.redo(),
  },
  ...STATIONS.map(({ id, name }, i) => ({
    keys: `Alt ${i + 1}`,
    does: `go to ${name}`,
    matches: (event: KeyboardEvent) => event.altKey && event.code === `Digit${i + 1}`,
    run: (workshop: Workshop) => {
      workshop.session.station = id
    },
  })),
]

/** Inputs in which nothing is typed: they have no undo of their own. */
const NOT_TYPED = ['radio', 'checkbox', 'range', 'color', 'file', 'button'].map((type) => `[type=${type}]`).join(', ')

/** Typing in a field keeps its own undo. */
const isTyping = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLElement && target.matches(`input:not(${NOT_TYPED}), textarea, [contenteditable]`)

export function handleShortcut(event: KeyboardEvent, workshop: Workshop): void {
  if (isTyping(event) && !event.altKey) return
  const shortcut = SHORTCUTS.find(({ matches }) => matches(event))
  if (!shortcut) return
  event.preventDefault()
  shortcut.run(workshop)
}
