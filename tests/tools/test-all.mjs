/** `npm test`: every check in turn, all of them even after one has failed; the last line counts them. */
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'

const notes = fs.mkdtempSync(path.join(os.tmpdir(), 'leafturn-test-'))
const unitNotes = path.join(notes, 'unit.json')
const e2eNotes = path.join(notes, 'e2e.json')

/** @typedef {{ passed: number, failed: number }} Count */

/** @param {string} file @returns {any} what a runner noted, or null where it ended before it could */
const read = (file) => (fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, 'utf8')) : null)

/** @type {{ name: string, run: string[], env?: Record<string, string>, count?: () => Count | null }[]} */
const steps = [
  { name: 'types', run: ['run', '--silent', 'types'] },
  { name: 'lint', run: ['run', '--silent', 'lint'] },
  {
    name: 'unit',
    run: ['run', '--silent', 'unit', '--', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitNotes}`],
    count: () => {
      const found = read(unitNotes)
      return found && { passed: found.numPassedTests, failed: found.numFailedTests }
    },
  },
  { name: 'build', run: ['run', '--silent', 'build'] },
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

/** @param {string[]} args @param {Record<string, string> | undefined} env */
function npm(args, env) {
  const [command, before] = process.env.npm_execpath ? [process.execPath, [process.env.npm_execpath]] : ['npm', []]
  return spawnSync(command, [...before, ...args], { stdio: 'inherit', env: { ...process.env, ...env } }).status === 0
}

/** @param {typeof steps[number]} step @returns {Count} where a runner failed without a failed test, the step is one */
function done({ name, run, env, count }) {
  console.log(`\n== ${name}`)
  const went = npm(run, env)
  const { passed, failed } = count?.() ?? { passed: went ? 1 : 0, failed: 0 }
  return { passed, failed: went ? failed : Math.max(failed, 1) }
}

const results = steps.map((step) => ({ name: step.name, ...done(step) }))
fs.rmSync(notes, { recursive: true })
const sum = (/** @type {'passed' | 'failed'} */ what) => results.reduce((total, result) => total + result[what], 0)
const broken = results.filter(({ failed }) => failed > 0).map(({ name }) => name)
console.log(broken.length ? `\nNot in order: ${broken.join(', ')}` : '\nAll in order')
console.log(`${sum('passed')} passed, ${sum('failed')} failed`)
process.exit(broken.length ? 1 : 0)
