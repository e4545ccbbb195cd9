import { constant, derived, picked } from '../graph/define.ts';
import { peakIrradiance, peakPower } from '../optics/pulse.ts';
import { Problem } from '../problem.ts';
import { expanderKind, lensBeam } from './expander.ts';
import { pulseDuration } from './laser.ts';
import { usedPulseEnergy } from './losses.ts';

/** Whether a beam comes to a focus between the lenses of an expander. */
export type FocusInside = 'focus' | 'none' | 'unknown';

const unknownInside = constant({
  id: 'expander.unknownInside',
  name: 'inside of an expander given by its magnification',
  symbol: '?',
  unit: 'none',
  about: 'A magnification alone does not tell whether the beam comes to a focus between the lenses.',
  value: 'unknown' as FocusInside,
  source: 'definition',
});

const lensesInside = derived({
  id: 'expander.lensesInside',
  name: 'focus between the two lenses',
  symbol: '\\text{between}',
  unit: 'none',
  about: 'Whether the beam comes to a focus between the two lenses.',
  from: { beam: lensBeam },
  compute: ({ beam }): FocusInside => (beam.internalFocusDiameter === undefined ? 'none' : 'focus'),
  formula: '0<-\\mathrm{Re}\\,q<s',
  source: 'kogelnik1966',
});

export const focusInside = picked({
  id: 'expander.focusInside',
  name: 'focus inside the expander',
  symbol: '\\text{inside}',
  unit: 'none',
  about:
    'Whether the beam comes to a focus between the lenses of the expander; unknown where only its magnification is given.',
  by: expanderKind,
  cases: { magnification: unknownInside, lenses: lensesInside },
  formula: '\\begin{cases} ? \\\\ \\text{between} \\end{cases}',
});

export const internalFocusIrradiance = derived({
  id: 'expander.internalFocusIrradiance',
  name: 'peak irradiance in the focus inside the expander',
  symbol: 'I_\\text{inside}',
  unit: 'W/m^2',
  display: 'W/cm^2',
  digits: 2,
  about:
    'Peak in time and space of the irradiance in the focus between the two lenses, Gaussian pulse, linear optics; air breaks down near 1e13 to 1e14 W/cm² (memory).',
  from: { beam: lensBeam, E: usedPulseEnergy, tau: pulseDuration },
  compute: ({ beam, E, tau }) => {
    if (beam.internalFocusDiameter !== undefined) {
      return peakIrradiance(peakPower(E, tau), beam.internalFocusDiameter / 2);
    }
    throw new Problem('absent', 'This expander has no focus between its lenses.', {
      input: 'expander.firstFocalLength',
    });
  },
  formula: '\\frac{2E}{\\pi w^2}\\cdot\\frac{0.9394}{\\tau}',
  source: 'integration',
});
