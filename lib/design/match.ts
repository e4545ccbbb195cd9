import { choice, constant, derived, picked } from '../graph/define.ts';
import { formatNumber } from '../graph/units.ts';
import { darkestShare, stepRatioFor } from '../optics/matching.ts';
import { Problem } from '../problem.ts';
import { plateBeamDiameter } from './expander.ts';
import { apertureDiameter, stepDiameter, stepOutsideStop, stepPhase, stop } from './plate.ts';
import { usedBeamDiameter } from './rawBeam.ts';

export const stepRatio = derived({
  id: 'match.stepRatio',
  name: 'step ratio',
  symbol: '\\kappa',
  unit: '1',
  about: 'Step radius over 1/e² beam radius at the plate, a/w; 1 when step and beam have equal diameters.',
  from: { step: stepDiameter, beam: plateBeamDiameter },
  compute: ({ step, beam }) => step / beam,
  formula: '\\frac{2a}{2w}',
  source: 'definition',
});

export const stopRatio = derived({
  id: 'match.stopRatio',
  name: 'stop ratio',
  symbol: 'R/w',
  unit: '1',
  about:
    'Stop radius over 1/e² beam radius at the plate, R/w (the literature’s truncation ratio is usually w/R).',
  from: { stop, aperture: apertureDiameter, beam: plateBeamDiameter },
  compute: ({ stop, aperture, beam }) => {
    if (stop === 'open') {
      throw new Problem('absent', 'Without a stop there is no stop ratio; choose a round stop to have one.', {
        input: 'plate.stop',
      });
    }
    return aperture / beam;
  },
  formula: '\\frac{2R}{2w}',
  source: 'definition',
});

export const goal = choice({
  id: 'match.goal',
  name: 'what to match for',
  symbol: '\\text{goal}',
  about:
    'Equal diameters of beam and step (common practice), the darkest axis in the focus, or the flattest focus.',
  initial: 'equal',
  options: {
    equal: 'beam as wide as the step',
    dark: 'dark centre in the focus',
    flattest: 'flattest focus',
  },
});

const matchUnits = { unit: '1', source: 'ustinov2017' } as const;

export const specialRatios = derived({
  id: 'match.specialRatios',
  name: 'special step ratios',
  symbol: '\\{\\kappa_\\text{dark},\\kappa_\\text{flat}\\}',
  unit: 'none',
  about:
    'Step ratios of the dark centre and of the flattest focus with the stop radius kept; null where there is none.',
  from: { phase: stepPhase, stop, aperture: apertureDiameter, step: stepDiameter },
  compute: ({ phase, stop, aperture, step }) => {
    const stopPerStep = stop === 'open' ? undefined : aperture / step;
    if (stopPerStep !== undefined && stopPerStep <= 1) throw stepOutsideStop(step, aperture);
    return {
      dark: stepRatioFor('dark', phase, stopPerStep) ?? null,
      flattest: stepRatioFor('flattest', phase, stopPerStep) ?? null,
    };
  },
  shownAs: ({ dark, flattest }) => {
    const show = (ratio: number | null) => (ratio === null ? 'none' : formatNumber(ratio));
    return `dark ${show(dark)}, flattest ${show(flattest)}`;
  },
  formula: '\\kappa(\\varphi,R/a)',
  source: 'ustinov2017',
});

export const darkRatio = derived({
  ...matchUnits,
  id: 'match.darkRatio',
  name: 'dark-centre ratio',
  symbol: '\\kappa_\\text{dark}',
  about:
    'Step ratio at which the axis is darkest in the focus, with the stop radius kept; fully dark for half a wave.',
  from: { specialRatios, stop },
  compute: ({ specialRatios, stop }) => {
    if (specialRatios.dark !== null) return specialRatios.dark;
    if (stop === 'open') {
      throw new Problem(
        'absent',
        'With this plate no step ratio between 0.05 and 3 makes the centre of the focus dark. Choose a phase nearer to half a wave.',
        { input: 'plate.designPhase' },
      );
    }
    throw new Problem(
      'absent',
      'With this plate and stop no step ratio between 0.05 and 3 makes the centre of the focus exactly dark: the light through the step always outweighs the light around it, or the step is far from half a wave. Choose a stop of more than 1.42 step diameters, or a phase nearer to half a wave.',
      { input: 'plate.apertureDiameter' },
    );
  },
  formula: '2e^{-\\kappa^2} = 1+e^{-(\\kappa R/a)^2}\\ \\text{for}\\ \\varphi=\\pi',
});

export const darkestAxis = derived({
  ...matchUnits,
  id: 'match.darkestAxis',
  name: 'darkest axis within reach',
  symbol: 's_\\text{min}',
  display: '%',
  digits: 3,
  zeroBelow: 1e-12,
  about:
    'Least irradiance that any step ratio leaves on the axis in the focus, relative to the same beam and stop without a step; coherent light.',
  from: { phase: stepPhase, stop, aperture: apertureDiameter, step: stepDiameter },
  compute: ({ phase, stop, aperture, step }) => {
    const share = stop === 'open' ? 0 : (step / aperture) ** 2;
    if (share >= 1) throw stepOutsideStop(step, aperture);
    return darkestShare(phase, share);
  },
  formula: '1-2s(1-s)(1-\\cos\\varphi),\\ s=\\max(\\tfrac12,(a/R)^2)',
  source: 'collins1970',
});

export const flattestRatio = derived({
  ...matchUnits,
  id: 'match.flattestRatio',
  name: 'flattest ratio',
  symbol: '\\kappa_\\text{flat}',
  about:
    'Largest step ratio at which the irradiance in the focus has no curvature on the axis, with the stop radius kept.',
  from: { specialRatios, stop },
  compute: ({ specialRatios, stop }) => {
    if (specialRatios.flattest !== null) return specialRatios.flattest;
    throw new Problem(
      'absent',
      stop === 'open'
        ? 'With this plate no step ratio between 0.05 and 3 makes the focus level on the axis. Choose a phase nearer to half a wave.'
        : 'With this plate and stop no step ratio between 0.05 and 3 makes the focus level on the axis. Choose a phase nearer to half a wave, or a larger stop.',
      { input: 'plate.designPhase' },
    );
  },
  formula: '2(1+\\kappa^2)e^{-\\kappa^2} = 1+(1+X^2)e^{-X^2},\\ X=\\kappa R/a\\ \\text{for}\\ \\varphi=\\pi',
});

const equalRatio = constant({
  id: 'match.equalRatio',
  name: 'equal-diameter ratio',
  symbol: '1',
  unit: '1',
  about: 'Step ratio at which beam and step have equal diameters.',
  value: 1,
  source: 'common practice',
});

export const goalRatio = picked({
  id: 'match.goalRatio',
  name: 'step ratio wanted',
  symbol: '\\kappa_\\text{goal}',
  unit: '1',
  about: 'Step ratio that reaches the chosen goal, with the stop radius kept (R/w moves with it).',
  by: goal,
  cases: { equal: equalRatio, dark: darkRatio, flattest: flattestRatio },
  formula: '\\begin{cases} 1 \\\\ \\kappa_\\text{dark} \\\\ \\kappa_\\text{flat} \\end{cases}',
});

export const neededMagnification = derived({
  id: 'match.magnification',
  name: 'magnification needed',
  symbol: 'm_\\text{goal}',
  unit: '1',
  about: 'Expander magnification that brings the raw beam to the step ratio wanted.',
  from: { step: stepDiameter, ratio: goalRatio, raw: usedBeamDiameter },
  compute: ({ step, ratio, raw }) => step / ratio / raw,
  formula: '\\frac{2a/\\kappa_\\text{goal}}{d_\\text{raw}}',
  source: 'definition',
});
