/**
 * Rules kept here:
 * [H-figure-1] A thumbnail is asked for once, ahead of everything sharp.
 * [H-figure-2] Cancelling gives up sharp pictures (null) and leaves thumbnails alone; a picture that comes too late is let go.
 * [H-figure-3] A closed or broken worker answers every question; nothing hangs.
 */
import { describe, expect, it, vi } from 'vitest'
import { createFigureDoor } from './figure-door'
import type { FromLogWorker, ToLogWorker } from './log-worker'
import type { WorkerLike } from './one-task'

/** A worker played by the test, which sees what was asked and answers by hand. */
function playedWorker() {
  const asked: ToLogWorker[] = []
  const worker: WorkerLike & { terminated: boolean } = {
    terminated: false,
    onmessage: null,
    onerror: null,
    postMessage: (message: ToLogWorker) => void asked.push(message),
    terminate() {
      worker.terminated = true
    },
  }
  const answer = (data: FromLogWorker) => worker.onmessage?.call(worker as unknown as Worker, { data } as MessageEvent)
  const paints = () => asked.flatMap((message) => (message.kind === 'paint' ? [message] : []))
  return { worker, asked, answer, paints, open: () => createFigureDoor(undefined, () => worker) }
}

const bitmap = () => ({ width: 1, height: 1, close: vi.fn() }) as unknown as ImageBitmap

describe('the door to the pictures of the wood', () => {
  it('[H-figure-1] asks for a thumbnail once and urgently', async () => {
    const { open, paints, answer } = playedWorker()
    const door = open()
    const [first, again] = [door.thumbnail(3), door.thumbnail(3)]
    void door.sharp(3, { pxPerMm: 1, box: null })
    expect(paints().map(({ urgent, picture }) => [urgent, picture.leaf, picture.pxPerMm])).toEqual([
      [true, 3, 0.25],
      [false, 3, 1],
    ])
    const picture = bitmap()
    answer({ kind: 'painted', id: paints()[0]!.id, bitmap: picture })
    expect(await first).toBe(picture)
    expect(await again).toBe(picture)
  })

  it('[H-figure-2] cancels what is sharp, keeps thumbnails, and lets a late picture go', async () => {
    const { open, paints, asked, answer } = playedWorker()
    const door = open()
    const thumbnail = door.thumbnail(1)
    const shares: number[] = []
    const sharp = door.sharp(2, { pxPerMm: 2, box: null, onProgress: (share) => shares.push(share) })
    const [small, large] = paints()
    answer({ kind: 'progress', id: large!.id, share: 0.5 })
    door.cancel()
    expect(await sharp).toBeNull()
    expect(shares).toEqual([0.5])
    expect(asked.at(-1)).toEqual({ kind: 'cancel', id: large!.id })
    const late = bitmap()
    answer({ kind: 'painted', id: large!.id, bitmap: late })
    expect(late.close).toHaveBeenCalledOnce()
    const picture = bitmap()
    answer({ kind: 'painted', id: small!.id, bitmap: picture })
    expect(await thumbnail).toBe(picture)
  })

  it('[H-figure-3] answers everything when it is closed, and afterwards', async () => {
    const { open, worker } = playedWorker()
    const door = open()
    const [thumbnail, sharp] = [door.thumbnail(1), door.sharp(1, { pxPerMm: 1, box: null })]
    door.close()
    expect(worker.terminated).toBe(true)
    await expect(thumbnail).rejects.toThrow('closed')
    await expect(door.frame).rejects.toThrow('closed')
    await expect(door.thumbnail(2)).rejects.toThrow('closed')
    expect(await sharp).toBeNull()
    expect(await door.sharp(1, { pxPerMm: 1, box: null })).toBeNull()
  })

  it('[H-figure-3] says why when a picture or the worker fails', async () => {
    const { open, worker, paints, answer } = playedWorker()
    const door = open()
    const [one, two] = [door.sharp(1, { pxPerMm: 1, box: null }), door.thumbnail(2)]
    answer({ kind: 'failed', id: paints()[0]!.id, message: 'no room for it' })
    await expect(one).rejects.toThrow('no room for it')
    worker.onerror?.call(worker as unknown as Worker, { message: 'it did not start' } as ErrorEvent)
    await expect(two).rejects.toThrow('cannot be painted: it did not start')
  })
})
