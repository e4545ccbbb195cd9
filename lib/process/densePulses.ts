import { type ChordTable, chordsAcross } from './chordTable.ts';
import type { PulseWindow } from './pulseWindow.ts';

/** Numbers of pulses looked at between the fewest and the most where incubation moves the bounds with them. */
const numbers = 9;
/** Places across from line to line. */
const across = 128;
/** Pulse spacings tried, each this part of the one before; then the step to the first that will do is halved so often. */
const [tries, factor, halvings] = [50, 0.92, 6];

/** Bounds for n pulses, relative to those for the fewest. */
function eased({ pulsesLow, exponent }: PulseWindow, n: number): number {
  return Math.max(1, n / pulsesLow) ** (exponent - 1);
}

/** Chords across the lines at a level of the fluence for a number of pulses. */
interface Level {
  readonly pulses: number;
  readonly chords: Float64Array;
}

/** True where a place gets the pulses of any of these levels at that pulse spacing. */
function anyReach(levels: readonly Level[], place: number, pulseSpacing: number): boolean {
  for (const { chords, pulses } of levels) if (chords[place]! >= pulses * pulseSpacing) return true;
  return false;
}

/**
 * Largest pulse spacing, m, at which a part of at least `leastInside` of a wide field lies inside the window, for pulses so
 * close that they are counted by the length of line above a level; 0 where there is none. `peak` is the peak fluence of a
 * pulse, J/m², `spacing` that of the lines, m. For searching: to one or two per cent.
 */
export function widestPulseSpacing(
  table: ChordTable,
  peak: number,
  spacing: number,
  wanted: PulseWindow,
  leastInside: number,
): number {
  const { low, high, pulsesLow, pulsesHigh, exponent } = wanted;
  if (peak > high * (1 + 1e-9)) return 0;
  const count = exponent === 1 ? 1 : numbers;
  const levelOf = (bound: number, pulses: number): Level => ({
    pulses,
    chords: chordsAcross(table, table.chordsAbove((bound * eased(wanted, pulses)) / peak), spacing, across),
  });
  const steps = Array.from({ length: count }, (_, k) =>
    count === 1 ? pulsesLow : pulsesLow * (pulsesHigh / pulsesLow) ** (k / (count - 1)),
  );
  const enough = steps.map((pulses) => levelOf(low, pulses));
  const strong = exponent === 1 ? [] : steps.slice(1).map((pulses) => levelOf(high, pulses));
  const much = [levelOf(low, pulsesHigh + 1)];
  // A hair off the longest chord itself, which rounding would let reach it or not.
  const most = (1 - 1e-9) * Math.max(...enough.map(({ chords, pulses }) => Math.max(...chords) / pulses));
  const keeps = (p: number) => {
    let inside = 0;
    for (let k = 0; k < across; k++) {
      if (anyReach(enough, k, p) && !anyReach(strong, k, p) && !anyReach(much, k, p)) inside++;
    }
    return inside >= leastInside * across;
  };
  for (let i = 0, p = most; i < tries; i++, p *= factor) {
    if (!keeps(p)) continue;
    let [good, bad] = [p, p / factor];
    for (let k = 0; k < halvings; k++) {
      const middle = (good + bad) / 2;
      if (keeps(middle)) good = middle;
      else bad = middle;
    }
    return good;
  }
  return 0;
}
