/** What the page has a part of its own for, to work with. */
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
  | 'lectures'
  | 'lessons'
  | 'words'
  | 'widths'
  | 'fluences'
  | 'paths';
