import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { constantsAt, type OpticalConstants, sampleById, samplesOf } from '../materials/opticalConstants.ts';
import { Problem } from '../problem.ts';
import { fieldAzimuth, ripplePeriods, surfaceWave } from '../process/surfaceWave.ts';
import { wavelength } from './laser.ts';
import { material } from './material.ts';
import { micrometre } from './plate.ts';
import {
  ambientIndex,
  constantsSource,
  incidence,
  incidenceDirection,
  polarisation,
  polarisationAngle,
  typedExtinction,
  typedIndexOfSurface,
} from './rippleInputs.ts';

export const rippleSample = derived({
  id: 'ripples.sample',
  name: 'sample whose optical constants count',
  symbol: '\\text{sample}',
  unit: 'none',
  about: 'Key of the measured sample whose optical constants count; empty where they are typed.',
  from: { material, source: constantsSource },
  compute: ({ material, source }): string => {
    if (source === 'typed') return '';
    if (source !== 'material') return source;
    const first = samplesOf(material)[0];
    if (first) return first.id;
    throw new Problem(
      'absent',
      'No optical constants are kept for this material. Choose a sample that comes near it, or type n and k. For heat it is enough to type the absorptance, and with it the thermal values where none are kept.',
      { input: constantsSource.id, value: material },
    );
  },
  shownAs: (id) => (id === '' ? 'typed' : sampleById(id).name),
  formula: '\\text{first sample of the material}',
  source: 'chosen',
});

export const constantsOfSurface = derived({
  id: 'ripples.constants',
  name: 'optical constants of the workpiece',
  symbol: 'n+ik',
  unit: { n: '1', k: '1' },
  about:
    'Real and imaginary part of the refractive index at the laser’s wavelength, of the cold, fresh surface.',
  from: { sample: rippleSample, wavelength, micrometre, n: typedIndexOfSurface, k: typedExtinction },
  compute: ({ sample, wavelength, micrometre, n, k }): OpticalConstants =>
    sample === '' ? { n, k } : constantsAt(sample, (1e-6 * wavelength) / micrometre),
  enteredFor: ({ sample }) => ({ keys: sample === '' ? ['sample', 'n', 'k'] : ['sample', 'wavelength'] }),
  shownAs: ({ n, k }) => `${n.toPrecision(3)} + ${k.toPrecision(3)}i`,
  formula: '\\text{linear between rows}',
  source: 'chosen',
  sourceFor: ({ sample }) => (sample === '' ? undefined : sampleById(sample).source),
});

export const waveOnSurface = derived({
  id: 'ripples.surfaceWave',
  name: 'wave along the surface',
  symbol: '\\eta',
  unit: { index: '1', damping: '1', bound: 'none', permittivity: { re: '1', im: '1' } },
  about: 'Index of a wave along the boundary of workpiece and ambient, and whether it is bound to it.',
  from: { constants: constantsOfSurface, ambient: ambientIndex },
  compute: ({ constants, ambient }) => surfaceWave(constants, ambient),
  shownAs: ({ index, damping }) => `${index.toFixed(4)} + ${damping.toFixed(4)}i`,
  formula: '\\sqrt{\\frac{\\varepsilon\\varepsilon_\\text{d}}{\\varepsilon+\\varepsilon_\\text{d}}}',
  source: 'sipe1983',
});

export const boundWave = derived({
  id: 'ripples.boundWave',
  name: 'whether a wave is bound to the surface',
  symbol: '\\operatorname{Re}\\varepsilon<-\\varepsilon_\\text{d}',
  unit: 'none',
  about: 'True where the real part of the permittivity is low enough for a wave bound to the surface.',
  from: { wave: waveOnSurface },
  compute: ({ wave }): boolean => wave.bound,
  shownAs: (bound) => (bound ? 'yes' : 'no'),
  formula: '\\operatorname{Re}\\varepsilon<-\\varepsilon_\\text{d}',
  source: 'sipe1983',
});

export const waveVectorAzimuth = derived({
  id: 'ripples.azimuth',
  name: 'field against the plane of incidence',
  symbol: '\\psi',
  unit: 'rad',
  display: 'deg',
  about:
    'Angle on the tilted surface between the plane of incidence and the electric field along the surface, for linear polarisation; of ripples on metals the wave vector lies along it.',
  from: { angle: polarisationAngle, plane: incidenceDirection, incidence },
  compute: ({ angle, plane, incidence }) => fieldAzimuth(angle - plane, incidence),
  formula: '\\arctan\\frac{\\tan(\\alpha_E-\\varphi_\\theta)}{\\cos\\theta}',
  source: 'scaling',
});

export const countedAzimuth = derived({
  id: 'ripples.countedAzimuth',
  name: 'direction that the period is told for',
  symbol: '\\psi_\\Lambda',
  unit: 'rad',
  display: 'deg',
  about:
    'Angle of the wave vector against the plane of incidence for which the period is told: along the field for linear polarisation, across the plane for those that turn through all directions.',
  from: { polarisation, azimuth: waveVectorAzimuth },
  compute: ({ polarisation, azimuth }) => (polarisation === 'linear' ? azimuth : Math.PI / 2),
  formula: '\\psi\\ \\text{or}\\ 90°',
  source: 'chosen',
});

export const ripplePeriodPair = derived({
  id: 'ripples.periods',
  name: 'both periods of the ripples',
  symbol: '\\Lambda_\\pm',
  unit: { short: 'm', long: 'm' },
  about:
    'Periods from the wave that runs against the light, the shorter, and from the one that runs with it, the longer; alike at normal incidence and for s polarisation.',
  from: { wavelength, wave: waveOnSurface, incidence, azimuth: countedAzimuth },
  compute: ({ wavelength, wave, incidence, azimuth }) =>
    ripplePeriods(wavelength, wave.index, incidence, azimuth),
  shownAs: ({ short, long }) =>
    `${formatReadable(short, 'm', 'nm', 4)} and ${long === null ? 'none' : formatReadable(long, 'm', 'nm', 4)}`,
  formula:
    '\\frac{\\lambda}{\\sqrt{(\\operatorname{Re}\\eta)^2-\\sin^2\\theta\\sin^2\\psi}\\pm\\sin\\theta\\cos\\psi}',
  source: 'sipe1983',
});

const noWave =
  'No wave is bound to this surface: the formula still returns a number near the wavelength, and it predicts nothing.';

/** What must be said beside a period. */
function periodNote({
  wave,
  incidence,
  polarisation,
}: {
  wave: { bound: boolean };
  incidence: number;
  polarisation: string;
}) {
  const notes = [
    ...(wave.bound ? [] : [noWave]),
    ...(polarisation === 'circular'
      ? ['Circular polarisation leaves no straight ripples; this is a distance of dots at most.']
      : []),
    ...(polarisation !== 'linear' && incidence > 0
      ? [
          'At oblique incidence the period changes around the spot; this is the one across the plane of incidence.',
        ]
      : []),
  ];
  return notes.join(' ') || undefined;
}

const said = { wave: waveOnSurface, incidence, polarisation };

export const ripplePeriod = derived({
  id: 'ripples.period',
  name: 'period of the ripples, as modelled',
  symbol: '\\Lambda',
  unit: 'm',
  display: 'nm',
  digits: 4,
  about:
    'Distance of the ridges of near-wavelength ripples in the surface-wave model, the shorter one where there are two. Measured periods are usually shorter.',
  from: { periods: ripplePeriodPair, ...said },
  compute: ({ periods }) => periods.short,
  enteredFor: () => ({ keys: ['periods'] }),
  valid: periodNote,
  formula: '\\Lambda_+',
  source: 'sipe1983',
});

export const longRipplePeriod = derived({
  id: 'ripples.longPeriod',
  name: 'longer period of the ripples, as modelled',
  symbol: '\\Lambda_-',
  unit: 'm',
  display: 'nm',
  digits: 4,
  about:
    'Distance of the ridges from the wave that runs with the light; at normal incidence that of the other.',
  from: { periods: ripplePeriodPair, ...said },
  compute: ({ periods: { long } }) => {
    if (long !== null) return long;
    throw new Problem(
      'absent',
      'The light runs along the surface as fast as the wave: no ripples come from the wave that runs with it. Lower the angle of incidence.',
      { input: incidence.id },
    );
  },
  enteredFor: () => ({ keys: ['periods'] }),
  valid: periodNote,
  formula: '\\Lambda_-',
  source: 'sipe1983',
});
