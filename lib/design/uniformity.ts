import { derived } from '../graph/define.ts';
import type { Derived } from '../graph/quantity.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { collinsB, type Light } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import { lineDose } from '../process/lineDose.ts';
import { light, workpieceZ } from './focus.ts';
import { asked, unshapedAsked } from './marks.ts';
import { stop } from './plate.ts';
import { spotDiameter, unshapedSpotDiameter } from './pulsesOnPlace.ts';
import { lineSpacing, pulseSpacing } from './scanInputs.ts';

/** Lines and pulses further apart than so many spot diameters are single, not a field. */
const singleFrom = 10;

/** Throws where a spacing leaves single lines or pulses of a spot of `diameter`. */
export function requireField(spacing: number, diameter: number, of: 'lines' | 'pulses'): void {
  if (spacing > singleFrom * diameter) {
    const [what, input] = of === 'lines' ? ['lines', 'scan.lineSpacing'] : ['pulses', 'scan.speed'];
    throw new Problem(
      'outside',
      `The ${what} lie ${formatReadable(spacing, 'm', 'auto:m', 3)} apart, more than ${singleFrom} diameters of the spot of ${formatReadable(diameter, 'm', 'um', 3)}: they are single, and no field that could be even. Bring them closer.`,
      {
        input,
        value: formatReadable(spacing, 'm', 'auto:m', 3),
        allowed: `up to ${singleFrom} spot diameters`,
      },
    );
  }
}

/** How uneven a wide field is, for one of the two beams. */
function unevennessOf(before: '' | 'unshaped.', spot: Derived<Spot>, diameter: Derived<number>) {
  const [words, mark, plate] =
    before === '' ? ['', '', ''] : [' without the step', '_\\text{u}', ', with the plate taken out'];
  const modulation = derived({
    id: `${before}scan.modulation`,
    name: `modulation of the accumulated fluence across the lines${words}`,
    symbol: `m${mark}`,
    unit: '1',
    display: '%',
    digits: 3,
    about: `Highest less lowest accumulated fluence across the lines over their sum, in a wide field, pulses dense along the lines${plate}: 0\u202f% is even, 100\u202f% leaves nothing between the lines. More passes along the same lines change nothing.`,
    from: { spot, spacing: lineSpacing, diameter },
    compute: ({ spot, spacing, diameter }) => {
      requireField(spacing, diameter, 'lines');
      return lineDose(spot, spacing).modulation;
    },
    formula: `\\frac{F_\\text{max}-F_\\text{min}}{F_\\text{max}+F_\\text{min}},\\ F/\\bar F=1+2\\sum_k M(2\\pi k/\\Delta y)\\cos(2\\pi k y/\\Delta y)`,
    source: 'integration',
  });
  const alongModulation = derived({
    id: `${before}scan.alongModulation`,
    name: `modulation of the accumulated fluence along a line${words}`,
    symbol: `m_{\\text{along}${mark === '' ? '' : ',u'}}`,
    unit: '1',
    display: '%',
    digits: 3,
    zeroBelow: 1e-6,
    about: `The same along the lines, from the spacing of the pulses, averaged across the lines${plate}.`,
    from: { spot, spacing: pulseSpacing, diameter },
    compute: ({ spot, spacing, diameter }) => {
      requireField(spacing, diameter, 'pulses');
      return lineDose(spot, spacing, Math.PI / 2).modulation;
    },
    formula: `\\frac{F_\\text{max}-F_\\text{min}}{F_\\text{max}+F_\\text{min}},\\ F/\\bar F=1+2\\sum_k M(2\\pi k/p)\\cos(2\\pi k x/p)`,
    source: 'integration',
  });
  return { modulation, alongModulation };
}

export const { modulation, alongModulation } = unevennessOf('', asked, spotDiameter);
export const { modulation: unshapedModulation, alongModulation: unshapedAlongModulation } = unevennessOf(
  'unshaped.',
  unshapedAsked,
  unshapedSpotDiameter,
);

/** Radius of a round stop, half-width of a square one. */
function halfWidthOfStop({ plate }: Light): number {
  return plate.kind === 'round' ? plate.zones.at(-1)!.outer : plate.stop;
}

export const noModulationBelow = derived({
  id: 'scan.noModulationBelow',
  name: 'line spacing below which nothing is modulated',
  symbol: '\\Delta y_0',
  unit: 'm',
  display: 'um',
  digits: 3,
  about:
    'Behind a stop the spot holds no detail finer than λB/(2R), R the radius of the stop: lines or pulses closer than that leave an even field, whatever the plate, the plane and M².',
  from: { light, z: workpieceZ, stop },
  compute: ({ light, z, stop }) => {
    if (stop !== 'open') return (light.wavelength * collinsB(light, z)) / (2 * halfWidthOfStop(light));
    throw new Problem(
      'absent',
      'Without a stop every line spacing leaves some modulation, however little. Give the plate a stop to have a spacing that leaves none.',
      { input: 'plate.stop', value: 'open' },
    );
  },
  formula: '\\frac{\\lambda B}{2R}=\\frac{\\pi w_0 B/f}{2R/w}',
  source: 'scaling',
});
