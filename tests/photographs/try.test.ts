import { it } from 'vitest'
import { composePhoto, photoSet, TUNING_TABLES } from './compose'
import { judge } from './judge'
import { writeFileSync } from 'node:fs'
import { encode } from 'fast-png'
it('try', () => {
  const n = Number(process.env.N ?? 10)
  for (const o of photoSet(TUNING_TABLES, 100, 20).slice(0, n)) {
    const t0 = Date.now()
    const p = composePhoto(o)
    const t1 = Date.now()
    const j = judge(p)
    if (process.env.PNG) writeFileSync(`/tmp/photo-${o.seed}.png`, encode({ width: p.pixels.width, height: p.pixels.height, data: new Uint8Array(p.pixels.rgba), channels: 4 }))
    console.log(o.seed, o.species, o.table.name, t1 - t0, Date.now() - t1, j.outcome, j.why, 'straight', j.straight?.toFixed(3), 'mean', j.mean.toFixed(3), j.p95.toFixed(3), j.iou.toFixed(4))
  }
}, 200000)
