import { defocus } from '../lib/design/focus.ts';
import { material } from '../lib/design/material.ts';
import {
  areaInWindow,
  pulseGain,
  pulseGainAtTop,
  surfacePeak,
  unshapedAreaInWindow,
} from '../lib/design/rippleParts.ts';
import {
  fieldParts,
  pulsesHigh,
  pulsesLow,
  unshapedFieldParts,
  unshapedRuns,
  windowHigh,
  windowLow,
} from '../lib/design/rippleWindow.ts';
import { gainByPlane } from '../lib/design/rippleWindowCharts.ts';
import { incubationExponent } from '../lib/design/threshold.ts';
import { shownValue } from '../lib/graph/shown.ts';
import { formatNumber } from '../lib/graph/units.ts';
import type { FieldParts } from '../lib/process/fieldWindow.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { fluenceText, percentText } from './shortTexts.ts';

/** Parts, or gains relative to 1, that differ by less than this are called alike. */
const alike = 0.02;
const noGain = 0.05;

/** Where the peak on the surface lies against the window. */
export const peakInWindowSaid = says(
  { peak: surfacePeak, low: windowLow, high: windowHigh },
  ({ peak, low, high }) => {
    if (high <= low)
      return phrase`The upper bound of ${windowHigh} does not lie above the lower one of ${windowLow}: there is no window.`;
    if (peak > high * (1 + 1e-9))
      return phrase`With the plate the peak fluence on the surface is ${surfacePeak}, above the upper bound of ${windowHigh}: wherever the peak passes, the surface gets too much.`;
    if (peak < low)
      return phrase`With the plate the peak fluence on the surface is ${surfacePeak}, below the lower bound of ${windowLow}, so that no pulse reaches the window unless the pulses before have lowered it.`;
    return phrase`With the plate the peak fluence on the surface is ${surfacePeak}, between the bounds of ${windowLow} and ${windowHigh}.`;
  },
);

/** What incubation makes of the bounds; nothing where pulses do not prepare the surface for one another. */
export const incubationInWindowSaid = says(
  { exponent: incubationExponent, low: windowLow, high: windowHigh, from: pulsesLow, to: pulsesHigh },
  ({ exponent, low, high, from, to }) => {
    if (exponent === 1 || to <= from) return '';
    const eased = (to / from) ** (exponent - 1);
    return phrase`Both bounds hold for ${pulsesLow} pulses or fewer. With the incubation exponent of ${incubationExponent} more pulses ${exponent < 1 ? 'lower' : 'raise'} both: at ${pulsesHigh} pulses they lie at ${fluenceText(eased * low)} and ${fluenceText(eased * high)}, so that a peak between the bounds above may still be ${exponent < 1 ? 'too much' : 'too little'} where many pulses come.`;
  },
);

/** Whose the bounds are, where they are still those set for steel; nothing where they have been set. */
export const ownWindowSaid = says(
  { material, low: windowLow, high: windowHigh },
  ({ material: of, low, high }) =>
    of === 'stainless' || low !== windowLow.initial || high !== windowHigh.initial
      ? ''
      : phrase`The bounds still stand as set for stainless steel: for ${material} they are to be measured.`,
);

/** What the part of a field outside the window lacks. */
function lacking({ inside, tooLittle, tooMuch }: FieldParts): string {
  if (inside > 0.995) return 'hardly anything is left outside';
  if (tooMuch < 0.005) return 'the rest gets too little, in fluence or in number of pulses';
  if (tooLittle < 0.005) return 'the rest gets too much, in fluence or in number of pulses';
  return tooMuch > tooLittle
    ? 'of the rest more gets too much than too little'
    : 'of the rest more gets too little than too much';
}

/** Which beam brings more of the field inside, and why. */
export const fieldSaid = says(
  {
    shaped: fieldParts,
    plain: unshapedFieldParts,
    runs: unshapedRuns,
    peak: surfacePeak,
    high: windowHigh,
    exponent: incubationExponent,
  },
  ({ shaped, plain, runs, peak, high, exponent }) => {
    const above = peak > high * (1 + 1e-9);
    const energy = runs === 'peak' ? 'at the same peak fluence' : 'at the same pulse energy';
    const both = phrase`Scanned alike, ${areaInWindow} of the field lies inside the window with the plate and ${unshapedAreaInWindow} without it, ${energy}`;
    const many = shaped.tooMuch > 0.005 && !above && exponent === 1;
    const remedy =
      'With the plate no pulse goes beyond the upper bound, so that too much is too many pulses: scan faster, with lines further apart, or fewer passes.';
    const why = phrase`With the plate ${lacking(shaped)}; without it ${lacking(plain)}.${many ? ` ${remedy}` : ''}`;
    if (shaped.inside < alike && plain.inside < alike)
      return phrase`${both}: next to nothing with either${above ? ', since the peak lies above the window' : ''}. ${why}`;
    if (shaped.inside > plain.inside + alike) return phrase`${both}: more with the plate. ${why}`;
    if (shaped.inside < plain.inside - alike) return phrase`${both}: less with the plate. ${why}`;
    return phrase`${both}: as much with either. ${why}`;
  },
  [areaInWindow, unshapedAreaInWindow],
);

/** The gain of a single pulse, told apart from that of the field. */
export const gainsApartSaid = says(
  { atTop: pulseGainAtTop, gain: pulseGain, shaped: fieldParts, plain: unshapedFieldParts },
  ({ atTop, gain, shaped, plain }) => {
    const neither = shaped.inside < alike && plain.inside < alike;
    const alikeShown =
      shownValue(pulseGain, { value: gain }) === shownValue(pulseGainAtTop, { value: atTop });
    const best = alikeShown ? phrase`as much` : phrase`${pulseGain} times`;
    const pulse = phrase`For a single pulse with both peaks at the upper bound the plate covers ${pulseGainAtTop} times the area between the bounds per energy that a Gaussian does; each at its own best peak, ${best}.`;
    const [gains, loses] = [atTop > 1 + noGain, atTop < 1 - noGain];
    const [more, less] = [shaped.inside > plain.inside + alike, shaped.inside < plain.inside - alike];
    return phrase`${pulse} ${neither ? nothingInside : relation(gains, loses, more, less)}`;
  },
);

const nothingInside =
  'Of the field as it is scanned here next to nothing lies inside with either beam, so that it shows no gain: set the peak into the window first.';

function relation(gains: boolean, loses: boolean, more: boolean, less: boolean): Phrase {
  if (gains && more)
    return 'Both speak for the plate here, but they are two things: the field counts every pulse that a place gets, and one number does not follow from the other.';
  if (gains)
    return `The field as it is scanned here does not show that gain: ${less ? 'less of it lies inside with the plate' : 'as much of it lies inside without the plate'}. Peak fluence, speed and spacing decide there.`;
  if (more)
    return 'The field gains all the same: there the overlap of the pulses counts, and not the area of one.';
  return loses ? 'For a single pulse it loses here.' : 'For a single pulse next to nothing is gained here.';
}

/** Why a plane without a dip can gain less than one with a dip. */
export const planeGainSaid = says(
  { gains: gainByPlane, low: windowLow, high: windowHigh, defocus },
  ({ gains: { planes, best, flat }, low, high }) => {
    const furthest = planes.at(-1)!.defocus;
    const at = (zeta: number) =>
      zeta === 1
        ? 'one Rayleigh length behind the focus'
        : `${formatNumber(zeta, 2)} Rayleigh lengths behind the focus`;
    const top = `Within a Rayleigh length behind the focus a single pulse gains most ${best.defocus === 0 ? 'in the focus itself' : at(best.defocus)}: ${formatNumber(best.gain, 3)} times a Gaussian’s area, where the axis lies ${percentText(best.axisDip, 2)} below the peak.${best.defocus === furthest ? ' It may gain more still further out, which is not looked at.' : ''}`;
    if (flat === null)
      return `${top} No plane there is without a dip, with its axis less than 1\u202f% below the peak.`;
    if (flat.gain > 0.99 * best.gain)
      return `${top} The first plane without a dip, ${flat.defocus === 0 ? 'in the focus' : at(flat.defocus)}, gains as much: ${formatNumber(flat.gain, 3)} times.`;
    const first = `${top} The first plane without a dip (its axis less than 1\u202f% below the peak), ${flat.defocus === 0 ? 'in the focus' : at(flat.defocus)}, gains less: ${formatNumber(flat.gain, 3)} times.`;
    if (best.axisDip < 0.01) return first;
    return best.axisDip > 1 - low / high
      ? `${first} Even though the middle of the better plane falls below the lower bound, its bright ring covers more.`
      : `${first} One reason: a dip costs nothing while it stays above the lower bound, here ${percentText(1 - low / high, 2)} below the upper one; it takes light from where one pulse has more than it needs. To have no dip is not the aim, to be inside the window is.`;
  },
);
