/** A word of the trade, or a symbol, and what it means here. */
export interface Word {
  /** Unique and public, as in `#words/rayleigh-length`. Never changes. */
  readonly id: string;
  readonly word: string;
  /** Other names and spellings by which it is found. */
  readonly also?: readonly string[];
  /** TeX. */
  readonly symbol?: string;
  /** Markdown, `$…$` for equations; one to four sentences. */
  readonly meaning: string;
  /** Which of several customs holds here: 1/e² radius or diameter, peak or mean, per pulse or accumulated. */
  readonly convention?: string;
  /** Ids of the quantities behind it, shown with their values of today. */
  readonly quantities?: readonly string[];
  /** Ids of further quantities that it explains, not shown; `coupon.*` stands for all that begin so. */
  readonly covers?: readonly string[];
  /** Ids of other words. */
  readonly see?: readonly string[];
}
