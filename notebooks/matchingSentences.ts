import { depthTolerance, unevenness } from '../lib/design/depthOfFocus.ts';
import { expanderKind, magnification, plateBeamDiameter } from '../lib/design/expander.ts';
import { defocus, zeroCurvaturePlanes } from '../lib/design/focus.ts';
import { focusInside, internalFocusIrradiance } from '../lib/design/insideExpander.ts';
import {
  darkestAxis,
  darkRatio,
  flattestRatio,
  goal,
  goalRatio,
  neededMagnification,
  specialRatios,
  stepRatio,
  stopRatio,
} from '../lib/design/match.ts';
import {
  apertureDiameter,
  raised,
  stepDiameter,
  stepPhase,
  stop,
  transmission,
} from '../lib/design/plate.ts';
import { ringAroundDiameter, ringAroundHeight, trough } from '../lib/design/profileDetail.ts';
import { usedBeamDiameter } from '../lib/design/rawBeam.ts';
import { equalBeamDipInFocus, equalBeamFlatTops, equalBeamKindInFocus } from '../lib/design/rule.ts';
import { areaRatio, dip, kind, peakFluence, ringDiameter, width } from '../lib/design/spot.ts';
import { unshapedPeakFluence } from '../lib/design/unshaped.ts';
import { rangeText } from '../lib/graph/shown.ts';
import { formatNumber } from '../lib/graph/units.ts';
import { turnOf } from './matchingReasons.ts';
import { phrase, says } from './prose.ts';

/** Beam against step: wider, narrower or equal to half a per cent. */
export const beamAgainstStep = says(
  { ratio: stepRatio, beam: plateBeamDiameter, step: stepDiameter },
  ({ ratio }) => {
    if (Math.abs(ratio - 1) <= 0.005)
      return phrase`Beam (${plateBeamDiameter}) and step (${stepDiameter}) have equal diameters, the common starting point.`;
    return ratio > 1
      ? phrase`The beam (${plateBeamDiameter}) is narrower than the step (${stepDiameter}), so most of its light passes through the step.`
      : phrase`The beam (${plateBeamDiameter}) is wider than the step (${stepDiameter}), so more of its light passes around the step than with equal diameters.`;
  },
);

/** The plate, and the stop where there is one. */
const withThese = (stop: string) => (stop === 'open' ? 'With this plate' : 'With this plate and stop');

/** Where today's ratio lies between the two special ones, as far as they exist. */
export const ratioPlace = says(
  { ratio: stepRatio, special: specialRatios, stop },
  ({ ratio, special: { dark, flattest }, stop }) => {
    const near = (target: number | null) => target !== null && Math.abs(ratio - target) < 0.005 * target;
    if (near(dark))
      return phrase`At a step ratio of ${stepRatio} the axis is as dark as it gets in the focus (${darkRatio}).`;
    if (near(flattest))
      return phrase`At a step ratio of ${stepRatio} the focus itself is flattest (${flattestRatio}).`;
    if (flattest !== null && ratio > flattest)
      return phrase`The step ratio of ${stepRatio} lies above the flattest ratio of ${flattestRatio}, at which the focus itself is level on the axis.`;
    if (dark !== null && ratio < dark)
      return phrase`The step ratio of ${stepRatio} lies below the dark-centre ratio of ${darkRatio}, at which the axis is darkest in the focus.`;
    if (dark !== null && flattest !== null)
      return phrase`The step ratio of ${stepRatio} lies between the dark-centre ratio of ${darkRatio} and the flattest ratio of ${flattestRatio}: at the one the axis is darkest in the focus, at the other the focus itself is level on the axis.`;
    if (flattest !== null)
      return phrase`The step ratio of ${stepRatio} lies below the flattest ratio of ${flattestRatio}, at which the focus itself is level on the axis; no step ratio makes its centre exactly dark.`;
    return `${withThese(stop)} no step ratio makes the focus level on the axis.`;
  },
  [darkRatio, flattestRatio],
);

/** The special ratios of this plate and stop, as far as they exist, and how dark the axis gets where it never is. */
export const specialSaid = says(
  { special: specialRatios, stop, step: stepDiameter, aperture: apertureDiameter },
  ({ special: { dark, flattest }, stop, step, aperture }) => {
    const kept = stop === 'open' ? 'Without a stop' : 'With the stop kept where it is';
    if (dark !== null && flattest !== null) {
      return phrase`${kept}, the axis in the focus is darkest at a step ratio of ${darkRatio} and the focus itself is flattest at ${flattestRatio}. Between the two the focus has a dip on the axis, and on either side of it lie planes where the axis is level.`;
    }
    if (flattest === null)
      return `${withThese(stop)} no step ratio between 0.05 and 3 makes the focus level on the axis.`;
    // Without a stop a plate that levels the focus has a dark-centre ratio as well.
    const first = phrase`${kept}, the focus itself is flattest at a step ratio of ${flattestRatio}. No step ratio makes the centre exactly dark with this phase and stop`;
    // The share of the amplitude through the step falls to (a/R)² as the beam grows; the axis is darkest at one half.
    return (step / aperture) ** 2 >= 0.5
      ? phrase`${first}; it goes on getting darker as the beam grows, towards ${darkestAxis} of what the same beam and stop give without the step.`
      : phrase`${first}; at best it keeps ${darkestAxis} of what the same beam and stop give without the step.`;
  },
  [darkRatio, flattestRatio, darkestAxis],
);

/** A trough around the axis counts from this much below the axis on. */
const deeper = 0.005;

/** What the workpiece gets. */
export const profileSaid = says(
  {
    ...{ kind, dip, width, areaRatio, ringDiameter, peakFluence, unevenness, tolerance: depthTolerance },
    ...{ trough, ringAroundHeight, ringAroundDiameter },
  },
  ({ kind, dip: depth, unevenness: departure, tolerance, trough: deepest, ringAroundHeight: around }) => {
    const troughSaid =
      deepest > depth + deeper
        ? phrase` A trough around the axis lies ${trough} below the highest fluence, deeper than the centre.`
        : '';
    switch (kind) {
      case 'flat-top':
        if (departure > tolerance)
          return phrase`Where the workpiece stands the spot counts as a flat-top by its dip and plateau ratio, ${width} wide, but it is uneven: on its plateau the fluence departs by up to ${unevenness} from its mean, more than the ${depthTolerance} that count as even. Its highest fluence is ${peakFluence}.${troughSaid}`;
        if (depth < dip.zeroBelow!)
          return phrase`Where the workpiece stands the spot is a flat-top, ${width} wide, highest on the axis, where the fluence is ${peakFluence}.${troughSaid}`;
        return phrase`Where the workpiece stands the spot is a flat-top, ${width} wide, its centre ${dip} below its highest fluence of ${peakFluence}.${troughSaid}`;
      case 'shallow ring':
        return phrase`Where the workpiece stands the spot is a shallow ring, ${width} wide over all: the centre lies ${dip} below a crest ${ringDiameter} across, where the fluence is ${peakFluence}.`;
      case 'ring':
        return phrase`Where the workpiece stands the spot is a ring: the centre lies ${dip} below a crest ${ringDiameter} across, where the fluence is ${peakFluence}.`;
      case 'peaked':
        if (around > 0)
          return phrase`Where the workpiece stands the spot is peaked, with a ring around it, ${ringAroundDiameter} across, that reaches ${ringAroundHeight} of its highest fluence of ${peakFluence}. Its width of ${width} is that of a disc as large as peak and ring above half of it together.`;
        return phrase`Where the workpiece stands the spot is peaked, not flat: ${width} wide at half its highest fluence of ${peakFluence}, with only ${areaRatio} of that area above nine tenths of it.`;
    }
  },
);

/** Energy lost at the stop. */
export const stopSaid = says({ stop, transmission }, ({ stop, transmission: passed }) => {
  if (stop === 'open') return 'No stop cuts the beam.';
  if (passed > 0.9995) return phrase`The stop lets practically all of the pulse energy through.`;
  if (passed > 0.97)
    return phrase`The stop lets ${transmission} of the pulse energy through; its edge still changes the profile.`;
  return phrase`The stop lets only ${transmission} of the pulse energy through and decides as much about the profile as the step does.`;
});

/** What the stop ratio is, where there is one. */
export const stopRatioSaid = says(
  { stop },
  ({ stop }) => (stop === 'open' ? 'there is no stop' : phrase`the stop ratio R/w is ${stopRatio}`),
  [stopRatio],
);

/** Half a wave or not. */
export const phaseSaid = says({ phase: stepPhase, raised }, ({ phase, raised }) => {
  const turn = turnOf(phase);
  if (turn === 'none')
    return phrase`At this wavelength the step delays by ${stepPhase}, whole waves: it does next to nothing to the beam.`;
  if (turn === 'over')
    return phrase`At this wavelength the step delays by ${stepPhase}, so the two parts of the beam oppose each other on the axis in the focus.`;
  const side = raised === 'centre' ? 'centre' : 'ring';
  return phrase`At this wavelength the step delays the ${side} by ${stepPhase}, not by an odd number of half waves: the two sides of the focus differ.`;
});

/** Set magnification against needed. */
export const magnificationSaid = says(
  {
    kind: expanderKind,
    magnification,
    raw: usedBeamDiameter,
    beam: plateBeamDiameter,
    needed: neededMagnification,
    goal,
    goalRatio,
  },
  ({ kind, raw, beam, needed, goal }) => {
    const wish = {
      equal: 'equal diameters',
      dark: 'a dark centre in the focus',
      flattest: 'the flattest focus',
    }[goal];
    const difference = beam / raw / needed - 1;
    if (Math.abs(difference) <= 0.01)
      return phrase`For ${wish} the expander is right: it needs ${neededMagnification}.`;
    if (kind === 'lenses')
      return phrase`For ${wish} the expander would need ${neededMagnification} (step ratio ${goalRatio}); its two lenses make the beam too ${difference > 0 ? 'wide' : 'narrow'}.`;
    const { min, max } = magnification.range;
    if (needed < min || needed > max)
      return phrase`For ${wish} the expander would need ${neededMagnification} (step ratio ${goalRatio}), which lies outside what it may have here, ${rangeText(magnification)}: change the raw beam or the step diameter instead.`;
    const direction = difference > 0 ? 'too large' : 'too small';
    return phrase`For ${wish} the expander would need ${neededMagnification} (step ratio ${goalRatio}); today’s ${magnification} is ${direction}.`;
  },
);

/** The rule of thumb, judged for this plate, stop and M². */
export const ruleSaid = says(
  { kind: equalBeamKindInFocus, dip: equalBeamDipInFocus, depth: equalBeamFlatTops, stop },
  ({ kind, dip, depth, stop }) => {
    const these =
      stop === 'open' ? 'Without a stop, with this phase and M²,' : 'With this stop, phase and M²,';
    const none = dip < equalBeamDipInFocus.zeroBelow!;
    if (kind === 'flat-top')
      return phrase`${these} the rule holds in the focus: equal diameters give a flat-top there, ${none ? 'without a dip' : phrase`with a dip of ${equalBeamDipInFocus}`}.`;
    const spot = kind === 'peaked' ? ' spot' : '';
    const deep = none ? 'no dip' : phrase`dip ${equalBeamDipInFocus}`;
    if (depth > 0)
      return phrase`${these} equal diameters give a ${equalBeamKindInFocus}${spot} in the focus (${deep}); flat-tops lie beside it, over ${equalBeamFlatTops} Rayleigh ${formatNumber(depth, 2) === '1' ? 'length' : 'lengths'} in all within 0.8 of the focus.`;
    return phrase`${these} the rule does not hold near the focus: equal diameters give a ${equalBeamKindInFocus}${spot} in the focus (${deep}) and no flat-top within 0.8 Rayleigh lengths of it.`;
  },
);

/** The same pulse without the plate; the caution stands whether or not the fluences can be worked out. */
export const plateOutSaid = says(
  { shaped: peakFluence, plain: unshapedPeakFluence },
  ({ shaped, plain }) => {
    if (plain > 1.2 * shaped)
      return phrase`Taking the plate out at unchanged energy raises the peak fluence here from ${peakFluence} to ${unshapedPeakFluence}, ${formatNumber(plain / shaped, 2)} times as much: lower the energy first.`;
    if (plain < shaped / 1.2)
      return phrase`In this plane taking the plate out lowers the peak fluence from ${peakFluence} to ${unshapedPeakFluence}; in the focus of the unshaped beam it would be higher, so lower the energy first all the same.`;
    return phrase`In this plane the peak fluence is nearly the same with and without the plate (${peakFluence} and ${unshapedPeakFluence}); in other planes it may differ strongly, so lower the energy before taking the plate out.`;
  },
  [],
  'Taking the plate out at unchanged energy can raise the peak fluence several times, by how much cannot be worked out for this design: lower the energy first.',
);

/** Zero-curvature planes, counted. */
export const planesSaid = says({ planes: zeroCurvaturePlanes, defocus }, ({ planes }) => {
  if (planes.length === 0)
    return 'Within seven Rayleigh lengths of the focus no plane has zero curvature on the axis.';
  const count = planes.length === 1 ? 'one plane has' : `${planes.length} planes have`;
  return phrase`Within seven Rayleigh lengths of the focus ${count} zero curvature on the axis, at z = ${zeroCurvaturePlanes}. There the middle of the profile is level, which does not yet make it a flat-top: look at its dip and its whole course.`;
});

/** The focus inside an expander of two lenses. */
export const insideSaid = says(
  { focusInside },
  ({ focusInside }) => {
    if (focusInside === 'unknown')
      return 'An expander that is given by its magnification alone may hide a focus between its lenses.';
    if (focusInside === 'none') return 'The expander has no focus between its lenses.';
    return phrase`Between the lenses of the expander lies a focus with a peak irradiance of ${internalFocusIrradiance}: keep glass and dust out of it.`;
  },
  [internalFocusIrradiance],
  'An expander may hide a focus between its lenses.',
);
