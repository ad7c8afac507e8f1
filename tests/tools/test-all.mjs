/** `npm test`: every check, all of them even after one has failed; the last line counts them. */
import { spawn } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'

const notes = fs.mkdtempSync(path.join(os.tmpdir(), 'leafturn-test-'))
const unitNotes = path.join(notes, 'unit.json')
const e2eNotes = path.join(notes, 'e2e.json')

/** @typedef {{ passed: number, failed: number }} Count */

/** @param {string} file @returns {any} what a runner noted, or null where it ended before it could */
const read = (file) => (fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : null)

/** @typedef {{ name: string, run: string[], env?: Record<string, string>, count?: () => Count | null }} Step */

/** @type {Step[]} what keeps one core busy and no more */
const oneCore = [
  { name: 'types', run: ['run', '--silent', 'types'] },
  { name: 'lint', run: ['run', '--silent', 'lint'] },
  { name: 'build', run: ['run', '--silent', 'build'] },
]

/** @type {Step[]} what takes every core it is given */
const allCores = [
  {
    name: 'unit',
    run: ['run', '--silent', 'unit', '--', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitNotes}`],
    count: () => {
      const found = read(unitNotes)
      return found && { passed: found.numPassedTests, failed: found.numFailedTests }
    },
  },
  {
    name: 'e2e',
    run: ['run', '--silent', 'e2e', '--', '--reporter=line,json'],
    env: { PLAYWRIGHT_JSON_OUTPUT_NAME: e2eNotes },
    count: () => {
      const stats = read(e2eNotes)?.stats
      return stats && { passed: stats.expected, failed: stats.unexpected + stats.flaky }
    },
  },
]

/** @param {Step} step @param {boolean} apart said when it ends, so that two at once don't mix @returns {Promise<boolean>} */
function npm({ name, run, env }, apart) {
  const [command, before] = process.env.npm_execpath ? [process.execPath, [process.env.npm_execpath]] : ['npm', []]
  const title = `\n== ${name}`
  if (!apart) console.log(title)
  const child = spawn(command, [...before, ...run], {
    stdio: apart ? ['inherit', 'pipe', 'pipe'] : 'inherit',
    env: { ...process.env, ...env },
  })
  /** @type {Buffer[]} */
  const said = []
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (/** @type {Buffer} */ piece) => said.push(piece))
  return new Promise((resolve) => {
    child.on('error', (trouble) => (console.error(title, trouble), resolve(false)))
    child.on('close', (code) => {
      if (apart) console.log(`${title}\n${Buffer.concat(said).toString()}`)
      resolve(code === 0)
    })
  })
}

/** @param {Step} step @param {boolean} [apart] where a runner failed without a failed test, the step is one failed */
async function done(step, apart = false) {
  const went = await npm(step, apart)
  const { passed, failed } = step.count?.() ?? { passed: went ? 1 : 0, failed: 0 }
  return { name: step.name, passed, failed: went ? failed : Math.max(failed, 1) }
}

/** @param {Step[]} steps as many side by side as there are cores */
async function sideBySide(steps) {
  const waiting = [...steps]
  /** @type {Awaited<ReturnType<typeof done>>[]} */
  const results = []
  const one = async () => {
    for (let step = waiting.shift(); step; step = waiting.shift()) results.push(await done(step, true))
  }
  await Promise.all(Array.from({ length: Math.max(1, os.availableParallelism()) }, one))
  return results
}

console.log(oneCore.map(({ name }) => name).join(', '))
const results = await sideBySide(oneCore)
for (const step of allCores) results.push(await done(step))
fs.rmSync(notes, { recursive: true })
const sum = (/** @type {'passed' | 'failed'} */ what) => results.reduce((total, result) => total + result[what], 0)
const broken = results.filter(({ failed }) => failed > 0).map(({ name }) => name)
console.log(broken.length ? `\nNot in order: ${broken.join(', ')}` : '\nAll in order')
console.log(`${sum('passed')} passed, ${sum('failed')} failed`)
process.exit(broken.length ? 1 : 0)
