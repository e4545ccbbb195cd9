import type { LadderPlace } from './focusLadder.ts';
import type { MarksOfSpot } from './planeFit.ts';

/** Diameters of the marks of one energy along z, as a fit predicts them. */
export interface LadderCurve {
  readonly direction: 1 | -1;
  /** J */
  readonly energy: number;
  /** Readings of z, m, ascending. */
  readonly readings: Float64Array;
  /** Diameter of a disc with the area of the mark, m; 0 where there is none. */
  readonly diameters: Float64Array;
}

const curvePoints = 241;

/** What is predicted along z for the middle of the energies that a row was fired with, between its first and last reading. */
export function curveOf({ marks, surface, fluencePerEnergy }: MarksOfSpot, place: LadderPlace): LadderCurve {
  const energies = marks.map((mark) => mark.energy).sort((a, b) => a - b);
  const energy = energies[Math.floor(energies.length / 2)]!;
  const level = Math.log(place.thresholdFluence / (fluencePerEnergy * energy));
  const all = marks.map(({ z }) => z);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  const readings = Float64Array.from(
    { length: curvePoints },
    (_, i) => low + ((high - low) * i) / (curvePoints - 1),
  );
  const diameters = readings.map((reading) => {
    const area = surface.areaAt(place.direction * (reading - place.zero), level);
    return 2 * Math.sqrt(Math.max(0, area) / Math.PI);
  });
  return { direction: place.direction, energy, readings, diameters };
}
