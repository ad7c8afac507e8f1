import { describe, expect, it } from 'vitest'
import { Session } from './session.svelte'

describe('the session', () => {
  it.each([
    ['station', (session: Session) => (session.station = 'cutting')],
    ['part', (session: Session) => (session.part = 'top')],
    ['flitch', (session: Session) => (session.flitch = 'maple')],
  ])('lets go of what is picked when the %s changes', (_what, change) => {
    const session = new Session()
    session.part = 'door'
    session.selected = { on: 'cell', cell: 'L1' }
    session.part = 'door'
    expect(session.selected).toEqual({ on: 'cell', cell: 'L1' })
    change(session)
    expect(session.selected).toBeNull()
  })

  it('looks at another face as a whole', () => {
    const session = new Session()
    session.view = { centre: { x: 10, y: 0 }, scale: 2 }
    session.part = 'top'
    expect(session.view).toBeNull()
  })
})
