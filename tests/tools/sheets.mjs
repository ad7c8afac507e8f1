/** `npm run sheets -- ...`: builds the command line where its sources are newer than the build, then runs it. */
import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'

const built = 'dist-cli/sheets.js'
const sources = [
  'src/core',
  'src/documents',
  'src/store',
  'src/cli',
  'package-lock.json',
  'vite.cli.config.ts',
  'vite.shared.ts',
]

/** When a file, or the newest file in a folder, was changed last. @param {string} place @returns {number} */
function changed(place) {
  const is = fs.statSync(place)
  if (!is.isDirectory()) return is.mtimeMs
  return Math.max(is.mtimeMs, ...fs.readdirSync(place).map((name) => changed(path.join(place, name))))
}

/** Runs node and ends with its answer where it fails. @param {string[]} args @param {string} cwd */
function node(args, cwd) {
  const { status } = spawnSync(process.execPath, args, { stdio: 'inherit', cwd })
  if (status !== 0) process.exit(status ?? 1)
}

if (!fs.existsSync(built) || changed(built) < Math.max(...sources.map(changed)))
  node(
    ['node_modules/vite/bin/vite.js', 'build', '--config', 'vite.cli.config.ts', '--logLevel', 'warn'],
    process.cwd(),
  )

// files are named from where the person stands, not from the project's folder
node([path.resolve(built), ...process.argv.slice(2)], process.env.INIT_CWD ?? process.cwd())
