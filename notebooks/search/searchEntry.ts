export type EntryKind =
  | 'document'
  | 'path'
  | 'part'
  | 'caution'
  | 'word'
  | 'number'
  | 'option'
  | 'lesson'
  | 'lecture';

/** What a search can lead to. */
export interface SearchEntry {
  /** Unique among all. */
  readonly key: string;
  readonly kind: EntryKind;
  readonly name: string;
  /** Beside the name: where it is, or what kind of thing. */
  readonly beside: string;
  /** Other names, symbols and ids. */
  readonly also: string;
  /** Those of them that are whole names: who types one of these means this. */
  readonly called?: readonly string[];
  /** What is said of it. */
  readonly about: string;
  /** Address without its #; a number opens its trace instead. */
  readonly to?: string;
  /** Id of the quantity. */
  readonly quantity?: string;
}
