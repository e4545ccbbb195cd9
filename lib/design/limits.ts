import { derived } from '../graph/define.ts';
import { convergenceOf, paraxialError, paraxialNote } from '../optics/paraxial.ts';
import { peakPower } from '../optics/pulse.ts';
import { light } from './focus.ts';
import { pulseDuration } from './laser.ts';
import { peakFluence } from './spot.ts';
import { unshapedPeakFluence } from './unshaped.ts';

export const convergence = derived({
  id: 'lens.convergence',
  name: 'convergence behind the lens',
  symbol: '\\sin\\theta',
  unit: '1',
  digits: 3,
  about:
    'Sine of the half-angle at which the edge of the beam (1/e² radius, or the stop where that is smaller) converges.',
  from: { light },
  compute: ({ light }) => convergenceOf(light),
  valid: ({ light }) => paraxialNote(convergenceOf(light)),
  formula: '\\min(w,R)/f',
  source: 'definition',
});

export const modelError = derived({
  id: 'lens.paraxialError',
  name: 'error of the paraxial model',
  symbol: '\\epsilon',
  unit: '1',
  display: '%',
  digits: 2,
  about: 'Order of the relative error of irradiances that comes from taking the beam as paraxial and scalar.',
  from: { sine: convergence },
  compute: ({ sine }) => paraxialError(sine),
  formula: '\\tfrac12\\sin^2\\theta',
  source: 'richards1959',
});

export const peakIrradianceOnWorkpiece = derived({
  id: 'spot.peakIrradiance',
  name: 'peak irradiance on the workpiece',
  symbol: 'I_\\text{peak}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the workpiece with the plate, Gaussian pulse, incident.',
  from: { fluence: peakFluence, tau: pulseDuration },
  compute: ({ fluence, tau }) => peakPower(fluence, tau),
  formula: '0.9394\\,F_\\text{peak}/\\tau',
  source: 'definition',
});

export const unshapedPeakIrradiance = derived({
  id: 'unshaped.spot.peakIrradiance',
  name: 'peak irradiance on the workpiece without the step',
  symbol: 'I_\\text{u,peak}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance on the workpiece with the plate taken out, Gaussian pulse, incident.',
  from: { fluence: unshapedPeakFluence, tau: pulseDuration },
  compute: ({ fluence, tau }) => peakPower(fluence, tau),
  formula: '0.9394\\,F_\\text{u,peak}/\\tau',
  source: 'definition',
});
