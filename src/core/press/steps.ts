/** The steps of a job, from the bundle to the sanded panel, in the order in which they are done. */
export type StepName =
  | 'register'
  | 'flatten'
  | 'dry'
  | 'photograph'
  | 'plan'
  | 'crosscut'
  | 'joint'
  | 'dry-lay'
  | 'glue seams'
  | 'gum tape'
  | 'strip the glue side'
  | 'rehearse'
  | 'press'
  | 'stand'
  | 'trim'
  | 'edges'
  | 'scrape the tape'
  | 'scrape'
  | 'sand'

export const STEPS: readonly { readonly step: StepName; readonly words: string }[] = [
  {
    step: 'register',
    words: 'Strike register lines across the bundle’s edge and number every leaf, same end, same side',
  },
  { step: 'flatten', words: 'Flatten wavy leaves' },
  { step: 'dry', words: 'Dry leaves and cores together to the shop’s moisture' },
  { step: 'photograph', words: 'Photograph and measure the leaves' },
  { step: 'plan', words: 'Plan the faces and print the templates' },
  { step: 'crosscut', words: 'Rough-crosscut in packets' },
  { step: 'joint', words: 'Joint the edges' },
  { step: 'dry-lay', words: 'Lay the faces dry and look at them' },
  { step: 'glue seams', words: 'Edge-glue the seams' },
  { step: 'gum tape', words: 'Gum tape on the show side' },
  { step: 'strip the glue side', words: 'Take all tape off the glue side' },
  { step: 'rehearse', words: 'Rehearse the pressing without glue, with a watch' },
  { step: 'press', words: 'Press, face and back at once' },
  { step: 'stand', words: 'Let the panels stand on edge with air on both sides' },
  { step: 'trim', words: 'Trim to size from the centre seam' },
  { step: 'edges', words: 'Lip or veneer the edges' },
  { step: 'scrape the tape', words: 'Damp and scrape off the tape' },
  { step: 'scrape', words: 'Scrape the faces' },
  { step: 'sand', words: 'Sand' },
]
