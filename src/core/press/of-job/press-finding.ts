import type { PartId } from '../../ids'
import type { FitTrouble } from '../bag-advice'
import type { BalanceLack } from '../balance'
import type { GlueName } from '../pressing'

/**
 * What is seriously wrong with the gluing of a part. Told apart from the findings of its face: a cold shop is no reason
 * not to cut a leaf. The words are made in checks/press-wording.ts.
 */
export type PressFinding = { readonly part: PartId; readonly remedies: readonly PressRemedy[] } & (
  | { readonly code: 'cold'; readonly glue: GlueName; readonly core: number; readonly least: number }
  | { readonly code: 'glue'; readonly glue: GlueName; readonly why: string }
  | { readonly code: 'fit'; readonly trouble: FitTrouble }
  | { readonly code: 'unbalanced'; readonly lack: BalanceLack }
)

/** One change that would mend it. */
export type PressRemedy =
  | { readonly remedy: 'glue'; readonly glue: GlueName }
  | { readonly remedy: 'method'; readonly method: 'cauls' }
  /** The same layers behind the core as in front of it. */
  | { readonly remedy: 'backer' }
