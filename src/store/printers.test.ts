/**
 * [M1] What is known of a printer is kept by its name; what can't be read is left out, and nothing else is lost with it.
 */
import { describe, expect, it } from 'vitest'
import { keepPrintRoom, readPrintRoom, USUAL_HABIT, withoutPrinter, withPrinter, type Printer } from './printers'

function shelfWith(text: string | null = null) {
  let kept = text
  return { getItem: () => kept, setItem: (_: string, value: string) => void (kept = value) }
}

const laser: Printer = { name: 'Laser', measured: { across: 149, along: 251 }, lengths: { across: 150, along: 250 } }

describe('printers', () => {
  it('[M1] are read as they were kept, the one put in last is used', () => {
    const shelf = shelfWith()
    keepPrintRoom(shelf, withPrinter(readPrintRoom(shelf), laser))
    expect(readPrintRoom(shelf)).toEqual({ printers: [laser], habit: { ...USUAL_HABIT, printer: 'Laser' } })
    const again = { ...laser, measured: { across: 150, along: 250 } }
    expect(withPrinter(readPrintRoom(shelf), again).printers).toEqual([again])
    expect(withoutPrinter(readPrintRoom(shelf), 'Laser')).toEqual({ printers: [], habit: USUAL_HABIT })
  })

  it.each([
    { kept: null, printers: [] },
    { kept: '{broken', printers: [] },
    { kept: '[]', printers: [] },
    {
      kept: JSON.stringify({ printers: [laser, { name: 'Old', measured: { across: 0, along: 1 } }] }),
      printers: [laser],
    },
  ])('[M1] $kept', ({ kept, printers }) => {
    expect(readPrintRoom(shelfWith(kept)).printers).toEqual(printers)
  })

  it('[M1] a habit of a printer that is gone prints without one', () => {
    const habit = {
      paper: 'a3',
      custom: { width: 500, height: 0 },
      joining: 'butt',
      printer: 'Gone',
      viewfinders: true,
    }
    expect(readPrintRoom(shelfWith(JSON.stringify({ printers: [laser], habit }))).habit).toEqual({
      paper: 'a3',
      custom: null,
      joining: 'butt',
      printer: null,
      viewfinders: true,
    })
  })

  it('[M1] a browser that keeps nothing is no reason to stop', () => {
    const full = {
      getItem: () => null,
      setItem: () => {
        throw new Error('full')
      },
    }
    expect(() => keepPrintRoom(full, { printers: [laser], habit: USUAL_HABIT })).not.toThrow()
  })
})
