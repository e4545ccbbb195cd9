import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import type { Spot } from '../optics/askedSpot.ts';
import { Problem } from '../problem.ts';
import { doseAcross, lineDose } from '../process/lineDose.ts';
import { lineProfile } from '../process/lineProfile.ts';
import {
  evenerNear,
  type KeptSpacings,
  keptSpacings,
  minimaInChart,
  modulationOf,
  type Spacing,
} from '../process/spacingSearch.ts';
import { accumulatedFluence, unshapedAccumulatedFluence } from './accumulated.ts';
import { largestModulation } from './comparisonInputs.ts';
import { asked, unshapedAsked } from './marks.ts';
import { spotDiameter, unshapedSpotDiameter } from './pulsesOnPlace.ts';
import { lineSpacing } from './scanInputs.ts';
import { modulation, requireField } from './uniformity.ts';

const bothSpots = { spot: asked, plain: unshapedAsked };
const bothWidths = { width: spotDiameter, plainWidth: unshapedSpotDiameter };

export const modulationBySpacing = derived({
  id: 'scan.modulationBySpacing',
  name: 'modulation against line spacing',
  symbol: 'm(\\Delta y)',
  unit: { spacing: 'm', shaped: '1', plain: '1', minima: 'm', least: '1' },
  about:
    'Modulation of the accumulated fluence across the lines for line spacings up to one and a half diameters of the wider spot, or a little beyond that of today, but no more than four diameters; with the plate and with the plate taken out. With it the spacings of the minima with the plate that follow a rise of 1\u202f% or more, and what they leave.',
  from: { ...bothSpots, ...bothWidths, today: lineSpacing },
  compute: ({ spot, plain, width, plainWidth, today }) => {
    const wider = Math.max(width, plainWidth);
    const end = Math.min(Math.max(1.5 * wider, 1.25 * today), 4 * wider);
    const spacing = Float64Array.from({ length: 240 }, (_, i) => ((i + 1) * end) / 240);
    const modulationAt = modulationOf(spot);
    const shaped = spacing.map(modulationAt);
    const minima = minimaInChart(modulationAt, spacing, shaped);
    return {
      spacing,
      shaped,
      plain: spacing.map(modulationOf(plain)),
      minima: Float64Array.from(minima, (one) => one.spacing),
      least: Float64Array.from(minima, ({ modulation }) => modulation),
    };
  },
  shownAs: ({ spacing }) =>
    `${spacing.length} spacings up to ${formatReadable(spacing.at(-1)!, 'm', 'um', 3)}`,
  formula: 'm(\\Delta y)',
  source: 'integration',
  heavy: 'picture',
});

/** A line and a pulse across, each relative to its own highest. */
function windowsOf(spot: Spot, y: Float64Array): { line: Float64Array; pulse: Float64Array } {
  const line = lineProfile(spot, y);
  const highest = line.reduce((most, value) => Math.max(most, value), 0);
  return {
    line: line.map((value) => value / highest),
    pulse: y.map((place) => spot.irradianceAt(0, place) / spot.peak),
  };
}

export const lineProfiles = derived({
  id: 'scan.lineProfile',
  name: 'what one line leaves, beside one pulse',
  symbol: 'G(y)',
  unit: { y: 'm', shaped: '1', plain: '1', shapedPulse: '1', plainPulse: '1' },
  about:
    'Accumulated fluence across a single line of dense pulses, and fluence of a single pulse along a cut through its middle, each relative to its own highest; with the plate and with the plate taken out.',
  from: { ...bothSpots, ...bothWidths },
  compute: ({ spot, plain, width, plainWidth }) => {
    const end = 1.1 * Math.max(width, plainWidth);
    const y = Float64Array.from({ length: 241 }, (_, i) => ((i - 120) * end) / 120);
    const [shaped, unshaped] = [windowsOf(spot, y), windowsOf(plain, y)];
    return {
      y,
      shaped: shaped.line,
      plain: unshaped.line,
      shapedPulse: shaped.pulse,
      plainPulse: unshaped.pulse,
    };
  },
  shownAs: ({ y }) => `${y.length} places`,
  formula: '\\int I\\,\\mathrm{d}x',
  source: 'integration',
  heavy: 'picture',
});

export const acrossLines = derived({
  id: 'scan.acrossLines',
  name: 'accumulated fluence across the lines',
  symbol: 'F_\\text{acc}(y)',
  unit: { y: 'm', shaped: 'J/m^2', plain: 'J/m^2' },
  about:
    'Accumulated fluence of all passes across three lines in the middle of a wide field, pulses dense along the lines, from half a spacing before the first to half a spacing behind the last; with the plate and with the plate taken out.',
  from: {
    ...bothSpots,
    spacing: lineSpacing,
    mean: accumulatedFluence,
    plainMean: unshapedAccumulatedFluence,
    ...bothWidths,
  },
  compute: ({ spot, plain, spacing, mean, plainMean, width, plainWidth }) => {
    requireField(spacing, Math.min(width, plainWidth), 'lines');
    const y = Float64Array.from({ length: 241 }, (_, i) => (i / 80 - 1.5) * spacing);
    const along = (one: Spot, mean: number) => {
      const dose = lineDose(one, spacing);
      return y.map((place) => mean * doseAcross(dose, place));
    };
    return { y, shaped: along(spot, mean), plain: along(plain, plainMean) };
  },
  shownAs: ({ y }) => `${y.length} places`,
  formula: '\\bar F_\\text{acc}\\left(1+2\\sum_k M(2\\pi k/\\Delta y)\\cos(2\\pi k y/\\Delta y)\\right)',
  source: 'integration',
});

export const evenerSpacing = derived({
  id: 'scan.evenerSpacing',
  name: 'line spacing near that of today with a minimum of the modulation',
  symbol: '\\Delta y_\\text{even}',
  unit: { best: { spacing: 'm', modulation: '1' } },
  about:
    'Local minimum of the modulation with the plate between half the line spacing and one and a half times it: that in which today’s lies, to 1\u202f%; else the nearest wider one that is more even, as wider lines are fewer; else the nearest closer one that is; else the lowest. None where the modulation has no local minimum there.',
  from: { spot: asked, today: lineSpacing, width: spotDiameter },
  compute: ({ spot, today, width }): { best: Spacing | null } => {
    requireField(today, width, 'lines');
    return { best: evenerNear(modulationOf(spot), today) };
  },
  shownAs: ({ best }) => (best === null ? 'none' : formatReadable(best.spacing, 'm', 'um', 3)),
  formula: "m'(\\Delta y)=0,\\ m<m(\\Delta y_\\text{today})",
  source: 'search',
  heavy: 'search',
});

/** A modulation below this is none that could be measured. */
export const noModulation = 1e-4;

export const evenSpacing = derived({
  id: 'scan.evenSpacing',
  name: 'more even line spacing near that of today',
  symbol: '\\Delta y^*',
  unit: 'm',
  display: 'um',
  digits: 4,
  about:
    'The line spacing at the nearest wider local minimum of the modulation with the plate, up to one and a half times that of today, or else at the nearest closer one, down to half of it, where that is more even than today and today leaves a modulation that could be measured, 0.01\u202f% or more.',
  from: { evener: evenerSpacing, today: modulation },
  compute: ({ evener: { best }, today }) => {
    if (best !== null && best.modulation < today && today >= noModulation) return best.spacing;
    throw new Problem(
      'absent',
      today < noModulation
        ? 'Today’s lines leave less modulation than could be measured: no line spacing is more even.'
        : 'Between half the line spacing and one and a half times it no minimum of the modulation is more even than today.',
      { input: 'scan.lineSpacing' },
    );
  },
  formula: '\\Delta y_\\text{even}\\ \\text{if}\\ m(\\Delta y_\\text{even})<m',
  source: 'search',
});

/** Units of the spacings of one beam. */
const keptUnit = { all: 'm', further: { from: 'm', to: 'm' }, widest: 'm' } as const;

export const allowedSpacings = derived({
  id: 'scan.allowedSpacings',
  name: 'line spacings for the modulation let pass',
  symbol: '\\Delta y_\\text{max}',
  unit: { shaped: keptUnit, plain: keptUnit },
  about:
    'Line spacings that keep the modulation across the lines at what is let pass or below, with the plate and with the plate taken out: the one up to which this and every closer one does, the first range of wider ones that does as well, and the widest that does; searched up to three diameters of the wider spot.',
  from: { ...bothSpots, ...bothWidths, limit: largestModulation },
  compute: ({ spot, plain, width, plainWidth, limit }): Record<'shaped' | 'plain', KeptSpacings> => {
    const end = 3 * Math.max(width, plainWidth);
    const shaped = keptSpacings(modulationOf(spot), limit, end);
    const unshaped = keptSpacings(modulationOf(plain), limit, end);
    if (shaped !== null && unshaped !== null) return { shaped, plain: unshaped };
    throw new Problem(
      'absent',
      `No line spacing is the widest for a modulation of ${formatReadable(limit, '1', '%', 3)}: either the closest lines exceed it, or those three spot diameters apart keep it. Let another modulation pass.`,
      { input: 'comparison.largestModulation', value: formatReadable(limit, '1', '%', 3) },
    );
  },
  shownAs: ({ shaped, plain }) =>
    `up to ${formatReadable(shaped.widest, 'm', 'um', 3)}, up to ${formatReadable(plain.widest, 'm', 'um', 3)} without the plate`,
  formula: 'm(\\Delta y)\\le m_\\text{max}',
  source: 'search',
  heavy: 'search',
});
