import { derived, ifThere } from '../graph/define.ts';
import { defocusAt, type Light, planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { withPhaseScaled } from '../optics/variants.ts';
import { Problem } from '../problem.ts';
import { energiesAbout, markGrowth, thresholdEnergyOf } from '../process/markGrowth.ts';
import { stretchesOf } from '../process/marks.ts';
import { light, unshapedPeak, workpieceZ } from './focus.ts';
import { usedPulseEnergy } from './losses.ts';
import { asked, thresholdLevel, unshapedAsked, unshapedThresholdLevel } from './marks.ts';
import { thresholdAtN } from './threshold.ts';
import { fluenceWithoutPlate } from './unshaped.ts';

const stretchUnits = { angle: 'rad', marked: { from: 'm', to: 'm' } } as const;

export const markStretches = derived({
  id: 'spot.markStretches',
  name: 'where the surface is marked',
  symbol: '[\\rho_i,\\rho_{i+1}]_N',
  unit: stretchUnits,
  about:
    'Stretches along lines outward from the centre where the fluence is above the threshold for the pulses on a place; one line for a round spot.',
  from: { spot: asked, level: thresholdLevel },
  compute: ({ spot, level }) => stretchesOf(spot, level),
  formula: 'I(\\rho)>I_{\\text{th}}',
  source: 'liu1982',
});

export const unshapedMarkStretches = derived({
  id: 'unshaped.spot.markStretches',
  name: 'where the surface is marked without the step',
  symbol: '[\\rho_i,\\rho_{i+1}]_{\\text{u},N}',
  unit: stretchUnits,
  about: 'The same stretches with the plate taken out, and its losses with it.',
  from: { spot: unshapedAsked, level: unshapedThresholdLevel },
  compute: ({ spot, level }) => stretchesOf(spot, level),
  formula: 'I_\\text{u}(\\rho)>I_{\\text{u},\\text{th}}',
  source: 'liu1982',
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

export const markGrowths = derived({
  id: 'spot.markGrowth',
  name: 'marks against pulse energy',
  symbol: 'D_N(E)',
  unit: {
    energies: 'J',
    shaped: { place: 'none', z: 'm', outer: 'm', inner: 'm' },
    unshaped: { outer: 'm', inner: 'm' },
  },
  about:
    'Predicted outer diameter of the mark and that of its unmarked centre against pulse energy, for the pulses on a place: where the workpiece stands, in the focus, a Rayleigh length to either side of the workpiece, and with the plate taken out; 0 where nothing is marked.',
  from: {
    light,
    z: workpieceZ,
    threshold: thresholdAtN,
    unit: unshapedPeak,
    plainUnit: fluenceWithoutPlate,
    energy: usedPulseEnergy,
  },
  compute: ({ light, z, threshold, unit, plainUnit, energy }) => {
    const planes = growthPlanes(light, z).flatMap((plane) => withSpot(light, plane));
    const plain = spotAt(withPhaseScaled(light, 0), z);
    const [level, plainLevel] = [unit, plainUnit].map((fluence) => (threshold * energy) / fluence) as [
      number,
      number,
    ];
    const thresholds = planes.map(({ spot }) => thresholdEnergyOf(spot, level));
    const energies = energiesAbout(
      energy,
      [...thresholds, thresholdEnergyOf(plain, plainLevel)],
      chartEnergies,
    );
    return {
      energies,
      shaped: planes.map(({ spot, ...plane }) => ({ ...plane, ...markGrowth(spot, level, energies) })),
      unshaped: markGrowth(plain, plainLevel, energies),
    };
  },
  shownAs: ({ shaped }) => `${chartEnergies} energies in ${shaped.length} planes`,
  formula: 'A\\{F>F_{\\text{th},N}\\}\\text{ over }E',
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

export const levelOnMap = ifThere({
  id: 'focus.mapThreshold',
  name: 'threshold on the map',
  symbol: 'I_{\\text{th,map}}',
  unit: '1',
  about:
    'Threshold for the pulses on a place as relative irradiance, for the line on the map through the focus; none where the design has no threshold.',
  of: thresholdLevel,
});
