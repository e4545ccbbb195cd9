import { choice, derived } from '../graph/define.ts';
import { defocusAt, type Light, planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { thresholdAt } from '../process/incubation.ts';
import { energiesAbout, markGrowth, pulsesAbout, thresholdEnergyOf } from '../process/markGrowth.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { usedPulseEnergy } from './losses.ts';
import {
  incubationExponent,
  pulsesOnPlace,
  thresholdAtN,
  thresholdFloor,
  thresholdFluence,
} from './threshold.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

export const growthAgainst = choice({
  id: 'spot.growthAgainst',
  name: 'what makes the mark grow',
  symbol: '\\text{against}',
  about: 'What the chart of growing marks is drawn against: pulse energy, or the pulses on a place.',
  initial: 'energy',
  options: { energy: 'pulse energy', pulses: 'pulses on a place' },
});

export const growthShows = choice({
  id: 'spot.growthShows',
  name: 'what the chart of growing marks shows',
  symbol: '\\text{shown}',
  about: 'Whether the chart of growing marks shows their diameters or their areas.',
  initial: 'diameter',
  options: { diameter: 'diameter', area: 'marked area' },
});

/** Energies of the chart of growing marks. */
const chartEnergies = 81;
/** Planes nearer to one another than this part of a Rayleigh length are one. */
const samePlane = 0.02;

/** A plane of the chart of growing marks. */
interface GrowthPlane {
  readonly z: number;
  readonly place: 'workpiece' | 'focus' | 'before' | 'behind';
}

/** The workpiece, a Rayleigh length to either side of it, and the focus where that is another plane. */
export function growthPlanes(light: Light, z: number): readonly GrowthPlane[] {
  const zeta = defocusAt(light, z);
  const all: readonly (readonly [GrowthPlane['place'], number])[] = [
    ['workpiece', zeta],
    ['focus', 0],
    ['before', zeta - 1],
    ['behind', zeta + 1],
  ];
  const apart = all.filter(([, at], i) =>
    all.slice(0, i).every(([, other]) => Math.abs(at - other) > samePlane),
  );
  return apart.map(([place, at]) => ({ place, z: place === 'workpiece' ? z : planeOfDefocus(light, at) }));
}

const growthUnits = { area: 'm^2', outer: 'm', inner: 'm' } as const;

export const markGrowths = derived({
  id: 'spot.markGrowth',
  name: 'marks against pulse energy or pulses',
  symbol: 'A_N(E)',
  unit: {
    energies: 'J',
    pulses: '1',
    shaped: { place: 'none', z: 'm', ...growthUnits },
    unshaped: growthUnits,
  },
  about:
    'Predicted area and outer diameter of the mark and the diameter of its unmarked centre, against pulse energy for the pulses on a place, or against these for the pulse energy: where the workpiece stands, in the focus, a Rayleigh length to either side of the workpiece, and with the plate taken out; 0 where nothing is marked.',
  from: {
    against: growthAgainst,
    light,
    z: workpieceZ,
    first: thresholdFluence,
    exponent: incubationExponent,
    floor: thresholdFloor,
    N: pulsesOnPlace,
    threshold: thresholdAtN,
    unit: unshapedPeak,
    plainUnit: fluenceWithoutPlate,
    energy: usedPulseEnergy,
  },
  compute: ({ against, light, z, N, threshold, unit, plainUnit, energy, ...law }) => {
    const planes = growthPlanes(light, z).flatMap((plane) => withSpot(light, plane));
    const plain = spotAt(withPhaseScaled(light, 0), z);
    const starts = [
      ...planes.map(({ spot }) => thresholdEnergyOf(spot, (threshold * energy) / unit)),
      thresholdEnergyOf(plain, (threshold * energy) / plainUnit),
    ];
    const along = against === 'pulses' ? pulsesAbout(N) : energiesAbout(energy, starts, chartEnergies);
    const [energies, pulses] =
      against === 'pulses' ? [along.map(() => energy), along] : [along, along.map(() => N)];
    // Threshold over the peak that an unshaped focus would have at each energy.
    const levels = (peak: number) =>
      energies.map((E, i) => (thresholdAt(law, pulses[i]!) * energy) / (E * peak));
    return {
      energies,
      pulses,
      shaped: planes.map(({ spot, ...plane }) => ({ ...plane, ...markGrowth(spot, levels(unit)) })),
      unshaped: markGrowth(plain, levels(plainUnit)),
    };
  },
  shownAs: ({ energies, shaped }) => `${energies.length} marks in ${shaped.length} planes`,
  formula: 'A\\{F>F_{\\text{th},N}\\}\\text{ over }E\\text{ or }N',
  source: 'liu1982',
  heavy: 'picture',
});

/** The plane with its spot; none where it is too far from the focus, but the workpiece's own must be there. */
function withSpot(light: Light, plane: GrowthPlane) {
  try {
    return [{ ...plane, spot: spotAt(light, plane.z) }];
  } catch (error) {
    if (plane.place === 'workpiece' || !(error instanceof Problem)) throw error;
    return [];
  }
}
