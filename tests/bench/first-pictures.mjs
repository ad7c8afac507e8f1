/**
 * When the leaves of the demonstration have their pictures at the first start, ms after the page was asked for: all of them
 * coarse (goal: within a second), all as thumbnails, and the first sharp one. Of the built app, in a headless browser.
 */
import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { findBrowser, thisMachine } from '../tools/find-tool.mjs'

const port = process.env.E2E_PORT || '4319'
const project = fileURLToPath(new URL('../../', import.meta.url))
const server = spawn('node', ['tests/tools/serve.mjs'], { cwd: project, env: { ...process.env, PORT: port } })
await new Promise((ready) => server.stdout.once('data', ready))
const browser = await chromium.launch({
  executablePath: await findBrowser(thisMachine),
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
})

/** Notes when each picture comes from the painter. Runs in the page. */
function listen() {
  const Worker = window.Worker
  window.painted = []
  window.Worker = class extends Worker {
    constructor(...given) {
      super(...given)
      this.addEventListener('message', ({ data }) => {
        if (data.kind === 'painted') window.painted.push({ width: data.bitmap.width, at: performance.now() })
      })
    }
  }
}

const LEAVES = 24

try {
  for (let run = 1; run <= 3; run++) {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
    await page.addInitScript(listen)
    await page.goto(`http://127.0.0.1:${port}/`)
    await page.waitForFunction((least) => window.painted.length > least, 2 * LEAVES, { timeout: 60_000 })
    const painted = await page.evaluate(() => window.painted)
    const [coarse, better, sharp] = [LEAVES - 1, 2 * LEAVES - 1, 2 * LEAVES].map((i) => painted[i].at.toFixed(0))
    console.log(
      `first start ${run}: all coarse at ${coarse} ms, all thumbnails at ${better} ms, one sharp at ${sharp} ms`,
    )
    await page.close()
  }
} finally {
  await browser.close()
  server.kill()
}
