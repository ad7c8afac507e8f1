/**
 * The rooms of the house and what each may import, as data, and the lint rules that hold them.
 * Type-only imports count like any other.
 */
import fs from 'node:fs'
import path from 'node:path'
import ts from 'typescript'

/**
 * Rooms inside src/core: a file imports only from rooms to its left. `a | b` are neighbours that do not know each
 * other. A file may have a place of its own: what a leaf is stands before the shop, what is done with one after it.
 */
const coreOrder = [
  'result',
  'invariant',
  'ids',
  'units',
  'geometry',
  'job/make-up',
  'finding',
  'drawing',
  'leaves/leaf',
  'shop',
  'patterns | leaves',
  'press',
  'job',
  'figure',
  'scarf',
  'faces',
  'fit',
  'seams',
  'allocation',
  'press/of-job',
  'checks',
  'checks/wording',
  'templates',
  'repairs',
  'ledger',
  'sheets',
  'derive',
  'commands',
]

/** Rooms beside the core, each with those it may import (its own files always). */
const outerRooms = {
  core: [],
  documents: ['core'],
  cli: ['core', 'documents', 'store'],
  store: ['core', 'documents'],
  workers: ['core', 'documents', 'store'],
  fields: ['core', 'store'],
  board: ['core', 'documents', 'store', 'workers'],
  stations: ['core', 'documents', 'store', 'workers', 'fields'],
  app: ['core', 'documents', 'store', 'workers', 'fields', 'board', 'stations'],
}

const clippers = ['core/geometry/clip', 'core/geometry/inner-fit']
const onlyInTests = []

/** Libraries, each with the rooms or files that may import it; what is not listed may be imported by none. */
const libraries = {
  'polygon-clipping': clippers,
  'clipper2-ts': clippers,
  'simplex-noise': ['core/figure'],
  valibot: ['core', 'documents', 'store', 'cli'],
  fflate: ['store', 'documents'],
  idb: ['store'],
  jspdf: ['documents/pdf'],
  'dxf-parser': ['documents/outlines'],
  svgson: ['documents/outlines'],
  konva: ['board'],
  svelte: ['store', 'workers', 'fields', 'board', 'stations', 'app'],
  '@fontsource-variable/source-sans-3': ['app'],
  '@expo-google-fonts/source-sans-3': ['documents', 'workers', 'stations', 'app', 'cli'],
  node: ['cli'],
  'fast-check': onlyInTests,
  'fake-indexeddb': onlyInTests,
  'pdfjs-dist': onlyInTests,
  vitest: onlyInTests,
}
const testsMayNot = ['polygon-clipping', 'clipper2-ts', 'konva', 'jspdf']

const isTest = (place) => /\.(test|bench)(\.ts)?$/.test(place) || /\.test\b/.test(place)
const lies = (place, room) => place === room || place.startsWith(`${room}/`) || place.startsWith(`${room}.`)
const posix = (p) => p.split(path.sep).join('/')

/** Where a file stands below src, without its ending: `core/seams/find-seams`; null outside src. The door is the app's. */
function placeOf(file, root) {
  const inSrc = posix(path.relative(path.join(root, 'src'), file))
  if (inSrc.startsWith('..') || path.isAbsolute(inSrc)) return null
  const place = inSrc.replace(/\.(ts|js|svelte)$/, '')
  return place === 'main' ? 'app/main' : place
}

/** The step and the name of the core room that a place belongs to; the longest name that fits wins. */
function coreRoom(place) {
  const within = place.slice('core/'.length)
  return coreOrder
    .flatMap((names, step) => names.split(' | ').map((name) => ({ name, step })))
    .filter(({ name }) => lies(within, name))
    .sort((a, b) => b.name.length - a.name.length)[0]
}

const outerRoom = (place) => place.split('/')[0]

/** Why `from` may not import `to` (both places below src), or null when it may. */
function roomTrouble(from, to) {
  const [here, there] = [outerRoom(from), outerRoom(to)]
  if (!(here in outerRooms)) return `src/${here} is no room of this house: add it to eslint.rooms.js`
  if (here !== there) return outerRooms[here].includes(there) ? null : `${here} may not import from ${there} (${to})`
  if (here !== 'core') return null
  const [mine, theirs] = [coreRoom(from), coreRoom(to)]
  if (!mine || !theirs)
    return `core/${(mine ? to : from).slice(5)} lies in no room of the core: add it to eslint.rooms.js`
  if (mine.name === theirs.name || theirs.step < mine.step) return null
  return `core/${mine.name} may import only from rooms to its left, and core/${theirs.name} is not one (${to})`
}

const packageName = (source) =>
  source.startsWith('node:')
    ? 'node'
    : source
        .split('/')
        .slice(0, source.startsWith('@') ? 2 : 1)
        .join('/')

/** Why a file at `from` may not import the library `source`, or null. */
function libraryTrouble(from, source) {
  const name = packageName(source)
  const rooms = libraries[name]
  if (isTest(from) && !testsMayNot.includes(name)) return null
  if (rooms?.some((room) => lies(from, room))) return null
  return rooms
    ? `${name} may be imported only in ${rooms.join(', ') || 'tests'}`
    : `${name} is in no room's list of libraries`
}

/** Calls `report(node, source)` for every way a module can name another. */
function onImports(report) {
  const seen = (node, literal) => typeof literal?.value === 'string' && report(node, literal.value.replace(/\?.*$/, ''))
  return {
    ImportDeclaration: (node) => seen(node, node.source),
    ExportNamedDeclaration: (node) => seen(node, node.source),
    ExportAllDeclaration: (node) => seen(node, node.source),
    ImportExpression: (node) => seen(node, node.source),
    TSImportType: (node) => seen(node, node.source ?? node.argument?.literal),
    'NewExpression[callee.name="URL"][arguments.1.type="MemberExpression"]': (node) => seen(node, node.arguments[0]),
  }
}

const withMessage = (schema) => ({ type: 'problem', messages: { trouble: '{{trouble}}' }, schema })
const rootOption = [{ type: 'object', properties: { root: { type: 'string' } }, additionalProperties: false }]
const rootOf = (context) => context.options[0]?.root ?? context.cwd

const imports = {
  meta: withMessage(rootOption),
  create(context) {
    const from = placeOf(context.filename, rootOf(context))
    if (from === null) return {}
    return onImports((node, source) => {
      const relative = source.startsWith('.')
      const to = relative && placeOf(path.resolve(path.dirname(context.filename), source), rootOf(context))
      // a test may build its cases with anything, only the libraries keep their doors
      const inHouse = () => (isTest(from) ? null : to === null ? `${source} lies outside src` : roomTrouble(from, to))
      const trouble = relative ? inHouse() : libraryTrouble(from, source)
      if (trouble) context.report({ node, messageId: 'trouble', data: { trouble } })
    })
  },
}

const known = new Map()

/** The files of this project that a file imports, types too; read anew only when the file has changed. */
function importsOf(file) {
  const changed = fs.statSync(file).mtimeMs
  const before = known.get(file)
  if (before?.changed === changed) return before.files
  const text = fs.readFileSync(file, 'utf8')
  const scripts = file.endsWith('.svelte')
    ? [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((m) => m[1])
    : [text]
  const files = scripts
    .flatMap((script) => ts.preProcessFile(script).importedFiles)
    .flatMap(({ fileName }) =>
      fileName.startsWith('.') ? [resolveFile(path.resolve(path.dirname(file), fileName))] : [],
    )
    .filter(Boolean)
  known.set(file, { changed, files })
  return files
}

const resolveFile = (base) =>
  [base, `${base}.ts`, `${base}.js`].find((file) => /\.(ts|js|svelte)$/.test(file) && fs.existsSync(file))

/** The shortest way through the imports from one file to another, or null. */
function wayTo(start, goal) {
  const ways = [[start]]
  const met = new Set([start])
  for (const way of ways) {
    const last = way[way.length - 1]
    if (last === goal) return way
    for (const next of importsOf(last)) {
      if (met.has(next)) continue
      met.add(next)
      ways.push([...way, next])
    }
  }
  return null
}

const noCycle = {
  meta: withMessage(rootOption),
  create(context) {
    return onImports((node, source) => {
      if (!source.startsWith('.')) return
      const target = resolveFile(path.resolve(path.dirname(context.filename), source))
      const way = target && wayTo(target, context.filename)
      if (!way) return
      const trouble = `imports go in a circle: ${[context.filename, ...way].map((file) => path.basename(file)).join(' → ')}`
      context.report({ node, messageId: 'trouble', data: { trouble } })
    })
  },
}

const vague = /^(index|utils?|helpers?|common|misc|managers?)$|-(utils?|helpers?|manager)$/

const fileName = {
  meta: withMessage([]),
  create(context) {
    const name = path.basename(context.filename)
    const stem = name.split('.')[0]
    const wellFormed = name.endsWith('.svelte') ? /^[A-Z][A-Za-z0-9]*$/ : /^[a-z0-9]+(-[a-z0-9]+)*$/
    const report = (trouble) => ({
      Program: (node) => context.report({ node, messageId: 'trouble', data: { trouble } }),
    })
    if (vague.test(stem)) return report(`${name} does not say what is inside`)
    if (!wellFormed.test(stem)) return report(`${name}: modules are kebab-case, components PascalCase`)
    return {}
  },
}

const noBarrel = {
  meta: withMessage([]),
  create(context) {
    const report = (node) =>
      context.report({
        node,
        messageId: 'trouble',
        data: { trouble: 'import from the file that says it, not through another' },
      })
    return { ExportAllDeclaration: report, 'ExportNamedDeclaration[source]': report }
  },
}

/** The rules as a plugin. @type {import('eslint').ESLint.Plugin} */
export const rooms = { rules: { imports, 'no-cycle': noCycle, 'file-name': fileName, 'no-barrel': noBarrel } }
