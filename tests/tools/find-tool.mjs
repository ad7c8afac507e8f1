/**
 * Finds the programs the tests drive, a browser and a page renderer, and installs one where it can. Every step is a
 * plan of named ways tried in order; what touches the machine comes in as `machine`, so that the plans can be tested.
 */
import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import path from 'node:path'

/**
 * @typedef {object} Machine
 * @property {Record<string, string | undefined>} env
 * @property {(file: string) => boolean} canRun whether a file is there and may be run
 * @property {() => boolean} isRootOnDebian
 * @property {(command: string, args: string[]) => void} run throws where the command fails
 * @property {() => Promise<string | null>} playwrightBrowser where Playwright's own Chromium is or would be
 * @property {(line: string) => void} say
 */

const chromiumNames = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome']
const usualPlaces = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
]

/** @param {Machine} machine @param {string[]} names @returns {string | null} */
function onPath(machine, names) {
  const folders = (machine.env.PATH ?? '').split(path.delimiter).filter(Boolean)
  const places = names.flatMap((name) => folders.map((folder) => path.join(folder, name)))
  return places.find((place) => machine.canRun(place)) ?? null
}

/**
 * Installs a Debian package; false where this is no Debian, we may not, or it fails.
 * @param {Machine} machine @param {string} name
 */
function installedByApt(machine, name) {
  if (!machine.isRootOnDebian()) return false
  machine.say(`Installing ${name} ...`)
  try {
    machine.run('apt-get', ['update'])
    machine.run('apt-get', ['install', '-y', '--no-install-recommends', name])
    return true
  } catch (trouble) {
    machine.say(`apt-get could not install ${name}: ${trouble instanceof Error ? trouble.message : trouble}`)
    return false
  }
}

/** @param {Machine} machine */
async function playwrightOwn(machine) {
  const place = await machine.playwrightBrowser()
  return place && machine.canRun(place) ? place : null
}

/** @param {Machine} machine */
async function installedByPlaywright(machine) {
  machine.say("Installing Playwright's own Chromium ...")
  try {
    machine.run(process.execPath, ['node_modules/@playwright/test/cli.js', 'install', 'chromium'])
  } catch (trouble) {
    machine.say(`Playwright could not install it: ${trouble instanceof Error ? trouble.message : trouble}`)
  }
  return playwrightOwn(machine)
}

/**
 * The Chromium to test with: CHROMIUM_PATH, else the system's, else Playwright's, else one installed now.
 * @param {Machine} machine @returns {Promise<string>}
 */
export async function findBrowser(machine) {
  const wanted = machine.env.CHROMIUM_PATH
  if (wanted) {
    if (machine.canRun(wanted)) return wanted
    throw new Error(`CHROMIUM_PATH is ${wanted}, but there is no program there that may be run.`)
  }
  const system = () => onPath(machine, chromiumNames) ?? usualPlaces.find((place) => machine.canRun(place)) ?? null
  const found =
    system() ??
    (await playwrightOwn(machine)) ??
    (installedByApt(machine, 'chromium') ? system() : null) ??
    (await installedByPlaywright(machine))
  if (found) return found
  throw new Error(
    'No Chromium to run the browser tests with, and none could be installed. ' +
      'Install Chromium or Google Chrome, or set CHROMIUM_PATH to the program.',
  )
}

/**
 * The program that turns PDF pages into pictures: PDFTOPPM_PATH, else the system's, else one installed now.
 * @param {Machine} machine @returns {string}
 */
export function findPageRenderer(machine) {
  const wanted = machine.env.PDFTOPPM_PATH
  if (wanted) {
    if (machine.canRun(wanted)) return wanted
    throw new Error(`PDFTOPPM_PATH is ${wanted}, but there is no program there that may be run.`)
  }
  const system = () => onPath(machine, ['pdftoppm'])
  const found = system() ?? (installedByApt(machine, 'poppler-utils') ? system() : null)
  if (found) return found
  throw new Error(
    'No pdftoppm to render PDF pages with, and none could be installed. ' +
      'Install poppler (poppler-utils on Debian, poppler with Homebrew), or set PDFTOPPM_PATH to the program.',
  )
}

/** @param {string} file */
function canRun(file) {
  try {
    fs.accessSync(file, fs.constants.X_OK)
    return fs.statSync(file).isFile()
  } catch {
    return false
  }
}

/** @returns {Promise<string | null>} */
async function playwrightBrowser() {
  try {
    return (await import('@playwright/test')).chromium.executablePath() || null
  } catch {
    return null
  }
}

/** The machine we run on. @type {Machine} */
export const thisMachine = {
  env: process.env,
  canRun,
  isRootOnDebian: () => process.getuid?.() === 0 && fs.existsSync('/etc/debian_version') && canRun('/usr/bin/apt-get'),
  run: (command, args) =>
    void execFileSync(command, args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }),
  playwrightBrowser,
  say: (line) => console.log(line),
}
