import type { FigureSpec } from '../document.ts';

/** A piece of a line: words, an equation, or a citation. */
export type Run =
  | {
      readonly text: string;
      readonly strong?: boolean;
      readonly emphasis?: boolean;
      /** Id of the quantity whose shown value this text is. */
      readonly quantity?: string;
    }
  /** An equation in the line. */
  | { readonly tex: string }
  /** A key of the bibliography. */
  | { readonly cite: string };

/** One part of a paper. */
export type PaperBlock =
  | { readonly kind: 'heading'; readonly level: 1 | 2 | 3; readonly text: string }
  | {
      readonly kind: 'paragraph';
      readonly runs: readonly Run[];
      readonly role?: 'caution' | 'failed' | 'note';
    }
  | { readonly kind: 'list'; readonly ordered: boolean; readonly items: readonly (readonly Run[])[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly string[];
      readonly rows: readonly (readonly (readonly Run[])[])[];
    }
  | {
      readonly kind: 'figure';
      readonly id: string;
      readonly spec: FigureSpec;
      readonly shape: 'wide' | 'tall';
      readonly caption: string;
    }
  | { readonly kind: 'equation'; readonly tex: string; readonly note?: string };

/** A paper as plain data: writers make HTML, Markdown with figures, DOCX and BibTeX of it. */
export interface Paper {
  readonly title: string;
  /** Set tight in small type, for what is to be on one page. */
  readonly compact?: boolean;
  /** Day it was written, YYYY-MM-DD: files that hold a date of their own bear it. */
  readonly date?: string;
  /** Name of the design, at the top of printed pages; the title where left out. */
  readonly design?: string;
  /** Lines below the title: design, version, date, command that makes it again. */
  readonly facts: readonly (readonly [name: string, value: string])[];
  readonly blocks: readonly PaperBlock[];
  /** Keys of the bibliography, in order of first use; writers number them. */
  readonly references: readonly string[];
}
