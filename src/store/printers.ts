/** A printer as the shop knows it: what the bars of a page printed without a correction measured, and how long they are. */
export interface Printer {
  readonly name: string
  readonly measured: { readonly across: number; readonly along: number }
  readonly lengths: { readonly across: number; readonly along: number }
}

/** What was last printed on. */
export interface PrintHabit {
  readonly paper: string
  /** mm, of a paper of the maker's own; null for a paper that is listed. */
  readonly custom: { readonly width: number; readonly height: number } | null
  readonly joining: 'overlap' | 'butt'
  /** The name of the printer; null for one that is not corrected. */
  readonly printer: string | null
  /** Whether card frames to find the windows again are among the pages of a part. */
  readonly viewfinders: boolean
}

export interface PrintRoom {
  readonly printers: readonly Printer[]
  readonly habit: PrintHabit
}

export const USUAL_HABIT: PrintHabit = {
  paper: 'a4',
  custom: null,
  joining: 'overlap',
  printer: null,
  viewfinders: false,
}

const KEY = 'leafturn printers'

type Shelf = Pick<Storage, 'getItem' | 'setItem'>

/** What this browser remembers of the printers: they belong to the shop, not to a job. What can't be read is left out. */
export function readPrintRoom(shelf: Shelf): PrintRoom {
  try {
    const found = JSON.parse(shelf.getItem(KEY) ?? '{}') as { printers?: unknown; habit?: unknown }
    const printers = Array.isArray(found.printers) ? found.printers.filter(isPrinter) : []
    return { printers, habit: habitFrom(found.habit, printers) }
  } catch {
    return { printers: [], habit: USUAL_HABIT }
  }
}

/** Keeps it; a browser that may not is no reason to stop. */
export function keepPrintRoom(shelf: Shelf, room: PrintRoom): void {
  try {
    shelf.setItem(KEY, JSON.stringify(room))
  } catch {
    // private windows and full disks: it holds until the page is closed
  }
}

/** The room with a printer put in, or put in anew under the same name; it is the one used from now on. */
export const withPrinter = ({ printers, habit }: PrintRoom, printer: Printer): PrintRoom => ({
  printers: [...printers.filter(({ name }) => name !== printer.name), printer].sort((p, q) =>
    p.name.localeCompare(q.name),
  ),
  habit: { ...habit, printer: printer.name },
})

export const withoutPrinter = ({ printers, habit }: PrintRoom, name: string): PrintRoom => ({
  printers: printers.filter((printer) => printer.name !== name),
  habit: habit.printer === name ? { ...habit, printer: null } : habit,
})

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null
const isLength = (value: unknown): value is number => typeof value === 'number' && value > 0 && Number.isFinite(value)

const isPair = (value: unknown): boolean => isObject(value) && isLength(value.across) && isLength(value.along)

const isPrinter = (value: unknown): value is Printer =>
  isObject(value) && typeof value.name === 'string' && isPair(value.measured) && isPair(value.lengths)

function habitFrom(value: unknown, printers: readonly Printer[]): PrintHabit {
  if (!isObject(value)) return USUAL_HABIT
  const { paper, custom, joining, printer, viewfinders } = value
  return {
    paper: typeof paper === 'string' ? paper : USUAL_HABIT.paper,
    custom:
      isObject(custom) && isLength(custom.width) && isLength(custom.height)
        ? { width: custom.width, height: custom.height }
        : null,
    joining: joining === 'butt' ? 'butt' : 'overlap',
    printer: printers.some(({ name }) => name === printer) ? (printer as string) : null,
    viewfinders: viewfinders === true,
  }
}
