import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { constantsAt, samplesOf } from '../materials/opticalConstants.ts';
import { Problem } from '../problem.ts';
import { measuredRange } from '../process/ripplePoints.ts';
import { ripplePeriods, surfaceWave } from '../process/surfaceWave.ts';
import { wavelength } from './laser.ts';
import { material } from './material.ts';
import { micrometre } from './plate.ts';
import { ambientIndex, incidence, incidenceDirection, polarisation } from './rippleInputs.ts';
import { countedAzimuth, waveOnSurface, waveVectorAzimuth } from './ripples.ts';

/** An angle of a line, 0 to π. */
export function lineAngle(angle: number): number {
  const turned = angle % Math.PI;
  return turned < 0 ? turned + Math.PI : turned;
}

export const rippleDirection = derived({
  id: 'ripples.direction',
  name: 'direction of the ridges',
  symbol: '\\beta',
  unit: 'rad',
  display: 'deg',
  about:
    'Direction in which the ridges run, against x, the direction of the scan: at right angles to the electric field along the surface; 0 to 180°. The wave vector, as a Fourier transform of a micrograph shows it, is at right angles to the ridges.',
  from: { polarisation, azimuth: waveVectorAzimuth, plane: incidenceDirection, wave: waveOnSurface },
  compute: ({ polarisation, azimuth, plane }) => {
    if (polarisation !== 'linear') throw noDirection(polarisation);
    return lineAngle(azimuth + plane + Math.PI / 2);
  },
  valid: ({ wave }) =>
    wave.bound
      ? undefined
      : 'No wave is bound to this surface; where ripples come by another way they may run otherwise.',
  enteredFor: () => ({ keys: ['azimuth', 'plane'] }),
  formula: '\\psi+\\varphi_\\theta+90°',
  source: 'bonse2020',
});

function noDirection(polarisation: string): Problem {
  const words: Readonly<Record<string, string>> = {
    circular: 'Circular polarisation leaves no straight ripples: dots or short pieces without a direction.',
    radial:
      'Radial polarisation turns the ridges around the centre of the spot, in rings: there is no one direction.',
    azimuthal:
      'Azimuthal polarisation makes the ridges run outward from the centre of the spot: there is no one direction.',
  };
  return new Problem('absent', words[polarisation]!, { input: 'laser.polarisation', value: polarisation });
}

export const barePeriods = derived({
  id: 'ripples.barePeriods',
  name: 'periods that the bare light would give',
  symbol: '\\Lambda_{0\\pm}',
  unit: { short: 'm', long: 'm' },
  about:
    'Periods of a wave along the surface that is as fast as the light in the ambient: the wavelength at normal incidence in air. Against the light and with it; alike where they are one.',
  from: { wavelength, ambient: ambientIndex, incidence, azimuth: countedAzimuth },
  compute: ({ wavelength, ambient, incidence, azimuth }) => {
    const { short, long } = ripplePeriods(wavelength, ambient, incidence, azimuth);
    return { short, long: long ?? short };
  },
  shownAs: ({ short, long }) =>
    `${formatReadable(short, 'm', 'nm', 4)} and ${formatReadable(long, 'm', 'nm', 4)}`,
  formula: '\\frac{\\lambda}{\\sqrt{n_\\text{a}^2-\\sin^2\\theta\\sin^2\\psi}\\pm\\sin\\theta\\cos\\psi}',
  source: 'sipe1983',
});

export const expectedPeriods = derived({
  id: 'ripples.expected',
  name: 'periods to be expected',
  symbol: '[\\Lambda_\\text{low},\\Lambda_\\text{high}]',
  unit: { low: 'm', high: 'm' },
  about:
    'Measured periods lie 5 to 30\u202f% below the wavelength at normal incidence in air. In another ambient and at other angles the same parts are taken of what the bare light would give, which is worked out here and not measured.',
  from: { bare: barePeriods, ambient: ambientIndex, incidence },
  compute: ({ bare: { short } }) => ({ low: measuredRange[0] * short, high: measuredRange[1] * short }),
  enteredFor: () => ({ keys: ['bare'] }),
  shownAs: ({ low, high }) => `${formatReadable(low, 'm', 'nm', 3)} to ${formatReadable(high, 'm', 'nm', 3)}`,
  valid: ({ ambient, incidence }) =>
    ambient === 1 && incidence === 0
      ? undefined
      : 'The range is published for normal incidence in air; here it is carried over.',
  formula: '[0.70,\\ 0.95]\\,\\Lambda_{0+}',
  source: 'bonse2020',
});

export const sampleSpread = derived({
  id: 'ripples.spread',
  name: 'periods of all samples of the material',
  symbol: '\\{\\Lambda_i\\}',
  unit: { samples: 'none', periods: 'm', bound: 'none' },
  about:
    'Modelled periods, the shorter ones, for every sample measured of the material at this wavelength, and whether a wave is bound to each.',
  from: {
    material,
    wavelength,
    micrometre,
    ambient: ambientIndex,
    incidence,
    azimuth: countedAzimuth,
  },
  compute: ({ material, wavelength, micrometre, ambient, incidence, azimuth }) => {
    const found = samplesOf(material).flatMap(({ id }) => {
      try {
        return [{ id, wave: surfaceWave(constantsAt(id, (1e-6 * wavelength) / micrometre), ambient) }];
      } catch (error) {
        // This sample was not measured at the wavelength.
        if (error instanceof Problem) return [];
        throw error;
      }
    });
    return {
      samples: found.map(({ id }) => id),
      periods: Float64Array.from(
        found,
        ({ wave }) => ripplePeriods(wavelength, wave.index, incidence, azimuth).short,
      ),
      bound: found.map(({ wave }) => wave.bound),
    };
  },
  shownAs: ({ samples }) => `${samples.length} ${samples.length === 1 ? 'sample' : 'samples'}`,
  formula: '\\Lambda(n_i+ik_i)',
  source: 'sipe1983',
});
