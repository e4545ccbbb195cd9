import { derived, number } from '../graph/define.ts';
import { wenzelAngle as filled, cassieAngle as onAir, sinusoidRoughness } from '../process/wetting.ts';
import { ripplePeriod } from './ripples.ts';

export const rippleDepth = number({
  id: 'ripples.depth',
  name: 'depth of the ripples',
  symbol: 'h',
  unit: 'm',
  display: 'nm',
  about: 'Height of the ridges over the valleys between, as measured by a force microscope or in a section.',
  initial: 200e-9,
  range: { min: 0, max: 20e-6 },
  typical: [50e-9, 1e-6],
});

export const flatAngle = number({
  id: 'ripples.flatAngle',
  name: 'contact angle of the flat surface',
  symbol: '\\theta_\\text{Y}',
  unit: 'rad',
  display: 'deg',
  about:
    'Contact angle of the liquid on a smooth surface of the same material in the same state (Young’s angle): below 90° it wets, above it does not.',
  initial: (75 * Math.PI) / 180,
  range: { min: 0, max: Math.PI },
  typical: [Math.PI / 6, (2 * Math.PI) / 3],
});

export const solidFraction = number({
  id: 'ripples.solidFraction',
  name: 'part of the drop that touches the ridges',
  symbol: 'f_\\text{s}',
  unit: '1',
  display: '%',
  about: 'Part of the base of a drop that rests on solid where air stays in the valleys; estimated.',
  initial: 0.5,
  range: { min: 0, above: true, max: 1 },
  typical: [0.05, 0.8],
});

export const rippleRoughness = derived({
  id: 'ripples.roughness',
  name: 'roughness factor of the ripples',
  symbol: 'r',
  unit: '1',
  digits: 3,
  about:
    'Estimate: true area over flat area for ridges of a sinusoidal profile with the depth typed and the period of the model.',
  from: { depth: rippleDepth, period: ripplePeriod },
  compute: ({ depth, period }) => sinusoidRoughness(depth, period),
  formula:
    '\\frac{1}{\\Lambda}\\int_0^\\Lambda\\sqrt{1+(\\tfrac{\\pi h}{\\Lambda}\\cos\\tfrac{2\\pi x}{\\Lambda})^2}\\,\\mathrm{d}x',
  source: 'definition',
});

export const wenzelAngle = derived({
  id: 'ripples.wenzelAngle',
  name: 'contact angle with the valleys filled',
  symbol: '\\theta_\\text{W}',
  unit: 'rad',
  display: 'deg',
  digits: 3,
  about:
    'Estimate after Wenzel for a liquid that fills the valleys: roughness strengthens what the flat surface does. Along and across the ridges real drops differ.',
  from: { flat: flatAngle, roughness: rippleRoughness },
  compute: ({ flat, roughness }) => filled(flat, roughness),
  valid: ({ flat, roughness }) =>
    Math.abs(roughness * Math.cos(flat)) > 1
      ? 'r cos θ goes beyond 1: the estimate ends here, at a drop that spreads or stands off wholly.'
      : undefined,
  formula: '\\arccos(r\\cos\\theta_\\text{Y})',
  source: 'wenzel1936',
});

export const cassieAngle = derived({
  id: 'ripples.cassieAngle',
  name: 'contact angle with air in the valleys',
  symbol: '\\theta_\\text{CB}',
  unit: 'rad',
  display: 'deg',
  digits: 3,
  about:
    'Estimate after Cassie and Baxter for a drop that rests on the ridges with air beneath; on a surface that wets, the air seldom stays.',
  from: { flat: flatAngle, solid: solidFraction },
  compute: ({ flat, solid }) => onAir(flat, solid),
  valid: ({ flat }) =>
    flat <= Math.PI / 2
      ? 'The flat surface wets: on ripples alone the liquid mostly fills the valleys, and this angle is not reached.'
      : undefined,
  formula: '\\arccos(f_\\text{s}(\\cos\\theta_\\text{Y}+1)-1)',
  source: 'cassie1944',
});
