import type * as sentences from '../../notebooks/matchingSentences.ts';
import type * as measured from '../../notebooks/measuredSentences.ts';
import { read, type Values } from './designOutcomes.ts';

export type Name = keyof typeof sentences | keyof typeof measured | 'paraxialSaid' | 'xRaysSaid';

/** What a sentence says for a design, and the numbers it says it of. */
export interface Case {
  readonly says: Name;
  /** Changes to the initial design: w = 5 mm, κ = 1, R/w = 1.4, half a wave, in the focus. */
  readonly design?: Values;
  /** Results held at a value, where no design is needed to reach the branch. */
  readonly pins?: Values;
  readonly text: RegExp;
  /** True for the numbers that make the words true. */
  readonly truth: (value: (id: string) => number) => boolean;
}

const open = { 'plate.stop': 'open' };
const phase = (waves: number) => ({ 'plate.designPhase': waves * 2 * Math.PI });
const kappa = (ratio: number) => ({ 'expander.magnification': 2 / ratio });
/** 12.5 mm behind one step of half a wave: R/a = 1.25 lies below √2, so that no axis is dark. */
const narrowStop = { 'plate.apertureDiameter': 12.5e-3 };
const lenses = { 'expander.kind': 'lenses' };
const special = (dark: number | null, flattest: number | null) => ({
  'match.specialRatios': { dark, flattest },
});
/** Coherent irradiance on the axis in the focus, closed form without a stop. */
const axis = (ratio: number, delay: number) => {
  const centre = 1 - Math.exp(-ratio * ratio);
  return 1 - 2 * centre * (1 - centre) * (1 - Math.cos(delay));
};
const dips = (value: (id: string) => number) => {
  const off = (id: string) => Math.abs(value(`sensitivity.${id}`) - value('spot.dip'));
  return {
    beam: Math.max(off('dipWiderBeam'), off('dipNarrowerBeam')),
    phase: Math.max(off('dipMorePhase'), off('dipLessPhase')),
  };
};
const dipPins = (wider: number, more: number) => ({
  'spot.dip': 0.2,
  'sensitivity.dipWiderBeam': wider,
  'sensitivity.dipNarrowerBeam': 0.2,
  'sensitivity.dipMorePhase': more,
  'sensitivity.dipLessPhase': 0.2,
});
const factor = (value: (id: string) => number) =>
  value('unshaped.spot.peakFluence') / value('spot.peakFluence');

export const sentenceCases: readonly Case[] = [
  {
    says: 'beamAgainstStep',
    text: /^Beam \(10\smm\) and step \(10\smm\) have equal diameters/,
    truth: (value) => value('match.stepRatio') === 1,
  },
  {
    says: 'beamAgainstStep',
    design: kappa(1.2),
    text: /beam \(8\.333\smm\) is narrower than the step \(10\smm\)/,
    truth: (value) => 1 - Math.exp(-2 * value('match.stepRatio') ** 2) > 0.5,
  },
  {
    says: 'beamAgainstStep',
    design: kappa(0.8),
    text: /is wider than the step .* more of its light passes around the step than with equal/,
    truth: (value) => Math.exp(-2 * value('match.stepRatio') ** 2) > Math.exp(-2),
  },
  {
    says: 'ratioPlace',
    design: { ...open, ...kappa(Math.sqrt(Math.LN2)) },
    text: /axis is darkest in the focus \(0\.8326\)/,
    truth: (value) => axis(value('match.stepRatio'), Math.PI) < 1e-9,
  },
  {
    says: 'ratioPlace',
    design: { ...open, ...kappa(1.29551) },
    text: /focus itself is flattest \(1\.296\)/,
    truth: (value) => {
      const squared = value('match.stepRatio') ** 2;
      return Math.abs((1 + squared) * Math.exp(-squared) - 0.5) < 1e-5;
    },
  },
  {
    says: 'ratioPlace',
    design: { ...open, ...kappa(1.5) },
    text: /above the flattest ratio/,
    truth: (value) => value('match.stepRatio') > value('match.flattestRatio'),
  },
  {
    says: 'ratioPlace',
    design: { ...open, ...kappa(0.6) },
    text: /below the dark-centre ratio/,
    truth: (value) => value('match.stepRatio') < value('match.darkRatio'),
  },
  {
    says: 'ratioPlace',
    design: open,
    text: /between the dark-centre ratio of 0\.8326 and the flattest ratio of 1\.296/,
    truth: (value) => value('match.darkRatio') < 1 && value('match.flattestRatio') > 1,
  },
  {
    says: 'ratioPlace',
    design: { ...narrowStop, ...kappa(0.4) },
    text: /below the flattest ratio .*; a dark centre is out of reach/,
    truth: (value) => value('match.flattestRatio') > 0.4 && Number.isNaN(value('match.darkRatio')),
  },
  {
    says: 'ratioPlace',
    pins: special(null, null),
    text: /no step ratio makes the focus level/,
    truth: (value) => Number.isNaN(value('match.flattestRatio')),
  },
  {
    says: 'specialSaid',
    design: open,
    text: /darkest at a step ratio of 0\.8326 and the focus itself is flattest at 1\.296/,
    truth: (value) => value('match.darkRatio') < value('match.flattestRatio'),
  },
  {
    says: 'specialSaid',
    design: narrowStop,
    text: /No step ratio between 0\.05 and 3 gives a darkest axis/,
    truth: (value) => Number.isNaN(value('match.darkRatio')) && value('match.flattestRatio') > 0,
  },
  {
    says: 'specialSaid',
    pins: special(0.8, null),
    text: /no step ratio between 0\.05 and 3 makes the focus level/,
    truth: (value) => Number.isNaN(value('match.flattestRatio')),
  },
  {
    says: 'profileSaid',
    design: { 'workpiece.z': 50e-6 },
    text: /is a flat-top, .*\sµm wide, its centre .*\s% below/,
    truth: (value) => value('spot.dip') < 0.05 && value('spot.areaRatio') > 0.3,
  },
  {
    says: 'profileSaid',
    text: /is a shallow ring, .* below a crest .*\sµm across/,
    truth: (value) => value('spot.dip') >= 0.05 && value('spot.dip') <= 0.1,
  },
  {
    says: 'profileSaid',
    design: open,
    text: /is a ring: the centre lies .*\s% below a crest/,
    truth: (value) => value('spot.dip') > 0.1 && value('spot.ringDiameter') > 0,
  },
  {
    says: 'profileSaid',
    design: phase(1),
    text: /is peaked, not flat: .* only 0\.\d+ of that area/,
    truth: (value) => value('spot.dip') < 0.05 && value('spot.areaRatio') <= 0.3,
  },
  {
    says: 'stopSaid',
    design: open,
    text: /^No stop cuts the beam\.$/,
    truth: (value) => value('plate.transmission') === 1,
  },
  {
    says: 'stopSaid',
    design: { 'plate.apertureDiameter': 25e-3 },
    text: /practically all/,
    truth: () => Math.exp(-2 * 2.5 ** 2) < 5e-4,
  },
  {
    says: 'stopSaid',
    text: /lets 98\.02\s% of the pulse energy through/,
    truth: () => Math.abs(1 - Math.exp(-2 * 1.4 ** 2) - 0.9802) < 5e-5,
  },
  {
    says: 'stopSaid',
    design: { 'plate.apertureDiameter': 11e-3 },
    text: /lets only 91\.11\s%/,
    truth: () => Math.abs(1 - Math.exp(-2 * 1.1 ** 2) - 0.9111) < 5e-5,
  },
  { says: 'stopRatioSaid', design: open, text: /^there is no stop$/, truth: () => true },
  {
    says: 'stopRatioSaid',
    text: /^the stop ratio R\/w is 1\.4$/,
    truth: (value) => value('match.stopRatio') === 1.4,
  },
  {
    says: 'phaseSaid',
    design: phase(1.01),
    text: /delays by 1\.01\swaves, whole waves: it does next to nothing/,
    truth: (value) => Math.abs(factor(value) - 1) < 0.01,
  },
  {
    says: 'phaseSaid',
    design: phase(1.5),
    text: /delays by 1\.5\swaves, so the two parts of the beam oppose each other/,
    truth: (value) => Math.cos(value('plate.stepPhase')) < -0.99,
  },
  ...(['centre', 'ring'] as const).map(
    (raised): Case => ({
      says: 'phaseSaid',
      design: { ...phase(0.4), 'plate.raised': raised },
      text: new RegExp(`delays the ${raised} by 0\\.4\\swaves, not by an odd number`),
      truth: () => {
        const width = (z: number) =>
          read({ ...phase(0.4), 'plate.raised': raised, 'workpiece.z': z })('spot.width');
        return Math.abs(width(50e-6) / width(-50e-6) - 1) > 0.01;
      },
    }),
  ),
  {
    says: 'magnificationSaid',
    text: /^For equal diameters the expander is right: it needs 2\.$/,
    truth: (value) => value('match.magnification') === 2,
  },
  {
    says: 'magnificationSaid',
    design: { ...kappa(0.8), 'match.goal': 'flattest' },
    text: /^For the flattest focus the expander would need .*; today’s 2\.5 is too large\.$/,
    truth: (value) => value('match.magnification') < 2.5,
  },
  {
    says: 'magnificationSaid',
    design: { ...open, ...kappa(1.2), 'match.goal': 'dark' },
    text: /^For a dark centre in the focus .* today’s 1\.667 is too small\.$/,
    truth: (value) => value('match.magnification') > 2 / 1.2,
  },
  {
    says: 'magnificationSaid',
    design: { ...lenses, 'expander.secondFocalLength': 200e-3, 'expander.separation': 150e-3 },
    text: /two lenses make the beam too wide\.$/,
    truth: (value) => value('plate.beamDiameter') > value('plate.stepDiameter'),
  },
  {
    says: 'magnificationSaid',
    design: { ...lenses, 'expander.secondFocalLength': 60e-3, 'expander.separation': 10e-3 },
    text: /two lenses make the beam too narrow\.$/,
    truth: (value) => value('plate.beamDiameter') < value('plate.stepDiameter'),
  },
  {
    says: 'sensitivitySaid',
    pins: dipPins(0.205, 0.209),
    text: /less than one percentage point/,
    truth: (value) => Math.max(dips(value).beam, dips(value).phase) < 0.01,
  },
  {
    says: 'sensitivitySaid',
    text: /more to the size of the beam than to the height/,
    truth: (value) => dips(value).beam > 1.5 * dips(value).phase,
  },
  {
    says: 'sensitivitySaid',
    design: { ...open, 'workpiece.z': 48e-6 },
    text: /more to the height of the step than to the size/,
    truth: (value) => dips(value).phase > 1.5 * dips(value).beam,
  },
  {
    says: 'sensitivitySaid',
    pins: dipPins(0.25, 0.24),
    text: /about equally/,
    truth: (value) => dips(value).beam <= 1.5 * dips(value).phase && dips(value).beam > 0.01,
  },
  {
    says: 'ruleSaid',
    design: { 'plate.apertureDiameter': 13.5e-3 },
    text: /rule holds in the focus: equal diameters give a flat-top there, with a dip of/,
    truth: (value) => value('rule.dipInFocus') < 0.05,
  },
  {
    says: 'ruleSaid',
    design: open,
    text: /equal diameters give a ring in the focus .*; flat-tops lie beside it, over .* Rayleigh lengths/,
    truth: (value) => value('rule.dipInFocus') > 0.1 && value('rule.flatTopShare') > 0,
  },
  {
    says: 'ruleSaid',
    design: phase(1),
    text: /rule does not hold near the focus: equal diameters give a peaked spot in the focus \(dip 0\s%\)/,
    truth: (value) => value('rule.dipInFocus') < 0.05 && value('rule.flatTopShare') === 0,
  },
  {
    says: 'plateOutSaid',
    text: /raises the peak fluence here from .* to .*, [\d.]+ times as much/,
    truth: (value) => factor(value) > 1.2,
  },
  {
    says: 'plateOutSaid',
    design: { ...open, 'workpiece.z': 0.64e-3 },
    text: /taking the plate out lowers the peak fluence .*; in the focus .* would be higher/,
    truth: (value) =>
      factor(value) < 1 / 1.2 && read(open)('unshaped.spot.peakFluence') > value('spot.peakFluence'),
  },
  {
    says: 'plateOutSaid',
    design: phase(1),
    text: /nearly the same with and without the plate .*; in other planes it may differ/,
    truth: (value) => Math.abs(factor(value) - 1) < 0.2,
  },
  {
    says: 'planesSaid',
    pins: { 'focus.zeroCurvaturePlanes': [] },
    text: /no plane has zero curvature/,
    truth: () => true,
  },
  {
    says: 'planesSaid',
    pins: { 'focus.zeroCurvaturePlanes': [50e-6] },
    text: /one plane has zero curvature on the axis, at z = 0\.05\smm\./,
    truth: () => true,
  },
  {
    says: 'planesSaid',
    text: /4 planes have zero curvature on the axis, at z = (−?[\d.]+\smm(, )?){4}\./,
    truth: () => true,
  },
  { says: 'insideSaid', text: /may hide a focus/, truth: () => true },
  {
    // A lens that does not count, and is out of reach for the ray matrices.
    says: 'insideSaid',
    pins: { 'expander.firstFocalLength': 0 },
    text: /may hide a focus/,
    truth: () => true,
  },
  {
    says: 'insideSaid',
    design: lenses,
    text: /no focus between its lenses/,
    truth: (value) => Number.isNaN(value('expander.internalFocusIrradiance')),
  },
  {
    says: 'insideSaid',
    design: { ...lenses, 'expander.firstFocalLength': 50e-3, 'expander.separation': 150e-3 },
    text: /lies a focus with a peak irradiance of .*W\/cm²: keep/,
    truth: (value) => value('expander.internalFocusIrradiance') > value('plate.peakIrradiance'),
  },
];
