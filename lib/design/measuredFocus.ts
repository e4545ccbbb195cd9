import { choice, derived, file, number } from '../graph/define.ts';
import type { NamedFocusCaustic } from '../measured/causticTable.ts';
import { collinsB, defocusAt, type Light } from '../optics/light.ts';
import { furthestDefocus } from '../optics/roundSpot.ts';
import { spotRadiiAt } from '../optics/spotRadius.ts';
import { Problem } from '../problem.ts';
import { light } from './focus.ts';

export const focusCaustic = file<NamedFocusCaustic>({
  id: 'focus.measuredCaustic',
  name: 'measured caustic of the focus',
  symbol: '\\text{table}_f',
  unit: { name: 'none', z: 'm', diameter: 'm', diameterY: 'm' },
  about:
    'Spot diameters at places along the axis near the focus, behind the lens: a column each with its unit, as in "z (mm); d (µm)", or "z (mm); dx (µm); dy (µm)" for both axes; columns of radii are doubled.',
  shownAs: ({ name, z }) => `${name}, ${z.length} places`,
});

export const focusCausticMeaning = choice({
  id: 'focus.measuredCausticMeaning',
  name: 'what its diameter means',
  symbol: '\\text{meaning}',
  about:
    'How the instrument defines the diameter. One kind follows from another for a Gaussian only, so nothing is converted: the prediction is worked out in the same kind.',
  initial: 'moment',
  options: {
    moment: 'second moment (4σ)',
    gaussian: '1/e² of the peak',
    half: 'full width at half the peak',
  },
});

export const focusCausticOffset = number({
  id: 'focus.measuredCausticOffset',
  name: 'z of the caustic’s zero',
  symbol: 'z_{\\text{table},0}',
  unit: 'm',
  display: 'mm',
  about:
    'Where the zero of the table’s z lies, from the focal plane of the lens, positive behind it; the table’s z grows along the light.',
  initial: 0,
  range: { min: -10, max: 10 },
  typical: [-1e-3, 1e-3],
});

/** Places from the focal plane of the lens, ascending, and the radii there; of one axis alone `radiusX` and `radiusY` are empty. */
export function pointsOfCaustic({ z, diameter, diameterY }: NamedFocusCaustic, offset: number) {
  const order = [...z.keys()].sort((a, b) => z[a]! - z[b]!);
  const column = (value: (i: number) => number) => Float64Array.from(order, value);
  const both = diameterY.length > 0;
  const mean = (i: number) => (both ? Math.sqrt(diameter[i]!) * Math.sqrt(diameterY[i]!) : diameter[i]!) / 2;
  return {
    z: column((i) => z[i]! + offset),
    radius: column(mean),
    radiusX: both ? column((i) => diameter[i]! / 2) : new Float64Array(0),
    radiusY: both ? column((i) => diameterY[i]! / 2) : new Float64Array(0),
  };
}

export const focusCausticPoints = derived({
  id: 'focus.measuredCausticPoints',
  name: 'points of the measured caustic',
  symbol: '\\rho_i(z_i)',
  unit: { z: 'm', radius: 'm', radiusX: 'm', radiusY: 'm' },
  about:
    'Places from the focal plane of the lens and measured radii there, half the diameter of the table in its own meaning: of both axes the geometric mean, and each of them.',
  from: { table: focusCaustic, offset: focusCausticOffset },
  compute: ({ table, offset }) => {
    if (table === null) {
      throw new Problem('absent', 'No measured caustic of the focus has been given yet: choose a table.', {
        input: focusCaustic.id,
      });
    }
    return pointsOfCaustic(table, offset);
  },
  shownAs: ({ z }) => `${z.length} points`,
  formula: 'd_i/2,\\ z_i+z_{\\text{table},0}',
  source: 'definition',
});

/** Most planes that a prediction is worked out in: together 70 ms for M² = 1.2. */
const mostPlanes = 25;

/** B/f up to which a place counts as near the focus: its spot is as many times as wide as for a plate at d = f. */
const widestSpread = 100;

/** Indices of points within the range of the model, at most `mostPlanes` of them evenly over the list. */
function predictable(light: Light, z: Float64Array): number[] {
  const near = [...z.keys()].filter((i) => {
    try {
      // Behind a plate away from the focal plane ζ stays finite as far away as one likes; there is no spot any more.
      const spread = collinsB(light, z[i]!) / light.focalLength;
      return Math.abs(defocusAt(light, z[i]!)) <= furthestDefocus && spread <= widestSpread;
    } catch {
      return false;
    }
  });
  if (near.length <= mostPlanes) return near;
  return Array.from(
    { length: mostPlanes },
    (_, k) => near[Math.round((k * (near.length - 1)) / (mostPlanes - 1))]!,
  );
}

export const focusCausticPrediction = derived({
  id: 'focus.measuredCausticPrediction',
  name: 'predicted radii at the places measured',
  symbol: '\\rho(z_i)',
  unit: { z: 'm', radius: 'm', measured: 'm' },
  about:
    'Radius of the predicted spot in the meaning of the table, with the measured one beside it, at the places within twelve Rayleigh lengths of the focus, at 25 of them where there are more.',
  from: { points: focusCausticPoints, meaning: focusCausticMeaning, light },
  compute: ({ points, meaning, light }) => {
    const used = predictable(light, points.z);
    if (used.length === 0) {
      throw new Problem(
        'outside',
        `No place of the measured caustic lies within ${furthestDefocus} Rayleigh lengths of the focus. Type where the zero of its z lies, or check its unit.`,
        { input: focusCausticOffset.id },
      );
    }
    const z = Float64Array.from(used, (i) => points.z[i]!);
    return {
      z,
      radius: spotRadiiAt(light, z, meaning),
      measured: Float64Array.from(used, (i) => points.radius[i]!),
    };
  },
  shownAs: ({ z }) => `${z.length} radii`,
  formula: '\\rho(z_i)',
  source: 'collins1970',
});

export const focusCausticExcess = derived({
  id: 'focus.measuredCausticExcess',
  name: 'measured against predicted radius',
  symbol: '\\overline{\\epsilon}',
  unit: '1',
  display: '%',
  digits: 2,
  zeroBelow: 1e-5,
  about:
    'Mean over the places of measured over predicted radius, less 1: positive where the focus is wider than predicted.',
  from: { prediction: focusCausticPrediction },
  compute: ({ prediction }) => mean(differences(prediction)),
  formula: '\\overline{\\rho_i/\\rho(z_i)}-1',
  source: 'definition',
});

export const focusCausticScatter = derived({
  id: 'focus.measuredCausticDeviation',
  name: 'deviation of the measured caustic',
  symbol: '\\epsilon_\\text{rms}',
  unit: '1',
  display: '%',
  digits: 2,
  zeroBelow: 1e-5,
  about: 'Root mean square over the places of measured over predicted radius, less 1.',
  from: { prediction: focusCausticPrediction },
  // hypot: squares of what a damaged file holds overflow.
  compute: ({ prediction }) => {
    const apart = differences(prediction);
    return Math.hypot(...apart) / Math.sqrt(apart.length);
  },
  formula: '\\sqrt{\\overline{(\\rho_i/\\rho(z_i)-1)^2}}',
  source: 'definition',
});

function differences({
  radius,
  measured,
}: {
  readonly radius: Float64Array;
  readonly measured: Float64Array;
}) {
  return measured.map((value, i) => value / radius[i]! - 1);
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
