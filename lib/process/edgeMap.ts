import type { Spot } from '../optics/askedSpot.ts';

import { countingDiameter } from './fieldChecks.ts';
import { type Hatch, passesWorked } from './hatch.ts';
import { lineMotion, timeAt } from './lineMotion.ts';
import type { MapGrid } from './mapGrid.ts';
import { pulseMap } from './pulseMap.ts';
import { type Box, pulsesIn } from './pulsePlaces.ts';
import type { ScanMotion } from './scanTime.ts';

/** Accumulated fluence over the lower left corner of the field, places from that corner in metres; 1 is the mean of a wide field. */
export interface EdgeMap extends MapGrid {
  readonly level: Float64Array;
  readonly highest: number;
}

/** Spot diameters shown outside the corner and inside it, and steps to a diameter. */
const [out, within, steps] = [1.5, 5.5, 12];
/** Most passes at angles of their own, and most pulses of a line in the box, that are summed one by one. */
const [mostPasses, mostPulses] = [12, 100];
/** Spot diameters around the map from which pulses are gathered: their tails reach in. */
const gathered = 8;
/** Lines are taken together up to this part of the diameter: a Gaussian summed at that distance is flat to 1e-16. */
const closeLines = 1 / 8;

/**
 * The accumulated fluence over a corner, all passes, pulse by pulse as they fall: turn-round, order, hatch angles. Pulses and
 * lines far closer than the spot is wide are taken in groups. The mean is that of a wide field at full speed. Tails of pulses more than eight
 * diameters from the map are left out: up to 1 % of the mean behind a stop.
 */
export function edgeMap(
  spot: Spot,
  hatch: Hatch,
  motion: Pick<ScanMotion, 'speed' | 'acceleration' | 'turnRound'>,
  rate: number,
  report?: (part: number) => void,
): EdgeMap {
  const diameter = countingDiameter(spot);
  const step = diameter / steps;
  const size = Math.round((out + within) * steps) + 1;
  const corner = { x: -hatch.width / 2, y: -hatch.height / 2 };
  const grid = { left: -out * diameter, bottom: -out * diameter, step, columns: size, rows: size };
  const reach = gathered * diameter;
  const box: Box = {
    left: corner.x - diameter,
    right: corner.x + within * diameter + reach,
    bottom: corner.y - diameter,
    top: corner.y + within * diameter + reach,
  };
  const run = lineMotion(hatch.width, motion);
  const together = {
    pulses: Math.max(1, Math.floor((rate * timeAt(run, within * diameter)) / mostPulses)),
    lines: oddBelow((closeLines * diameter) / hatch.lineSpacing),
  };
  const passes = passesWorked(hatch, mostPasses);
  const places = pulsesIn(hatch, passes, motion, rate, box, together);
  const inField = { ...grid, left: grid.left + corner.x, bottom: grid.bottom + corner.y };
  const sum = pulseMap(spot, places, inField, report);
  const mean = (passes.length * spot.peak * spot.effectiveArea * rate) / (motion.speed * hatch.lineSpacing);
  const level = sum.map((value) => (value * together.pulses * together.lines) / mean);
  return { ...grid, level, highest: level.reduce((a, b) => Math.max(a, b), 0) };
}

/** Largest odd number up to `most`, 1 at least: a group of as many lines has one in its middle. */
function oddBelow(most: number): number {
  return 2 * Math.max(0, Math.floor((most - 1) / 2)) + 1;
}
