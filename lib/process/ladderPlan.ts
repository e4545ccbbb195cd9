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
  /** From the first place, m: along the row, and from the last row to the first. */
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

/**
 * Lays rows of one step out below each other, equal readings under each other, in places `pitchOf` the largest predicted
 * outer diameter (m) apart; one row at least, with one reading at least.
 */
export function layLadder(rows: readonly LadderRow[], pitchOf: (largest: number) => number): LadderLayout {
  const predicted = rows.map(({ proposal, markAt }) => proposal.readings.map(markAt));
  const pitch = pitchOf(predicted.flat().reduce((most, mark) => Math.max(most, mark.outerDiameter), 0));
  const lowest = Math.min(...rows.map(({ proposal }) => proposal.readings[0]!));
  let number = 0;
  const marks = rows.flatMap(({ plate, energy, proposal }, row) =>
    proposal.readings.map((reading, i): LadderMark => {
      number++;
      const place = Math.round((reading - lowest) / proposal.step);
      const y = (rows.length - 1 - row) * pitch;
      return { number, x: place * pitch, y, plate, energy, reading, mark: predicted[row]![i]! };
    }),
  );
  return { pitch, marks };
}
