/**
 * How long a frame takes while the window is dragged over a face of 24 and of 64 cells, in a headless browser: without
 * pictures, with pictures of both sides of the leaves, through the whole spine (decisions, derivation, scene, drawing), and
 * as a ratio to the same pictures on a bare canvas. Goal: 33 ms at the 95th percentile.
 *
 *   node tests/bench/board-frames.mjs [--frames 120] [--only "64 cells"]
 */
import { fileURLToPath } from 'node:url'
import { createServer } from 'vite'
import { chromium } from '@playwright/test'
import { findBrowser, thisMachine } from '../tools/find-tool.mjs'

const frames = Number(process.argv[process.argv.indexOf('--frames') + 1]) || 120
const only = process.argv.includes('--only') ? (process.argv[process.argv.indexOf('--only') + 1] ?? '') : ''
const root = fileURLToPath(new URL('../e2e/harness/', import.meta.url))
const project = fileURLToPath(new URL('../../', import.meta.url))

const server = await createServer({
  configFile: false,
  root,
  logLevel: 'warn',
  server: { port: 0, host: '127.0.0.1', hmr: false, watch: null, fs: { allow: [project] } },
})
await server.listen()
const address = server.resolvedUrls.local[0]
const browser = await chromium.launch({
  executablePath: await findBrowser(thisMachine),
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
})

const KINDS = [
  ['drag', 'whole drag, frame to frame'],
  ['spine', 'deriving alone'],
  ['board', 'drawing alone, frame to frame'],
  ['bare', 'bare canvas, frame to frame'],
]

const cases = [
  { name: 'face, 24 cells, grain lines', query: 'board=face&part=wide', size: [1280, 800], ratio: 1 },
  { name: 'face, 24 cells, pictures', query: 'board=face&part=wide&pictures=both', size: [1280, 800], ratio: 1 },
  {
    name: 'face, 64 cells, pictures',
    query: 'board=face&part=wide&cells=64&pictures=both',
    size: [1280, 800],
    ratio: 1,
  },
  {
    name: 'face, 24 cells, pictures, sharp screen',
    query: 'board=face&part=wide&pictures=both',
    size: [1280, 800],
    ratio: 2,
  },
  { name: 'face, 12 wedges, pictures', query: 'board=face&part=lamp-table&pictures=1', size: [1280, 800], ratio: 1 },
  { name: 'leaf, picture', query: 'board=leaf&part=door-1&pictures=1', size: [1280, 240], ratio: 1 },
]

try {
  for (const { name, query, size, ratio } of cases.filter((one) => one.name.includes(only))) {
    const page = await browser.newPage({ viewport: { width: size[0], height: size[1] }, deviceScaleFactor: ratio })
    await page.goto(`${address}board.html?${query}`)
    await page.waitForFunction(() => globalThis.ready === true, null, { timeout: 120_000 })
    const measured = {}
    for (const [what, words] of KINDS) {
      const times = await page.evaluate(([kind, count]) => globalThis.measure(kind, count), [what, frames])
      if (!times) continue
      measured[what] = [at(times, 0.5), at(times, 0.95)]
      console.log(line(`${name}: ${words}`, measured[what]))
    }
    if (measured.bare) console.log(ratioLine(`${name}: whole drag to bare canvas`, measured.drag, measured.bare))
    await page.close()
  }
} finally {
  await browser.close()
  await server.close()
}

function at(times, share) {
  const sorted = [...times].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]
}

function line(name, [half, most]) {
  return `${name.padEnd(72)} p50 ${half.toFixed(1).padStart(6)} ms   p95 ${most.toFixed(1).padStart(6)} ms`
}

function ratioLine(name, [half, most], [bareHalf, bareMost]) {
  return `${name.padEnd(72)} p50 ${(half / bareHalf).toFixed(2).padStart(6)} x    p95 ${(most / bareMost).toFixed(2).padStart(6)} x`
}
