import type { Live } from '../../live.ts';

/** An own number as it stands in its fields, while the person is elsewhere. */
export interface NumberDraft {
  /** Id of the line that is changed; none for a new one. */
  readonly changing: string | undefined;
  readonly idTyped: boolean;
  /** What stands in the fields, in their order. */
  readonly texts: readonly string[];
}

/** What is written of a number on each page. */
export const numberDrafts = new WeakMap<Live, NumberDraft>();
