import { takenAsGaussian } from '../lib/design/takenAsGaussian.ts';
import type { ValueOf } from '../lib/graph/quantity.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { niceEnd } from '../lib/numerics/niceEnd.ts';
import { largest, micro, squaredDiameter } from './columns.ts';
import { type Block, type FigureSpec, figure, type SeriesSpec } from './document.ts';
import { prose, says } from './prose.ts';
import { energyText, lengthText } from './shortTexts.ts';

type Taken = ValueOf<typeof takenAsGaussian>;
type Fit = Taken['narrow'];

/** Thresholds nearer than this part count as right: less than a careful table of marks leaves open. */
const right = 0.03;

const times = (factor: number) => `${formatNumber(factor, 2)} times`;

/** How wrong a Gaussian's straight line is on marks of this plane. */
export const takenAsGaussianSaid = says({ taken: takenAsGaussian }, ({ taken: { narrow, wide } }) => {
  const factors = [narrow.fluenceFactor, wide.fluenceFactor];
  const off = Math.max(...factors.map((factor) => Math.abs(Math.log(factor))));
  const who = `Whoever draws a straight line through marks of this plane and reads it as that of a Gaussian`;
  const told = `${times(narrow.fluenceFactor)} the true one and a 1/e² radius of ${lengthText(narrow.beamRadius)} from energies up to ${narrow.upTo} times the least that marks, and ${times(wide.fluenceFactor)} and ${lengthText(wide.beamRadius)} from energies up to ${wide.upTo} times`;
  if (off < right) return `${who} gets the threshold nearly right: ${told}.`;
  const apart = Math.abs(Math.log(factors[0]! / factors[1]!)) > right;
  const why = apart
    ? ' The same marks, and the answer depends on which energies one happened to choose.'
    : ' The two nearly agree, and both are wrong: agreement does not show that a model is right.';
  return `${who} gets a threshold fluence of ${told}, although no mark was read wrongly.${why}`;
});

/** The line of a fit, D² in µm², from where it begins to the end of the chart. */
function lineOf({ energyFactor, beamRadius }: Fit, { startEnergy, energies }: Taken) {
  const begin = energyFactor * startEnergy;
  const end = energies.at(-1)!;
  return {
    x: Float64Array.of(begin, end).map((E) => E * micro),
    y: Float64Array.of(0, 2 * beamRadius ** 2 * Math.log(end / begin) * micro * micro),
  };
}

/** Squared diameters of the predicted marks against the energy, and the lines through them. */
export const takenAsGaussianFigure = figure({
  id: 'taken-as-gaussian',
  needs: [takenAsGaussian],
  from: { taken: takenAsGaussian },
  view: ({ taken }): FigureSpec => {
    const { startEnergy, energies, areas, narrow, wide } = taken;
    const lines: SeriesSpec[] = [
      { label: `line through marks up to ${narrow.upTo} times`, role: 'second', ...lineOf(narrow, taken) },
      { label: `line through marks up to ${wide.upTo} times`, role: 'third', ...lineOf(wide, taken) },
    ];
    const curve = { x: energies.map((E) => E * micro), y: areas.map(squaredDiameter) };
    const starts = [startEnergy, ...[narrow, wide].map(({ energyFactor }) => energyFactor * startEnergy)];
    const least = energyText(startEnergy);
    return {
      title: 'Predicted marks of this plane, read as those of a Gaussian',
      x: {
        label: 'pulse energy, where it is measured',
        unit: 'µJ',
        domain: [0.8 * Math.min(...starts) * micro, energies.at(-1)! * micro],
        logarithmic: true,
      },
      y: {
        label: 'D², diameter of a disc with the marked area, squared',
        unit: 'µm²',
        domain: [0, niceEnd(1.05 * largest(curve.y, ...lines.map(({ y }) => y)))],
      },
      series: [{ label: 'predicted marks', role: 'main', ...curve }, ...lines],
      marks: [
        {
          kind: 'vertical',
          x: startEnergy * micro,
          label: `least energy that marks, ${least}`,
          role: 'today',
        },
      ],
      summary: `Marks begin at ${least}; the straight lines begin at ${[narrow, wide].map(({ energyFactor }) => energyText(energyFactor * startEnergy)).join(' and ')}.`,
    };
  },
});

/** What becomes of a Gaussian's fit behind the plate. */
export const takenAsGaussianBlocks: readonly Block[] = [
  {
    kind: 'prose',
    id: 'taken-as-gaussian-said',
    needs: [takenAsGaussian],
    prose: prose`${takenAsGaussianSaid} A beam radius that comes out of such a line is none of this spot either. Measured marks are therefore compared below with the profile that is predicted for their plane.`,
  },
  takenAsGaussianFigure,
];
