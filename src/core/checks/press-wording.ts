import { fitSentence } from '../press/bag-advice'
import { lackSentence } from '../press/balance'
import { GLUE_WORDS } from '../press/glues'
import { showTemperature } from '../press/measures'
import type { PressFinding, PressRemedy } from '../press/of-job/press-finding'
import type { Layer } from '../press/pressing'
import type { LengthUnit } from '../units/unit'

/** A finding of the press as one or two sentences: the thing, the number, what to do. */
export function pressFindingSentence(finding: PressFinding, layers: readonly Layer[], unit: LengthUnit): string {
  switch (finding.code) {
    case 'cold':
      return `The cores are at ${showTemperature(finding.core)}, and ${GLUE_WORDS[finding.glue]} needs ${showTemperature(finding.least)} in core and glue line. Warm the cores right through, or take another glue.`
    case 'glue':
      return finding.why
    case 'fit':
      return `${fitSentence(finding.trouble, unit)} Take ${finding.trouble.trouble === 'platen' ? 'a larger platen' : 'a larger bag'}, or press between cauls.`
    case 'unbalanced':
      return `The panel is not balanced. ${lackSentence(finding.lack, layers, unit)}`
  }
}

/** A short name for a button that mends something. */
export function pressRemedyLabel(remedy: PressRemedy): string {
  switch (remedy.remedy) {
    case 'glue':
      return `Take ${GLUE_WORDS[remedy.glue]}`
    case 'method':
      return 'Press between cauls'
    case 'backer':
      return 'Put a backer on'
  }
}
