import { derived } from '../graph/define.ts';
import { samplesOf } from '../materials/opticalConstants.ts';
import { familyMap } from '../optics/familyMap.ts';
import { spaced } from '../optics/focusMaps.ts';
import { defocusAt, focusRadius as focusRadiusOf } from '../optics/light.ts';
import { Problem } from '../problem.ts';
import { incidenceCurves, periodCurve } from '../process/rippleCurves.ts';
import { spreadOf } from './familyMap.ts';
import { light, workpieceZ } from './focus.ts';
import { wavelength } from './laser.ts';
import { material } from './material.ts';
import { micrometre } from './plate.ts';
import { ambientIndex, incidence } from './rippleInputs.ts';
import { countedAzimuth, rippleSample, waveOnSurface } from './ripples.ts';

export const periodsByWavelength = derived({
  id: 'ripples.byWavelength',
  name: 'periods against the wavelength',
  symbol: '\\Lambda(\\lambda)',
  unit: { sample: 'none', wavelength: 'm', period: 'm', bound: 'none' },
  about:
    'Modelled periods of every sample measured of the material, and of the sample chosen, over the wavelengths from 250 to 1250 nm at which each was measured; the shorter ones where there are two.',
  from: {
    material,
    sample: rippleSample,
    micrometre,
    ambientIndex,
    incidence,
    azimuth: countedAzimuth,
  },
  compute: ({ material, sample, micrometre, ...falling }) => {
    const ids = new Set([...(sample === '' ? [] : [sample]), ...samplesOf(material).map(({ id }) => id)]);
    const metre = micrometre * 1e6;
    return [...ids].map((id) => {
      const curve = periodCurve(id, falling);
      return {
        ...curve,
        wavelength: curve.wavelength.map((at) => at * metre),
        period: curve.period.map((at) => at * metre),
      };
    });
  },
  shownAs: (curves) => `${curves.length} ${curves.length === 1 ? 'sample' : 'samples'}`,
  formula: '\\Lambda_i(\\lambda)',
  source: 'sipe1983',
});

export const periodsByIncidence = derived({
  id: 'ripples.byIncidence',
  name: 'periods against the angle of incidence',
  symbol: '\\Lambda(\\theta)',
  unit: { angle: 'rad', short: 'm', long: 'm', across: 'm' },
  about:
    'Modelled periods for p polarisation, of the wave that runs against the light and of the one with it, and for s polarisation, from 0 to 80°; a column ends where there is no such wave.',
  from: { wavelength, wave: waveOnSurface },
  compute: ({ wavelength, wave }) => incidenceCurves(wavelength, wave.index),
  shownAs: ({ angle }) => `${angle.length} angles`,
  formula:
    '\\frac{\\lambda}{\\operatorname{Re}\\eta\\pm\\sin\\theta},\\ \\frac{\\lambda}{\\sqrt{(\\operatorname{Re}\\eta)^2-\\sin^2\\theta}}',
  source: 'sipe1983',
});

/** Places along the surface to either side of the axis, drawn out to this many 1/e² radii of the unshaped beam there. */
const [places, reachInRadii] = [81, 3];

export const slantedCut = derived({
  id: 'ripples.slantedCut',
  name: 'cut through the family along the tilted workpiece',
  symbol: 'I(s)',
  unit: { place: 'm', slanted: '1', level: '1' },
  about:
    'Irradiance per surface along the plane of incidence of the tilted workpiece, against the distance s from the axis along the surface, with the plane changing along it, z + s sin θ; and as it would be if all of it lay in the plane of its middle. Relative to the axis of the unshaped, unclipped, M² = 1 beam in its focus.',
  from: { light, z: workpieceZ, incidence },
  compute: ({ light, z, incidence }) => {
    if (incidence === 0) throw notTilted();
    const [lower, along] = [Math.cos(incidence), Math.sin(incidence)];
    const wide = focusRadiusOf(light) * Math.hypot(1, defocusAt(light, z)) * spreadOf(light);
    const radii = spaced(0, reachInRadii * wide, places);
    const place = Float64Array.from({ length: 2 * places - 1 }, (_, i) => {
      const at = i - places + 1;
      return (Math.sign(at) * radii[Math.abs(at)]!) / lower;
    });
    const map = familyMap(
      light,
      place.map((s) => z + s * along),
      radii,
    );
    const across = (row: number) => lower * map[row * places + Math.abs(row - places + 1)]!;
    const middle = (places - 1) * places;
    return {
      place,
      slanted: place.map((_, i) => across(i)),
      level: place.map((_, i) => lower * map[middle + Math.abs(i - places + 1)]!),
    };
  },
  shownAs: ({ place }) => `${place.length} places`,
  formula: 'I(s\\cos\\theta,\\ z+s\\sin\\theta)\\cos\\theta',
  source: 'scaling',
  heavy: 'picture',
});

function notTilted(): Problem {
  return new Problem(
    'absent',
    'The workpiece is not tilted, so that all of it lies in one plane; set an angle of incidence.',
    { input: incidence.id },
  );
}
