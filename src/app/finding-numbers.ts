import type { DerivedPart } from '../core/derive'
import type { Finding } from '../core/finding'

/** The numbers by which findings are listed beside the face and marked on it; good news has none. */
export const findingNumbers = ({ findings }: DerivedPart): ReadonlyMap<Finding, number> =>
  new Map(findings.filter(({ grade }) => grade !== 'good').map((finding, i) => [finding, i + 1]))
