/**
 * Rules.
 * H1 Undoing all steps and doing them again leads through the very same states.
 * H2 After a new step nothing that was undone can be done again; a step that changes nothing is none.
 * H3 The last 500 steps can be undone.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { commitStep, MOST_STEPS, redoLabel, redoStep, startHistory, undoLabel, undoStep, type History } from './history'

const steps = fc.array(fc.oneof(fc.constantFrom('undo', 'redo'), fc.integer({ min: 0, max: 5 })), { maxLength: 40 })

/** The same as the history, written as a list of states and a finger on one of them. */
function model(start: number, commands: readonly (string | number)[]) {
  let states = [{ state: start, label: '' }]
  let at = 0
  for (const command of commands) {
    if (command === 'undo') at = Math.max(0, at - 1)
    else if (command === 'redo') at = Math.min(states.length - 1, at + 1)
    else if (command !== states[at]!.state) {
      states = [...states.slice(0, at + 1), { state: command as number, label: `to ${command}` }]
      at++
    }
  }
  return { present: states[at]!.state, undo: at > 0 ? states[at]!.label : null, redo: states[at + 1]?.label ?? null }
}

function played(start: number, commands: readonly (string | number)[]): History<number> {
  let history = startHistory(start)
  for (const command of commands) {
    if (command === 'undo') history = undoStep(history)
    else if (command === 'redo') history = redoStep(history)
    else history = commitStep(history, `to ${command}`, command as number)
  }
  return history
}

describe('a history', () => {
  it('[H1, H2] is a list of states with a finger on one', () => {
    fc.assert(
      fc.property(steps, (commands) => {
        const history = played(0, commands)
        const state = { present: history.present, undo: undoLabel(history), redo: redoLabel(history) }
        expect(state).toEqual(model(0, commands))
      }),
    )
  })

  it('[H3] forgets what is older than its last steps', () => {
    let history = startHistory(0)
    for (let i = 1; i <= MOST_STEPS + 20; i++) history = commitStep(history, `to ${i}`, i)
    expect(history.past).toHaveLength(500)
    for (let i = 0; i < MOST_STEPS + 20; i++) history = undoStep(history)
    expect(history.present).toBe(20)
    expect(undoLabel(history)).toBeNull()
    expect(redoLabel(history)).toBe('to 21')
  })
})
