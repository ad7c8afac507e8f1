/**
 * Rules.
 * J11 An older file is brought to the newest version one step after the other; a file of the newest is left alone.
 */
import { describe, expect, it } from 'vitest'
import { migrate, MIGRATIONS, NEWEST_VERSION, type Migration } from './migrations'

const steps: ReadonlyMap<number, Migration> = new Map<number, Migration>([
  [1, ({ veneer, ...job }) => ({ ...job, flitches: veneer })],
  [2, (job) => ({ ...job, unit: 'mm' })],
])

describe('migrate', () => {
  it.each([
    { from: 1, file: { version: 1, veneer: [7] }, moved: { version: 3, flitches: [7], unit: 'mm' } },
    { from: 2, file: { version: 2, flitches: [7] }, moved: { version: 3, flitches: [7], unit: 'mm' } },
    { from: 3, file: { version: 3, flitches: [7] }, moved: { version: 3, flitches: [7] } },
  ])('[J11] brings version $from to 3', ({ from, file, moved }) => expect(migrate(file, from, 3, steps)).toEqual(moved))

  it('[J11] has a step for every version before the newest', () => {
    const older = Array.from({ length: NEWEST_VERSION - 1 }, (_, i) => i + 1)
    expect([...MIGRATIONS.keys()]).toEqual(older)
  })
})
