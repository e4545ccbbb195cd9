import type { LadderProposal } from './focusLadder.ts';
import type { Mark } from './marks.ts';

/** A row of a ladder: what it is fired with, and where its marks are expected. */
export interface LadderRow {
  /** The plate is in. */
  readonly plate: boolean;
  /** Pulse energy where it is measured, J. */
  readonly energy: number;
  readonly proposal: LadderProposal;
  /** Predicted for a reading, one of the proposal's. */
  readonly markAt: (reading: number) => Mark;
}

/** One mark of a ladder, planned. */
export interface LadderMark {
  /** From 1, along the first row, then along the next. */
  readonly number: number;
  /** From the lower left place, m: along the line, and from the last line up to the first. */
  readonly x: number;
  readonly y: number;
  readonly plate: boolean;
  readonly energy: number;
  /** Reading of z, m. */
  readonly reading: number;
  /** As predicted where the focus lies at the expected reading. */
  readonly mark: Mark;
}

/** A ladder laid out. */
export interface LadderLayout {
  /** From place to place, m. */
  readonly pitch: number;
  readonly marks: readonly LadderMark[];
}

/** Places on a line: as many as a microscope shows at once. */
const longestLine = 13;

/**
 * Lays rows out like text, from left to right in lines of 13 downward, an empty line between rows, in places
 * `pitchOf` the largest predicted outer diameter (m) apart; one row at least, with one reading at least.
 */
export function layLadder(rows: readonly LadderRow[], pitchOf: (largest: number) => number): LadderLayout {
  const predicted = rows.map(({ proposal, markAt }) => proposal.readings.map(markAt));
  const pitch = pitchOf(predicted.flat().reduce((most, mark) => Math.max(most, mark.outerDiameter), 0));
  const lines = rows.map(({ proposal }) => Math.ceil(proposal.readings.length / longestLine));
  const firstLine = (row: number) => lines.slice(0, row).reduce((sum, count) => sum + count + 1, 0);
  const lowest = firstLine(rows.length) - 2;
  const marks = rows.flatMap(({ plate, energy, proposal }, row) =>
    proposal.readings.map((reading, i): Omit<LadderMark, 'number'> => {
      const line = firstLine(row) + Math.floor(i / longestLine);
      const x = (i % longestLine) * pitch;
      return { x, y: (lowest - line) * pitch, plate, energy, reading, mark: predicted[row]![i]! };
    }),
  );
  return { pitch, marks: marks.map((mark, i) => ({ number: i + 1, ...mark })) };
}
