import { constant, derived } from '../graph/define.ts';
import { pulseDuration, wavelength } from './laser.ts';
import { spotDistance } from './scaleUpInputs.ts';
import { wholeSpots } from './scaleUpWork.ts';

export const lightSpeed = constant({
  id: 'scaleUp.lightSpeed',
  name: 'speed of light',
  symbol: 'c',
  unit: 'm/s',
  about: 'Speed of light in vacuum, exact by the definition of the metre.',
  value: 299792458,
  source: 'definition',
});

export const timeBandwidth = constant({
  id: 'scaleUp.timeBandwidth',
  name: 'time-bandwidth product of a Gaussian pulse',
  symbol: '\\tau\\Delta\\nu',
  unit: '1',
  about:
    'Least product of duration and bandwidth of a Gaussian pulse, both full widths at half maximum of the power: 2 ln 2/π = 0.441.',
  value: (2 * Math.LN2) / Math.PI,
  source: 'definition',
});

export const outermostSpot = derived({
  id: 'scaleUp.outermostSpot',
  name: 'way from the middle of the row to its last spot',
  symbol: 's_\\text{out}',
  unit: 'm',
  display: 'um',
  digits: 3,
  about:
    'Distance of the centre of the outermost spot from the middle of the row, where the splitter’s axis is.',
  from: { spots: wholeSpots, distance: spotDistance },
  compute: ({ spots, distance }) => ((spots - 1) / 2) * distance,
  formula: '\\frac{N-1}{2}s',
  source: 'definition',
});

export const splitterSmear = derived({
  id: 'scaleUp.splitterSmear',
  name: 'smear of the outermost spot behind a diffractive splitter',
  symbol: '\\Delta s',
  unit: 'm',
  display: 'um',
  digits: 2,
  about:
    'A diffractive splitter bends light in proportion to its wavelength, so that the bandwidth of the pulse, the least that its duration allows, draws the outermost spot out along the row: full width at half maximum. A splitter of mirrors or wedges does not.',
  from: { s: outermostSpot, wavelength, tau: pulseDuration, c: lightSpeed, product: timeBandwidth },
  compute: ({ s, wavelength, tau, c, product }) => (s * product * wavelength) / (c * tau),
  formula:
    's_\\text{out}\\frac{\\Delta\\lambda}{\\lambda}=s_\\text{out}\\,\\frac{\\tau\\Delta\\nu}{\\tau}\\,\\frac{\\lambda}{c}',
  source: 'definition',
});
