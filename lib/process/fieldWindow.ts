import { areaAboveLevel } from '../numerics/levelArea.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { decisivePulses } from './decisivePulses.ts';
import { fluenceTable } from './fluenceTable.ts';
import type { FluenceBounds, PulseCounts, PulseWindow } from './pulseWindow.ts';

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
  return partsInWindows(spot, unit, field, window, [window])[0]!;
}

/** The same for several bounds of the fluence at once, the pulses of each place gathered once for all of them. */
export function partsInWindows(
  spot: Spot,
  unit: number,
  field: ScannedField,
  counts: PulseCounts,
  bounds: readonly FluenceBounds[],
): FieldParts[] {
  const table = fluenceTable(spot, unit, faintest(Math.min(...bounds.map(({ low }) => low)), counts));
  if (table.reach === 0) return bounds.map(() => ({ inside: 0, tooLittle: 1, tooMuch: 0 }));
  const { pulseSpacing, lineSpacing, passes, share } = reducedField(field, table.reach);
  const decide = decisivePulses(counts, passes);
  // A cell larger than the spot needs places as close as the spot is fine.
  const fine = table.reach / 120;
  const columns = Math.max(fewestSteps, Math.ceil(pulseSpacing / fine));
  const rows = Math.max(stepsAcross, Math.ceil(lineSpacing / fine));
  const size = (columns + 1) * (rows + 1);
  const logs = bounds.map(({ low, high }) => [Math.log(low), Math.log(high)] as const);
  const margins = bounds.map(() => ({ inside: new Float64Array(size), much: new Float64Array(size) }));
  for (let at = 0; at < size; at++) {
    const x = ((at % (columns + 1)) / columns) * pulseSpacing;
    const y = (Math.floor(at / (columns + 1)) / rows) * lineSpacing;
    const pulses = decide(table.around(x, y, pulseSpacing, lineSpacing));
    for (let i = 0; i < logs.length; i++) {
      const [low, high] = logs[i]!;
      const excess = Math.max(pulses.strongest - high, pulses.many - low, least);
      margins[i]!.inside[at] = Math.min(Math.max(pulses.enough - low, least), -excess);
      margins[i]!.much[at] = excess;
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
 * are taken together as passes in one place, which moves each by less than a 40th. Those further apart than twice the
 * reach do not meet, wherever exactly they are: they are moved together, and the cell is `share` of what it was.
 */
function reducedField(field: ScannedField, reach: number): ScannedField & { readonly share: number } {
  const together = (spacing: number) => Math.max(1, Math.round(reach / 30 / spacing));
  const [along, across] = [together(field.pulseSpacing), together(field.lineSpacing)];
  const [x, y] = [along * field.pulseSpacing, across * field.lineSpacing];
  const apart = 2.1 * reach;
  const [pulseSpacing, lineSpacing] = [Math.min(x, apart), Math.min(y, apart)];
  const share = (pulseSpacing * lineSpacing) / (x * y);
  return { pulseSpacing, lineSpacing, passes: field.passes * along * across, share };
}

/** Pulses weaker than this count nowhere: half the lower bound as incubation leaves it for the most pulses, J/m². */
function faintest(low: number, { pulsesLow, pulsesHigh, exponent }: PulseCounts): number {
  return 0.5 * low * Math.min(1, ((pulsesHigh + 1) / pulsesLow) ** (exponent - 1));
}

/** Stands for a place that no pulse reaches: e to the −20. */
const least = -20;
