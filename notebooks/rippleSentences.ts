import { wavelength } from '../lib/design/laser.ts';
import { material } from '../lib/design/material.ts';
import { expectedPeriods, rippleDirection, sampleSpread } from '../lib/design/rippleDirection.ts';
import { ambientIndex, incidence, polarisation } from '../lib/design/rippleInputs.ts';
import {
  boundWave,
  constantsOfSurface,
  longRipplePeriod,
  ripplePeriod,
  ripplePeriodPair,
  rippleSample,
  waveOnSurface,
} from '../lib/design/ripples.ts';
import { formatNumber, formatReadable } from '../lib/graph/units.ts';
import { sampleById } from '../lib/materials/opticalConstants.ts';
import { ripplePeriods } from '../lib/process/surfaceWave.ts';
import { phrase, says } from './prose.ts';

const degree = Math.PI / 180;
/** Angles below this count as along or across. */
const little = 0.5 * degree;
/** Periods within this part of the wavelength are called near it. */
const nearby = 0.15;

/** The period in the model, and what to expect. */
export const periodSaid = says(
  {
    period: ripplePeriod,
    bound: boundWave,
    expected: expectedPeriods,
    pair: ripplePeriodPair,
    wavelength,
    ambient: ambientIndex,
    incidence,
  },
  ({ bound, pair: { short, long }, wavelength, ambient, incidence }) => {
    const usual = ambient === 1 && incidence === 0;
    const parted = long === null || long - short > 1e-4 * short;
    const model = parted
      ? long === null
        ? phrase`${ripplePeriod} from the wave that runs against the light; with it none can run`
        : phrase`${ripplePeriod} from the wave that runs against the light, and ${longRipplePeriod} from the one with it`
      : phrase`${ripplePeriod}`;
    if (!bound) {
      const near = Math.abs(short / wavelength - 1) < nearby ? ' is a number near the wavelength and' : '';
      const none = phrase`No wave is bound to this surface as it is when cold: the formula’s ${model}${near} predicts nothing. Ripples may come all the same, since the pulses themselves change the surface`;
      return usual ? phrase`${none}; measured ones would mostly be ${expectedPeriods}.` : phrase`${none}.`;
    }
    return usual
      ? phrase`The model gives a period of ${model}. Measured ones are mostly shorter: expect ${expectedPeriods}, and shorter ones as more pulses fall on a place.`
      : phrase`The model gives a period of ${model}. At normal incidence in air measured periods are mostly shorter; carried over to this tilt or ambient, where that has not been shown, it would be ${expectedPeriods}.`;
  },
  [longRipplePeriod],
);

/** Which way the ridges run. */
export const directionSaid = says(
  { kind: polarisation, direction: rippleDirection },
  ({ direction }) => {
    if (direction < little || direction > Math.PI - little)
      return phrase`The ridges run along the scan, at ${rippleDirection}.`;
    if (Math.abs(direction - Math.PI / 2) < little)
      return phrase`The ridges run across the scan, at ${rippleDirection} to it.`;
    return phrase`The ridges run at ${rippleDirection} to the scan, counter-clockwise.`;
  },
  [],
  'There is no one direction with this polarisation: circular leaves dots or short pieces, radial lays the ridges in rings about the centre of the spot, and azimuthal lays them outward like rays. A scan drags such rings and rays over one another.',
);

/** What the optical constants are, whose they are, and how far the samples lie apart. */
export const constantsSaid = says(
  { sample: rippleSample, constants: constantsOfSurface, spread: sampleSpread, of: material },
  ({ sample, spread: { periods, bound }, of }) => {
    const foreign = sample !== '' && of !== 'other' && sampleById(sample).material !== of;
    const whose =
      sample === ''
        ? phrase`n + ik = ${constantsOfSurface}, as typed`
        : phrase`n + ik = ${constantsOfSurface}, measured on ${sampleById(sample).name}${foreign ? phrase`: not the material of the workpiece, which is ${material}` : ''}`;
    if (periods.length < 2) return phrase`Here ${whose}.`;
    const [low, high] = [Math.min(...periods), Math.max(...periods)];
    const held = bound.filter((is) => is).length;
    const waves =
      held === bound.length
        ? 'each of them holds a bound wave'
        : held === 0
          ? 'none of them holds a bound wave'
          : `${held} of them ${held === 1 ? 'holds' : 'hold'} a bound wave and the others none: here the sample decides`;
    const [from, to] = [low, high].map((period) => formatReadable(period, 'm', 'nm', 4));
    const differ =
      from === to
        ? phrase`The ${String(periods.length)} samples of ${material} agree on ${to!}`
        : phrase`Samples differ: the ${String(periods.length)} samples of ${material} give ${from!} to ${to!}`;
    return phrase`Here ${whose}. ${differ}, and ${waves}.`;
  },
  [material],
);

/** What a tilt does; nothing where there is none. */
export const tiltSaid = says({ incidence, material }, ({ incidence: theta, material }) => {
  if (theta === 0)
    return 'The beam falls straight onto the workpiece. Tilted, the surface would get the fluence times cos θ over a footprint longer by 1/cos θ, and at every place it would meet another of the spots that follow one another along the beam.';
  const lower = phrase`Tilted by ${incidence}, the surface gets ${formatNumber(100 * Math.cos(theta), 3)}\u202f% of the fluence over a footprint ${formatNumber(1 / Math.cos(theta), 3)} times as long.`;
  return material === 'copper' && theta > 20 * degree
    ? phrase`${lower} On copper the plain model deviates strongly at such angles (Y. Fuentes-Edfuf et al., ACS Omega 4, 6939 (2019), abstract read): take none of these periods for granted.`
    : lower;
});

/** On a tilted surface light that is not linearly polarised holds both p and s: which period stands above, and which do not. */
export const bothPolarisationsSaid = says(
  { kind: polarisation, incidence, wavelength, wave: waveOnSurface },
  ({ kind, incidence: theta, wavelength, wave: { index } }) => {
    if (kind === 'linear' || theta === 0) return '';
    const { short, long } = ripplePeriods(wavelength, index, theta, 0);
    const nanometres = (period: number) => formatReadable(period, 'm', 'nm', 4);
    const along = long === null ? nanometres(short) : `${nanometres(short)} and ${nanometres(long)}`;
    return `With this polarisation the field turns through both: the period above is that of s, and p would give ${along}.`;
  },
);
