import type { Plane } from '../box-sums'

/** The table's colours at every pixel, and how much they spread round it. */
export interface TableModel {
  readonly planes: readonly Plane[]
  readonly spread: readonly number[]
}

/**
 * The table as it goes on under the leaf: medians over square cells of what is known to be table, the holes filled from
 * round about, read between the cells' middles.
 */
export function tableModel(
  planes: readonly Plane[],
  isTable: Uint8Array,
  width: number,
  height: number,
  cell: number,
): TableModel {
  const [columns, rows] = [Math.ceil(width / cell), Math.ceil(height / cell)]
  const members = cellMembers(isTable, width, height, cell, columns * rows)
  const models = planes.map((plane) =>
    spreadOver(filledGrid(plane, members, columns, rows), columns, rows, width, height, cell),
  )
  const spread = planes.map((plane, p) => {
    const off: number[] = []
    for (let i = 0; i < plane.length; i += 3) if (isTable[i]) off.push(Math.abs(plane[i]! - models[p]![i]!))
    return 1.48 * median(off)
  })
  return { planes: models, spread }
}

function cellMembers(isTable: Uint8Array, width: number, height: number, cell: number, cells: number): number[][] {
  const columns = Math.ceil(width / cell)
  const members: number[][] = Array.from({ length: cells }, () => [])
  for (let y = 0; y < height; y += 2)
    for (let x = 0; x < width; x += 2) {
      const at = y * width + x
      if (isTable[at]) members[Math.floor(y / cell) * columns + Math.floor(x / cell)]!.push(at)
    }
  return members
}

function filledGrid(plane: Plane, members: readonly number[][], columns: number, rows: number): Float64Array {
  const known = members.map((cell) => cell.length >= 12)
  const grid = Float64Array.from(members, (cell, i) => (known[i] ? median(cell.map((at) => plane[at]!)) : NaN))
  const all = [...grid].filter((value) => !Number.isNaN(value))
  const mean = all.reduce((sum, value) => sum + value, 0) / Math.max(1, all.length)
  for (let i = 0; i < grid.length; i++) if (!known[i]) grid[i] = nearestKnown(grid, known, i, columns, rows) ?? mean
  for (let pass = 0; pass < 60; pass++)
    for (let i = 0; i < grid.length; i++) if (!known[i]) grid[i] = meanRound(grid, i, columns, rows)
  return grid
}

function nearestKnown(grid: Float64Array, known: readonly boolean[], i: number, columns: number, rows: number) {
  const [x, y] = [i % columns, Math.floor(i / columns)]
  let [best, value]: [number, number | null] = [Infinity, null]
  for (let v = 0; v < rows; v++)
    for (let u = 0; u < columns; u++) {
      const away = (u - x) ** 2 + (v - y) ** 2
      if (known[v * columns + u] && away < best) [best, value] = [away, grid[v * columns + u]!]
    }
  return value
}

function meanRound(grid: Float64Array, i: number, columns: number, rows: number): number {
  const [x, y] = [i % columns, Math.floor(i / columns)]
  let [sum, count] = [0, 0]
  if (x > 0) [sum, count] = [sum + grid[i - 1]!, count + 1]
  if (x + 1 < columns) [sum, count] = [sum + grid[i + 1]!, count + 1]
  if (y > 0) [sum, count] = [sum + grid[i - columns]!, count + 1]
  if (y + 1 < rows) [sum, count] = [sum + grid[i + columns]!, count + 1]
  return count > 0 ? sum / count : grid[i]!
}

function spreadOver(grid: Float64Array, columns: number, rows: number, width: number, height: number, cell: number) {
  const out = new Float32Array(width * height)
  for (let y = 0; y < height; y++) {
    const v = Math.min(Math.max((y + 0.5) / cell - 0.5, 0), rows - 1)
    const v0 = Math.min(Math.floor(v), Math.max(rows - 2, 0))
    const v1 = Math.min(v0 + 1, rows - 1)
    for (let x = 0; x < width; x++) {
      const u = Math.min(Math.max((x + 0.5) / cell - 0.5, 0), columns - 1)
      const u0 = Math.min(Math.floor(u), Math.max(columns - 2, 0))
      const u1 = Math.min(u0 + 1, columns - 1)
      const [fu, fv] = [u - u0, v - v0]
      const top = grid[v0 * columns + u0]! * (1 - fu) + grid[v0 * columns + u1]! * fu
      const bottom = grid[v1 * columns + u0]! * (1 - fu) + grid[v1 * columns + u1]! * fu
      out[y * width + x] = top * (1 - fv) + bottom * fv
    }
  }
  return out
}

export function median(values: number[]): number {
  if (values.length === 0) return 0
  values.sort((a, b) => a - b)
  return values[values.length >> 1]!
}
