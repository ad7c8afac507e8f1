import { expect, it } from 'vitest'
import type { PhotoShelf } from '../../store/photo-shelf'
import type { Workshop } from '../../store/workshop.svelte'
import type { PhotoDoor } from '../../workers/photo-door'
import type { PhotoWanted } from '../../workers/photo-worker'
import { PhotoImport, photoImportOf } from './photo-import.svelte'

const corners = [
  { x: 0.1, y: 0.9 },
  { x: 0.1, y: 0.1 },
  { x: 0.9, y: 0.1 },
  { x: 0.9, y: 0.9 },
]

it('[I9] corners say by their names which end is numbered, wherever the dotted mark lies', async () => {
  const asked: PhotoWanted[] = []
  const door: PhotoDoor = {
    read: (wanted) => {
      asked.push(wanted)
      return Promise.resolve({ outcome: 'refused', trouble: { trouble: 'too few marks', found: 0 } })
    },
    cancel: () => undefined,
  }
  const work = new PhotoImport({} as Workshop, {} as PhotoShelf, () => 'maple', door)
  work.lie = { sideUp: 'other', dotAt: 'far end' }
  work.add([new File(['x'], 'leaf.jpg')], 1)
  await Promise.resolve()
  work.readAgain(work.items[0]!, corners)
  expect(asked.map(({ lie }) => lie)).toEqual([
    { sideUp: 'other', dotAt: 'far end' },
    { sideUp: 'other', dotAt: 'numbered end' },
  ])
})

it('[I8] what is on its way is kept for each flitch while the page lives', () => {
  const [workshop, shelf] = [{} as Workshop, {} as PhotoShelf]
  const work = photoImportOf(workshop, shelf, 'maple')
  work.add([], 1)
  expect(photoImportOf(workshop, shelf, 'maple')).toBe(work)
  expect(photoImportOf(workshop, shelf, 'oak')).not.toBe(work)
})
