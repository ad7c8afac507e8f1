import type { Finding } from '../finding'
import type { LaidFace } from '../fit/lay-face'
import type { RepairPlan } from '../repairs/repairs'
import type { Centre } from '../seams/centring'
import type { PairReport } from '../seams/pair-report'
import type { SeamReport } from '../seams/seam-report'

/** A face with its seams, and what is to be minded, as the sheets draw it. */
export interface JudgedFace extends LaidFace {
  readonly seams: readonly SeamReport[]
  readonly centre: Centre
  readonly findings: readonly Finding[]
  readonly repairs: RepairPlan
  /** The pairs it is one of. */
  readonly pairs: readonly PairReport[]
}
