/**
 * What photographs of 12 megapixels cost in the built app, in a headless browser: seconds until one is a leaf that can be
 * taken, the longest task on the page's own thread meanwhile, and how far the renderer's resident memory grows while 24 are
 * taken one after the other, beside the goals. A busy machine stretches tasks, so the processor time of the longest one is
 * told, too, from a recording of four more. The photographs are composed here. Needs a build, and /proc for the memory.
 *
 *   node tests/bench/photo-browser.mjs [--photos 24]
 */
import fs from 'node:fs'
import http from 'node:http'
import os from 'node:os'
import path from 'node:path'
import { Worker } from 'node:worker_threads'
import { chromium } from '@playwright/test'
import { findBrowser, thisMachine } from '../tools/find-tool.mjs'
import { appServer } from '../tools/serve.mjs'
import { withBuiltForNode } from './built-for-node.mjs'

const photos = Number(process.argv[process.argv.indexOf('--photos') + 1]) || 24
const RECORDED = 4
const LEAVES = [1, 2]
const executablePath = await findBrowser(thisMachine)
const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run']

/** @param {http.RequestListener | http.Server} from @returns {Promise<{server: http.Server, address: string}>} */
async function listening(from) {
  const server = typeof from === 'function' ? http.createServer(from) : from
  await new Promise((done) => server.listen(0, '127.0.0.1', () => done(undefined)))
  return { server, address: `http://127.0.0.1:${server.address().port}/` }
}

/** @param {string} program @param {number} leaf */
const composed = (program, leaf) =>
  new Promise((done, failed) => {
    const worker = new Worker(program)
    worker.once('error', failed)
    worker.once('message', (photo) => void worker.terminate().then(() => done(photo)))
    worker.postMessage(leaf)
  })

/** Photographs as the JPEG files that a camera would write. */
async function asFiles(shots, folder) {
  const { server, address } = await listening((request, response) => {
    const shot = shots[Number(request.url?.slice(1)) - 1]
    response.writeHead(200, { 'Content-Type': shot ? 'application/octet-stream' : 'text/html' })
    response.end(shot ? Buffer.from(shot.rgba.buffer) : '<!doctype html>')
  })
  const browser = await chromium.launch({ executablePath, args })
  try {
    const page = await browser.newPage()
    await page.goto(address)
    const files = []
    for (const [i, { width, height }] of shots.entries()) {
      const text = await page.evaluate(writtenAsJpeg, { at: `/${i + 1}`, width, height })
      const file = path.join(folder, `leaf ${i + 1}.jpg`)
      fs.writeFileSync(file, Buffer.from(text, 'base64'))
      files.push(file)
    }
    return files
  } finally {
    await browser.close()
    server.close()
  }
}

/** Runs in the page. */
async function writtenAsJpeg({ at, width, height }) {
  const rgba = new Uint8ClampedArray(await (await fetch(at)).arrayBuffer())
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d').putImageData(new ImageData(rgba, width, height), 0, 0)
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 })
  const url = await new Promise((done) => {
    const reader = new FileReader()
    reader.onload = () => done(reader.result)
    reader.readAsDataURL(blob)
  })
  return url.slice(url.indexOf(',') + 1)
}

/** Processes below a process, itself included. */
function family(pid) {
  const parents = fs
    .readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map((name) => [Number(name), Number(field(name, 'PPid'))])
  const found = [pid]
  for (const one of found) found.push(...parents.filter(([, parent]) => parent === one).map(([child]) => child))
  return found
}

/** A line of a process's own account, as text; empty when the process is gone. */
function field(pid, name) {
  try {
    const status = fs.readFileSync(`/proc/${pid}/status`, 'utf8')
    return new RegExp(`^${name}:\\s+(\\d+)`, 'm').exec(status)?.[1] ?? ''
  } catch {
    return ''
  }
}

const megabytes = (pid, name) => Number(field(pid, name)) / 1024

/** The largest renderer is the one with the app in it. */
function rendererOf(pid) {
  const renderers = family(pid).filter((one) => {
    try {
      return fs.readFileSync(`/proc/${one}/cmdline`, 'utf8').includes('--type=renderer')
    } catch {
      return false
    }
  })
  return renderers.sort((a, b) => megabytes(b, 'VmRSS') - megabytes(a, 'VmRSS'))[0]
}

async function openedPage(page, address, rectangle) {
  await page.addInitScript(() => {
    globalThis.longest = []
    new PerformanceObserver((list) => {
      for (const { duration, startTime } of list.getEntries()) globalThis.longest.push([startTime, duration])
    }).observe({ type: 'longtask', buffered: true })
  })
  await page.goto(address)
  await page.getByRole('button', { name: /^Flitch/ }).click()
  await page.getByRole('button', { name: 'Add a flitch' }).click()
  await page.getByLabel('Name', { exact: true }).fill('Photographed')
  await page.getByLabel('Leaves', { exact: true }).fill(`${photos + RECORDED} leaves, 2300 x 150`)
  await page.getByRole('button', { name: 'Make the flitch' }).click()
  await page.getByText('Photographs of the leaves', { exact: true }).click()
  for (const [label, mm] of [
    ['Between the marks, along the leaf', rectangle.along],
    ['Between the marks, across it', rectangle.across],
  ]) {
    const input = page.getByLabel(label, { exact: true })
    await input.fill(String(mm))
    await input.press('Enter')
  }
  // the demo's leaves are painted beside the page meanwhile: they are no part of what is measured
  await page.waitForTimeout(20_000)
}

/** Brings in one photograph and takes it; tells when it was there to be taken, in seconds, and since when it was taken. */
async function brought(page, leaf, files) {
  const before = Date.now()
  await page.getByLabel(/^Photographs, leaf/).setInputFiles(files[leaf % files.length])
  const card = page.getByRole('article', { name: `Photograph of leaf ${leaf}`, exact: true })
  await card.getByRole('button', { name: 'Take picture and outline' }).waitFor({ timeout: 120_000 })
  const seconds = (Date.now() - before) / 1000
  await card.getByRole('button', { name: 'Take picture and outline' }).click()
  await card.getByText(/has its picture/).waitFor()
  return seconds
}

async function measured(page, pid, files) {
  const renderer = rendererOf(pid)
  const start = megabytes(renderer, 'VmRSS')
  const from = await page.evaluate(() => performance.now())
  let most = start
  const look = setInterval(() => (most = Math.max(most, megabytes(renderer, 'VmRSS'))), 50)
  const seconds = []
  const kept = []
  for (let leaf = 1; leaf <= photos; leaf++) {
    seconds.push(await brought(page, leaf, files))
    kept.push(megabytes(renderer, 'VmRSS'))
    if (leaf % 4 === 0) console.log(`${leaf} photographs: ${kept.at(-1).toFixed(0)} MB`)
  }
  clearInterval(look)
  const tasks = await page.evaluate(
    (since) => globalThis.longest.filter(([at]) => at >= since).map(([, took]) => took),
    from,
  )
  return { start, most, kept, seconds, tasks }
}

/** Milliseconds of processor that the tasks of the page's thread took while some more were brought in. */
async function recorded(browser, page, files) {
  const session = await browser.newBrowserCDPSession()
  const events = []
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value))
  const complete = new Promise((done) => session.once('Tracing.tracingComplete', done))
  const includedCategories = ['toplevel', '__metadata', 'blink.user_timing']
  await session.send('Tracing.start', { traceConfig: { includedCategories }, transferMode: 'ReportEvents' })
  await page.evaluate(() => performance.mark('app is here'))
  for (let leaf = photos + 1; leaf <= photos + RECORDED; leaf++) await brought(page, leaf, files)
  await session.send('Tracing.end')
  await complete
  const here = events.find(({ name }) => name === 'app is here')
  return events
    .filter(({ name, pid, tid }) => name.endsWith('RunTask') && pid === here.pid && tid === here.tid)
    .map(({ tdur }) => (tdur ?? 0) / 1000)
}

function report({ start, most, kept, seconds, tasks }, processor) {
  const sorted = [...seconds].sort((a, b) => a - b)
  const grown = most - start
  const over = (times) => times.filter((ms) => ms > 100).length
  return [
    `12 megapixels, from the file to a leaf: best ${sorted[0].toFixed(1)} s, median ${sorted[sorted.length >> 1].toFixed(1)} s, worst ${sorted.at(-1).toFixed(1)} s (goal 4)`,
    `longest task on the page's thread: ${tasks.length > 0 ? `${Math.max(...tasks).toFixed(0)} ms` : 'below 50 ms'}, ${over(tasks)} over 100 ms (goal none)`,
    `the same in processor time: ${Math.max(...processor).toFixed(0)} ms, ${over(processor)} over 100 ms (goal none)`,
    `renderer: ${start.toFixed(0)} MB at the start, ${Math.max(...kept).toFixed(0)} MB at most between photographs, ${most.toFixed(0)} MB at its peak: ${grown.toFixed(0)} MB above the start (goal 300)`,
  ].join('\n')
}

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'big-photos-'))
const app = await listening(appServer(path.resolve(import.meta.dirname ?? '.', '../../dist')))
try {
  console.log('composing two photographs of 12 megapixels ...')
  const shots = await withBuiltForNode('tests/bench/big-photo.ts', (program) =>
    Promise.all(LEAVES.map((leaf) => composed(program, leaf))),
  )
  const files = await asFiles(shots, folder)
  const server = await chromium.launchServer({ executablePath, args })
  const browser = await chromium.connect(server.wsEndpoint())
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } })
    await openedPage(page, app.address, shots[0].rectangle)
    const told = await measured(page, server.process().pid, files)
    console.log(report(told, await recorded(browser, page, files)))
  } finally {
    await browser.close()
    await server.close()
  }
} finally {
  app.server.close()
  fs.rmSync(folder, { recursive: true, force: true })
}
