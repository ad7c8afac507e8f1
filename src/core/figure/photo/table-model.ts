import type { Plane } from '../box-sums'

/** The table's colours at every pixel, and how much they spread round it. */
export interface TableModel {
  readonly planes: readonly Plane[]
  readonly spread: readonly number[]
}

/** Where a model comes to lie, and room for one number a pixel: one model is made after the other. */
export interface TableRoom {
  readonly planes: readonly Plane[]
  readonly gaps: Float64Array
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
  room: TableRoom,
): TableModel {
  const [columns, rows] = [Math.ceil(width / cell), Math.ceil(height / cell)]
  const members = cellMembers(isTable, width, height, cell, columns * rows)
  const sources = nearestKnown(members, columns, rows)
  planes.forEach((plane, p) => {
    const grid = filledGrid(plane, members, sources, columns, rows)
    spreadOver(grid, columns, rows, width, height, cell, room.planes[p]!)
  })
  const spread = planes.map((plane, p) => 1.48 * usualGap(plane, room.planes[p]!, isTable, room.gaps))
  return { planes: room.planes, spread }
}

/** Half of the table's pixels are nearer to the model than this. */
function usualGap(plane: Plane, model: Plane, isTable: Uint8Array, off: Float64Array): number {
  let count = 0
  for (let i = 0; i < plane.length; i += 3) if (isTable[i]) off[count++] = Math.abs(plane[i]! - model[i]!)
  return median(off.subarray(0, count))
}

/** For each cell the pixels that are table, of every other row and column. */
function cellMembers(isTable: Uint8Array, width: number, height: number, cell: number, cells: number) {
  const columns = Math.ceil(width / cell)
  const room = Math.ceil((cell + 1) / 2) ** 2
  const members = Array.from({ length: cells }, () => new Int32Array(room))
  const counts = new Int32Array(cells)
  for (let y = 0; y < height; y += 2) {
    const row = Math.floor(y / cell) * columns
    for (let x = 0; x < width; x += 2) {
      const at = y * width + x
      if (!isTable[at]) continue
      const c = row + Math.floor(x / cell)
      members[c]![counts[c]!++] = at
    }
  }
  return members.map((found, c) => found.subarray(0, counts[c]))
}

/** Fewer pixels than this don't tell a cell's colour. */
const LEAST_MEMBERS = 12

/** For each cell the nearest one whose colour is known, itself where it is; -1 where none is. */
function nearestKnown(members: readonly Int32Array[], columns: number, rows: number): Int32Array {
  const known = Int32Array.from(members.keys()).filter((c) => members[c]!.length >= LEAST_MEMBERS)
  const nearest = new Int32Array(columns * rows).fill(-1)
  for (let y = 0, cell = 0; y < rows; y++)
    for (let x = 0; x < columns; x++, cell++) {
      let best = Infinity
      for (let k = 0; k < known.length && best > 0; k++) {
        const at = known[k]!
        const row = (at / columns) | 0
        const away = (at - row * columns - x) ** 2 + (row - y) ** 2
        if (away < best) {
          best = away
          nearest[cell] = at
        }
      }
    }
  return nearest
}

/** The colour of each cell: its own, or brought in from round about. */
function filledGrid(
  plane: Plane,
  members: readonly Int32Array[],
  sources: Int32Array,
  columns: number,
  rows: number,
): Float64Array {
  const grid = Float64Array.from(members, (cell, i) => (sources[i] === i ? medianAt(plane, cell) : 0))
  const open: number[] = []
  for (let i = 0; i < grid.length; i++) {
    if (sources[i] === i) continue
    open.push(i)
    grid[i] = sources[i] === -1 ? 0 : grid[sources[i]!]!
  }
  for (let pass = 0; pass < 60; pass++) for (const i of open) grid[i] = meanRound(grid, i, columns, rows)
  return grid
}

function medianAt(plane: Plane, places: Int32Array): number {
  const values = new Float64Array(places.length)
  for (let i = 0; i < values.length; i++) values[i] = plane[places[i]!]!
  return median(values)
}

function meanRound(grid: Float64Array, i: number, columns: number, rows: number): number {
  const x = i % columns
  const y = (i - x) / columns
  const left = x > 0 ? grid[i - 1]! : 0
  const right = x + 1 < columns ? grid[i + 1]! : 0
  const above = y > 0 ? grid[i - columns]! : 0
  const below = y + 1 < rows ? grid[i + columns]! : 0
  const count = Number(x > 0) + Number(x + 1 < columns) + Number(y > 0) + Number(y + 1 < rows)
  return count > 0 ? (left + right + above + below) / count : grid[i]!
}

function spreadOver(
  grid: Float64Array,
  columns: number,
  rows: number,
  width: number,
  height: number,
  cell: number,
  out: Plane,
): void {
  const across = cellShares(width, columns, cell)
  const along = cellShares(height, rows, cell)
  for (let y = 0, at = 0; y < height; y++) {
    const top = along.first[y]! * columns
    const bottom = along.second[y]! * columns
    const fv = along.share[y]!
    for (let x = 0; x < width; x++, at++) {
      const fu = across.share[x]!
      const left = across.first[x]!
      const right = across.second[x]!
      const above = grid[top + left]! * (1 - fu) + grid[top + right]! * fu
      const below = grid[bottom + left]! * (1 - fu) + grid[bottom + right]! * fu
      out[at] = above * (1 - fv) + below * fv
    }
  }
}

/** Between the middles of which two cells each pixel of a row (or column) lies, and how near it is to the second. */
function cellShares(length: number, cells: number, cell: number) {
  const [first, second] = [new Int32Array(length), new Int32Array(length)]
  const share = new Float64Array(length)
  for (let i = 0; i < length; i++) {
    const at = Math.min(Math.max((i + 0.5) / cell - 0.5, 0), cells - 1)
    first[i] = Math.min(Math.floor(at), Math.max(cells - 2, 0))
    second[i] = Math.min(first[i]! + 1, cells - 1)
    share[i] = at - first[i]!
  }
  return { first, second, share }
}

/** The value in the middle (the upper one of two), 0 of none; changes the order of the values. */
function median(values: Float64Array): number {
  if (values.length === 0) return 0
  const middle = values.length >> 1
  // Hoare's selection: each round keeps the part that the middle lies in
  let [from, to] = [0, values.length - 1]
  while (from < to) {
    const pivot = values[(from + to) >> 1]!
    let [i, j] = [from, to]
    while (i <= j) {
      while (values[i]! < pivot) i++
      while (values[j]! > pivot) j--
      if (i > j) break
      const held = values[i]!
      values[i++] = values[j]!
      values[j--] = held
    }
    if (middle <= j) to = j
    else if (middle >= i) from = i
    else break
  }
  return values[middle]!
}
