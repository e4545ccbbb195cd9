import { areaAboveLevel } from '../numerics/levelArea.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { fluenceTable } from './fluenceTable.ts';

/** What a place of a field must get so that the wanted structure appears there. */
export interface PulseWindow {
  /** Bounds of the incident fluence of a pulse, J/m²; of the lower one for `pulsesLow` pulses. */
  readonly low: number;
  readonly high: number;
  /** Bounds of the number of pulses that reach the lower bound, 1 or more. */
  readonly pulsesLow: number;
  readonly pulsesHigh: number;
  /** S of the incubation: with n pulses, more than `pulsesLow`, both bounds are (n/pulsesLow)^(S−1) of theirs; 1 leaves them. */
  readonly exponent: number;
}

/** Pulses on straight lines over a field, one row of pulses exactly beside the other; metres. */
export interface ScannedField {
  readonly pulseSpacing: number;
  readonly lineSpacing: number;
  /** Times that the whole is gone over, in the same places; 1 or more. */
  readonly passes: number;
}

/** Parts of a scanned field, 0 to 1; they add up to 1. */
export interface FieldParts {
  readonly inside: number;
  readonly tooLittle: number;
  readonly tooMuch: number;
}

/** Steps of the grid across a cell: along x few, since pulses lie close, along y many. */
const [fewestSteps, stepsAcross] = [8, 128];

/**
 * The parts of a wide field inside a window. A place has got enough where for some n of `pulsesLow` or more its n-th
 * strongest pulse reaches the lower bound for n pulses; too much where one pulse goes beyond the upper bound, or more than
 * `pulsesHigh` pulses reach the lower. `unit` is the fluence of the unshaped focus, J/m², that irradiance is relative to.
 * The field repeats from pulse to pulse and line to line, so one cell is looked at, 8 × 128 places or more, with straight
 * lines between them: to 1e-3 against places ten times closer.
 */
export function partsInWindow(
  spot: Spot,
  unit: number,
  field: ScannedField,
  window: PulseWindow,
): FieldParts {
  return partsInWindows(spot, unit, field, [window])[0]!;
}

/** The same for several windows at once, the pulses of each place gathered once for all of them. */
export function partsInWindows(
  spot: Spot,
  unit: number,
  field: ScannedField,
  windows: readonly PulseWindow[],
): FieldParts[] {
  const table = fluenceTable(spot, unit, Math.min(...windows.map(faintest)));
  if (table.reach === 0) return windows.map(() => ({ inside: 0, tooLittle: 1, tooMuch: 0 }));
  const { pulseSpacing, lineSpacing, passes, share } = reducedField(field, table.reach);
  // A cell larger than the spot needs places as close as the spot is fine.
  const fine = table.reach / 120;
  const columns = Math.max(fewestSteps, Math.ceil(pulseSpacing / fine));
  const rows = Math.max(stepsAcross, Math.ceil(lineSpacing / fine));
  const margins = windows.map(() => ({
    inside: new Float64Array((columns + 1) * (rows + 1)),
    much: new Float64Array((columns + 1) * (rows + 1)),
  }));
  for (let row = 0; row <= rows; row++) {
    for (let column = 0; column <= columns; column++) {
      const at = row * (columns + 1) + column;
      const x = (column / columns) * pulseSpacing;
      const y = (row / rows) * lineSpacing;
      const pulses = table.around(x, y, pulseSpacing, lineSpacing);
      windows.forEach((window, i) => {
        const { enough, excess } = marginsOf(pulses, passes, window);
        margins[i]!.inside[at] = Math.min(enough, -excess);
        margins[i]!.much[at] = excess;
      });
    }
  }
  const grid = { columns: columns + 1, rows: rows + 1, stepX: 1 / columns, stepY: 1 / rows };
  const part = (values: Float64Array) => share * areaAboveLevel({ ...grid, values }, 0);
  return margins.map(({ inside, much }) => {
    const [within, tooMuch] = [part(inside), part(much)];
    return { inside: within, tooMuch, tooLittle: Math.max(0, 1 - within - tooMuch) };
  });
}

/**
 * A field with the same parts and a bounded number of pulses and places. Pulses or lines closer than a 30th of the reach
 * are taken together as passes in one place, which moves each by less than a 60th. Those further apart than twice the
 * reach do not meet, wherever exactly they are: they are moved together, and the cell is `share` of what it was.
 */
function reducedField(field: ScannedField, reach: number): ScannedField & { readonly share: number } {
  const together = (spacing: number) => Math.max(1, Math.floor(reach / 30 / spacing));
  const [along, across] = [together(field.pulseSpacing), together(field.lineSpacing)];
  const [x, y] = [along * field.pulseSpacing, across * field.lineSpacing];
  const apart = 2.1 * reach;
  const [pulseSpacing, lineSpacing] = [Math.min(x, apart), Math.min(y, apart)];
  const share = (pulseSpacing * lineSpacing) / (x * y);
  return { pulseSpacing, lineSpacing, passes: field.passes * along * across, share };
}

/** Pulses weaker than this count nowhere: half the lower bound as incubation leaves it for the most pulses, J/m². */
function faintest({ low, pulsesLow, pulsesHigh, exponent }: PulseWindow): number {
  return 0.5 * low * Math.min(1, ((pulsesHigh + 1) / pulsesLow) ** (exponent - 1));
}

/** By how much, as a logarithm, a place has more than enough, and more than it may; above 0 where so. */
function marginsOf(strongestFirst: Float64Array, passes: number, window: PulseWindow) {
  const { low, high, pulsesLow, pulsesHigh, exponent } = window;
  if (exponent === 1) return marginsAlone(strongestFirst, passes, window);
  let [enough, excess] = [least, least];
  for (let j = 0; j < strongestFirst.length; j++) {
    const F = strongestFirst[j]!;
    // The same pulse comes once a pass; more pulses lower the bounds where S is below 1, and raise them above.
    const most = (j + 1) * passes;
    const n = exponent < 1 ? most : j * passes + 1;
    const eased = (count: number) => Math.max(1, count / pulsesLow) ** (exponent - 1);
    if (most >= pulsesLow) enough = Math.max(enough, Math.log(F / (low * eased(n))));
    excess = Math.max(excess, Math.log(F / (high * eased(n))));
    if (most > pulsesHigh) {
      excess = Math.max(excess, Math.log(F / (low * eased(Math.max(n, pulsesHigh + 1)))));
    }
  }
  return { enough, excess };
}

/** The same where pulses do not prepare the surface for one another: three of them decide. */
function marginsAlone(strongestFirst: Float64Array, passes: number, window: PulseWindow) {
  const { low, high, pulsesLow, pulsesHigh } = window;
  const over = (index: number, bound: number) =>
    index < strongestFirst.length ? Math.max(least, Math.log(strongestFirst[index]! / bound)) : least;
  return {
    enough: over(Math.ceil(pulsesLow / passes) - 1, low),
    excess: Math.max(over(0, high), over(Math.floor(pulsesHigh / passes), low)),
  };
}

/** Stands for a place that no pulse reaches: e to the −20. */
const least = -20;
