/** A thread that composes photographs of 12 megapixels: a whole leaf between its marks, by the leaf's number. */
import { parentPort } from 'node:worker_threads'
import { composePhoto, photoSet, TUNING_TABLES } from '../photographs/compose'

const [walnut] = photoSet(TUNING_TABLES, 500, 1)

parentPort?.on('message', (leaf: number) => {
  const { pixels, rectangle } = composePhoto({
    ...walnut!,
    width: 4000,
    height: 3000,
    leafLength: 2300,
    blocks: 0,
    leaf,
  })
  parentPort?.postMessage({ ...pixels, rectangle }, [pixels.rgba.buffer as ArrayBuffer])
})
