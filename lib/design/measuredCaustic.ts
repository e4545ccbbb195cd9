import { derived, file } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatNumber } from '../graph/units.ts';
import type { NamedCaustic } from '../measured/causticTable.ts';
import { fitCaustic } from '../optics/caustic.ts';
import type { CausticFit, CausticNote, Estimate } from '../optics/causticFit.ts';
import { compareWithOne } from '../optics/causticNotes.ts';
import { Problem } from '../problem.ts';
import { beamPropagationRatio, wavelength } from './laser.ts';
import { namingInput } from './namingInput.ts';

export const causticTable = file<NamedCaustic>({
  id: 'laser.causticTable',
  name: 'table of a caustic',
  symbol: '\\text{table}',
  unit: { name: 'none', z: 'm', diameter: 'm' },
  about:
    'Beam diameters (second-moment or 1/e²) at places along the beam, a column each with its unit, as in "z (mm); d (µm)"; columns of radii are doubled.',
  shownAs: ({ name, z }) => `${name}, ${z.length} places`,
});

/** The problem of a caustic without a table. */
export function noCaustic(): Problem {
  return new Problem(
    'absent',
    'No table of a caustic has been given yet: choose one, or take another source than the caustic.',
    { input: 'laser.causticTable' },
  );
}

const estimate = { value: 'm', uncertainty: 'm' } as const;

export const measuredCaustic = derived({
  id: 'laser.measuredCaustic',
  name: 'fit of the caustic',
  symbol: '\\text{caustic}',
  unit: {
    waistPosition: estimate,
    waistDiameter: estimate,
    rayleighLength: estimate,
    divergence: { value: 'rad', uncertainty: 'rad' },
    beamPropagationRatio: { value: '1', uncertainty: '1' },
    covariance: 'none',
    scatter: '1',
    spread: { points: '1', near: '1', far: '1' },
    notes: 'none',
  },
  about:
    'Hyperbola through the measured diameters, points weighted alike in proportion to their diameter; uncertainties follow from the scatter.',
  from: { table: causticTable, wavelength },
  compute: ({ table, wavelength }): CausticFit => {
    if (table === null) throw noCaustic();
    return namingInput('laser.causticTable', () => fitCaustic(table.z, table.diameter, wavelength));
  },
  formula: 'd^2(z)=a+bz+cz^2',
  source: 'iso11146',
});

interface FitQuantity {
  readonly id: string;
  readonly name: string;
  readonly symbol: string;
  readonly unit: string;
  readonly display?: string;
  readonly about: string;
  readonly formula: string;
  /** Kinds of note on the fit that tell against this number. */
  readonly doubts: readonly CausticNote['kind'][];
}

/** One number of the fit, and its standard uncertainty. */
function fitted(
  read: (fit: CausticFit) => Estimate,
  { doubts, ...definition }: FitQuantity,
): readonly [value: Derived<number>, uncertainty: Derived<number>] {
  const { id, name, symbol, about: _, formula: __, ...shown } = definition;
  const against = ['few-points', 'scatter-large', ...doubts];
  const value = derived({
    ...definition,
    from: { caustic: measuredCaustic },
    compute: ({ caustic }) => read(caustic).value,
    valid: ({ caustic }) => {
      const notes = caustic.notes.filter(({ kind }) => against.includes(kind));
      return notes.length === 0 ? undefined : notes.map(({ text }) => text).join(' ');
    },
    source: 'iso11146',
  });
  const uncertainty = derived({
    ...shown,
    id: `${id}Uncertainty`,
    name: `standard uncertainty of the ${name}`,
    symbol: `u(${symbol})`,
    digits: 2,
    about:
      'Standard uncertainty from the scatter of the points about the fit: g are the slopes of the number by a, b and c, V their covariance. Wavelength, places and the scale of the diameters count as exact.',
    from: { caustic: measuredCaustic },
    compute: ({ caustic }) => read(caustic).uncertainty,
    formula: '\\sqrt{g^\\mathsf{T}Vg},\\ V=\\mathrm{cov}(a,b,c)',
    source: 'jcgm100',
  });
  return [value, uncertainty];
}

export const [causticRatio, causticRatioUncertainty] = fitted((fit) => fit.beamPropagationRatio, {
  id: 'laser.causticRatio',
  name: 'M² of the caustic',
  symbol: 'M^2_\\text{fit}',
  unit: '1',
  about:
    'Beam propagation ratio as the fit gives it, for the laser’s wavelength; a lens without aberrations leaves it as it is. Scatter can bring it below 1, which no beam is.',
  formula: '\\frac{\\pi\\sqrt{4ac-b^2}}{8\\lambda}',
  doubts: ['far-from-waist', 'no-far-field', 'ratio-below-one'],
});

export const [causticWaistDiameter, causticWaistDiameterUncertainty] = fitted((fit) => fit.waistDiameter, {
  id: 'laser.causticWaistDiameter',
  name: 'waist diameter of the caustic',
  symbol: 'd_0',
  unit: 'm',
  display: 'um',
  about: 'Diameter in the waist of the measured caustic, 1/e² or second-moment as the table’s.',
  formula: '\\sqrt{\\frac{4ac-b^2}{4c}}',
  doubts: ['far-from-waist', 'waist-outside'],
});

export const [causticWaistPosition, causticWaistPositionUncertainty] = fitted((fit) => fit.waistPosition, {
  id: 'laser.causticWaistPosition',
  name: 'place of the caustic’s waist',
  symbol: 'z_0',
  unit: 'm',
  display: 'mm',
  about: 'Place of the waist on the z scale of the table, which grows along the light.',
  formula: '-\\frac{b}{2c}',
  doubts: ['waist-outside'],
});

export const [causticRayleighLength, causticRayleighLengthUncertainty] = fitted((fit) => fit.rayleighLength, {
  id: 'laser.causticRayleighLength',
  name: 'Rayleigh length of the caustic',
  symbol: 'z_{R,\\text{fit}}',
  unit: 'm',
  display: 'mm',
  about: 'Distance from the waist at which the measured beam is √2 wider; M² is in it.',
  formula: '\\frac{\\sqrt{4ac-b^2}}{2c}',
  doubts: ['far-from-waist', 'no-far-field'],
});

export const [causticDivergence, causticDivergenceUncertainty] = fitted((fit) => fit.divergence, {
  id: 'laser.causticDivergence',
  name: 'divergence of the caustic',
  symbol: '\\Theta',
  unit: 'rad',
  display: 'mrad',
  about: 'Full angle between opposite 1/e² (second-moment) edges far from the waist.',
  formula: '\\sqrt{c}',
  doubts: ['no-far-field'],
});

export const causticScatter = derived({
  id: 'laser.causticScatter',
  name: 'scatter about the caustic',
  symbol: 's_d',
  unit: '1',
  display: '%',
  digits: 2,
  about: 'Standard deviation of the measured diameters from the fitted ones, relative to the diameter.',
  from: { caustic: measuredCaustic },
  compute: ({ caustic }) => caustic.scatter,
  formula: '\\tfrac12\\sqrt{\\chi^2/(n-3)}',
  source: 'jcgm100',
});

/** The model of partial coherence is computed for what can be typed. */
const largestRatio = beamPropagationRatio.range.max;

export const causticModelRatio = derived({
  id: 'laser.causticModelRatio',
  name: 'M² of the caustic as the design takes it',
  symbol: 'M^2_\\text{caustic}',
  unit: '1',
  about:
    'The fitted M², or 1 where the fit lies below 1 by no more than twice its standard uncertainty; there is none where it lies further below or above 4.',
  from: { caustic: measuredCaustic },
  compute: ({ caustic: { beamPropagationRatio: ratio } }) => {
    const shown = `The caustic’s M² of ${formatNumber(ratio.value)} ± ${formatNumber(ratio.uncertainty, 2)}`;
    const parts = { input: 'laser.causticTable', allowed: `1 to ${largestRatio}` };
    const check = (mixed: string) =>
      `Check the wavelength, the units of both columns, and whether ${mixed}, or take the typed M².`;
    if (compareWithOne(ratio) === 'impossible') {
      const why = check('radii were given as diameters');
      throw new Problem('impossible', `${shown} is below 1, which no beam can be. ${why}`, parts);
    }
    if (ratio.value > largestRatio) {
      const why = check('diameters were given as radii');
      throw new Problem('outside', `${shown} is above ${largestRatio}, where this model ends. ${why}`, parts);
    }
    return Math.max(1, ratio.value);
  },
  valid: ({ caustic: { beamPropagationRatio: ratio } }) =>
    ratio.value < 1
      ? `The fit gives ${formatNumber(ratio.value)} ± ${formatNumber(ratio.uncertainty, 2)}, which agrees with 1; no beam is below 1, so the design takes 1.`
      : undefined,
  formula: '\\max(1, M^2_\\text{fit})',
  source: 'definition',
});
