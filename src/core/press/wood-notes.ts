import type { Layer } from './pressing'
import { findWood, UNCERTAIN } from './woods'

/** What the tool doesn't know for sure about the woods of a build-up, each named once. */
export function woodNotes(layers: readonly Layer[]): string[] {
  const names = new Set(
    layers.flatMap((layer) => (layer.kind === 'veneer' || layer.kind === 'solid' ? [layer.species.trim()] : [])),
  )
  return [...names].flatMap((name) => {
    const wood = findWood(name)
    if (!wood)
      return [
        name === ''
          ? 'A layer has no species: it is reckoned as a middling hardwood.'
          : `There are no figures for “${name}”, or it could be several woods: it is reckoned as a middling hardwood. Try its botanical name.`,
      ]
    return UNCERTAIN.includes(wood.name) ? [`The figures for ${wood.name} are uncertain: its tables do not agree.`] : []
  })
}
