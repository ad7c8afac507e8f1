/**
 * Runs before `npm start`, `npm test` and `npm run sheets`, on nothing but node itself: checks node's version, installs
 * the packages when the lock file has changed since, and with --for-tests finds a browser and a page renderer and
 * writes where they are to .tools.json.
 */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'

const root = path.resolve(import.meta.dirname ?? '.', '../..')
const stamp = path.join(root, 'node_modules/.leafturn-lock')
const leastNode = [20, 19]

/** @param {string} trouble @returns {never} */
function stop(trouble) {
  console.error(trouble)
  process.exit(1)
}

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  const [leastMajor = 0, leastMinor = 0] = leastNode
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return
  stop(`This needs Node ${leastNode.join('.')} or newer; this one is ${process.versions.node}.`)
}

function installPackages() {
  const lock = createHash('sha256')
    .update(fs.readFileSync(path.join(root, 'package-lock.json')))
    .digest('hex')
  if (fs.existsSync(stamp) && fs.readFileSync(stamp, 'utf8') === lock) return
  console.log('Installing packages ...')
  try {
    // npm is a script on some systems, a .cmd on others: the one that runs us is the one to ask
    const npm = process.env.npm_execpath
    if (npm) execFileSync(process.execPath, [npm, 'ci', '--no-fund', '--no-audit'], { cwd: root, stdio: 'inherit' })
    else execFileSync('npm', ['ci', '--no-fund', '--no-audit'], { cwd: root, stdio: 'inherit' })
  } catch {
    stop('npm ci did not succeed: the reason stands above. Without the packages nothing can run.')
  }
  fs.writeFileSync(stamp, lock)
}

async function findTools() {
  const { findBrowser, findPageRenderer, thisMachine } = await import('./find-tool.mjs')
  try {
    const tools = { chromium: await findBrowser(thisMachine), pdftoppm: findPageRenderer(thisMachine) }
    fs.writeFileSync(path.join(root, '.tools.json'), JSON.stringify(tools, null, 2) + '\n')
  } catch (trouble) {
    stop(trouble instanceof Error ? trouble.message : String(trouble))
  }
}

checkNode()
process.chdir(root)
installPackages()
if (process.argv.includes('--for-tests')) await findTools()
