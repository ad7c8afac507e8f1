/** How much script the page loads at its start, compressed as a server would; the rest is fetched when it is needed. */
import fs from 'node:fs'
import path from 'node:path'
import { gzipSync } from 'node:zlib'

const dist = path.resolve(import.meta.dirname ?? '.', '../../dist')
const page = fs.readFileSync(path.join(dist, 'index.html'), 'utf8')
const atStart = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, name]) => name ?? '')
const size = (/** @type {string} */ name) => gzipSync(fs.readFileSync(path.join(dist, name))).length / 1000
for (const name of atStart) console.log(`${name}: ${size(name).toFixed(1)} kB gzip`)
const sum = atStart.reduce((total, name) => total + size(name), 0)
console.log(`script at start: ${sum.toFixed(1)} kB gzip (goal 250 or less)`)
