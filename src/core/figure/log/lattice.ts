/**
 * Slow fields of one leaf surface, worked out at the nodes of a grid and filled in between. Nodes lie on whole
 * multiples of the steps, so a crop shows exactly what the whole leaf shows there.
 */
export interface Lattice {
  readonly u0: number
  readonly z0: number
  readonly du: number
  readonly dz: number
  readonly columns: number
  readonly rows: number
  /** One grid a field, row by row. */
  readonly fields: readonly Float32Array[]
}

export interface Stretch {
  readonly from: number
  readonly to: number
}

/** `nodeRow` is asked once a row and gives the function that fills `into`, one value a field, for a node. */
export function buildLattice(
  across: Stretch,
  along: Stretch,
  steps: { readonly du: number; readonly dz: number },
  fieldCount: number,
  nodeRow: (z: number) => (u: number, into: Float64Array) => void,
): Lattice {
  const { du, dz } = steps
  const u0 = Math.floor(across.from / du) * du
  const z0 = Math.floor(along.from / dz) * dz
  const columns = Math.ceil((across.to - u0) / du) + 2
  const rows = Math.ceil((along.to - z0) / dz) + 2
  const fields = Array.from({ length: fieldCount }, () => new Float32Array(columns * rows))
  const values = new Float64Array(fieldCount)
  for (let row = 0; row < rows; row++) {
    const node = nodeRow(z0 + row * dz)
    for (let column = 0; column < columns; column++) {
      node(u0 + column * du, values)
      for (let f = 0; f < fieldCount; f++) fields[f]![row * columns + column] = values[f]!
    }
  }
  return { u0, z0, du, dz, columns, rows, fields }
}

/** One row of a field, at any place along; `into` has a value a column. */
export function latticeRow(
  { z0, dz, columns, rows, fields }: Lattice,
  field: number,
  z: number,
  into: Float32Array,
): void {
  const grid = fields[field]!
  const at = Math.min(Math.max((z - z0) / dz, 0), rows - 1.001)
  const row = Math.floor(at)
  const t = at - row
  const low = row * columns
  for (let i = 0; i < columns; i++) {
    const a = grid[low + i]!
    into[i] = a + (grid[low + columns + i]! - a) * t
  }
}

/** A field at any place. */
export function latticeAt(lattice: Lattice, field: number, u: number, z: number): number {
  const { u0, z0, du, dz, columns, rows, fields } = lattice
  const grid = fields[field]!
  const across = Math.min(Math.max((u - u0) / du, 0), columns - 1.001)
  const along = Math.min(Math.max((z - z0) / dz, 0), rows - 1.001)
  const i = Math.floor(across)
  const j = Math.floor(along)
  const s = across - i
  const at = j * columns + i
  const near = grid[at]! + (grid[at + 1]! - grid[at]!) * s
  const far = grid[at + columns]! + (grid[at + columns + 1]! - grid[at + columns]!) * s
  return near + (far - near) * (along - j)
}
