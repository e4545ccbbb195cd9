/** What there is to work with that is no text of the design: the page has a part of its own for each. */
export type ToolName =
  | 'compare'
  | 'change'
  | 'requirements'
  | 'solve'
  | 'vary'
  | 'own-quantities'
  | 'own-words'
  | 'write-up'
  | 'own-pages'
  | 'words'
  | 'widths'
  | 'fluences'
  | 'paths'
  | 'lessons';
