import { derived } from '../graph/define.ts';
import { formatNumber } from '../graph/units.ts';
import { planeOfDefocus } from '../optics/light.ts';
import { spotAt } from '../optics/spot.ts';
import { tiltedSpot } from '../optics/tiltedSpot.ts';
import { partsByWidth, planeGain, windowWidths } from '../process/windowByPlane.ts';
import { light, rayleighLength } from './focus.ts';
import { plateTransmission } from './losses.ts';
import { asked, unshapedAsked } from './marks.ts';
import { incidence, incidenceDirection } from './rippleInputs.ts';
import {
  checkCounts,
  noWindow,
  pulsesHigh,
  pulsesLow,
  slantNote,
  windowHigh,
  windowLow,
} from './rippleWindow.ts';
import { lineSpacing, pulseSpacing, pulsesInPlace } from './scanInputs.ts';
import { incubationExponent } from './threshold.ts';

export const insideByWidth = derived({
  id: 'ripples.insideByWidth',
  name: 'part of the field inside against the width of the window',
  symbol: 'a_\\text{in}(F_2/F_1)',
  unit: { ratio: '1', shaped: '1', plain: '1' },
  about:
    'Part of the scanned field inside the window for windows of other widths, the peak fluence on the surface at the upper bound for both beams, scanned alike.',
  from: {
    spot: asked,
    plainSpot: unshapedAsked,
    pulseSpacing,
    lineSpacing,
    passes: pulsesInPlace,
    pulsesLow,
    pulsesHigh,
    exponent: incubationExponent,
    incidence,
    direction: incidenceDirection,
    rayleigh: rayleighLength,
  },
  compute: ({ spot, plainSpot, pulseSpacing, lineSpacing, passes, incidence, direction, ...pulses }) => {
    checkCounts(pulses);
    const field = { pulseSpacing, lineSpacing, passes };
    const inside = (one: typeof spot) =>
      Float64Array.from(
        partsByWidth(tiltedSpot(one, incidence, direction), field, pulses),
        (parts) => parts.inside,
      );
    return {
      ratio: Float64Array.from(windowWidths),
      shaped: inside(spot),
      plain: inside(plainSpot),
    };
  },
  valid: slantNote,
  shownAs: ({ ratio }) => `${ratio.length} widths`,
  formula: 'a_\\text{in}\\ \\text{at}\\ F_\\text{peak}=F_2',
  source: 'search',
  heavy: 'search',
});

const planeUnits = { defocus: '1', gain: '1', axisDip: '1' } as const;
/** Planes looked at: from the focus to one Rayleigh length behind it, 0.025 apart. */
const planes = 41;
/** The axis lies no further below the peak than this in a plane without a dip. */
const flatBelow = 0.01;

export const gainByPlane = derived({
  id: 'ripples.gainByPlane',
  name: 'gain of a single pulse by plane',
  symbol: 'G_{A,F_2}(\\zeta)',
  unit: { planes: planeUnits, best: planeUnits, flat: planeUnits },
  about:
    'Area of one pulse between the bounds for ripples per energy over that of a Gaussian, both peaks at the upper bound, in planes from the focus to one Rayleigh length behind it; the best of them, and the first whose axis lies less than 1\u202f% below its peak, the one without a dip. The losses of the plate and the stop count.',
  from: { light, low: windowLow, high: windowHigh, plate: plateTransmission },
  compute: ({ light, low, high, plate }) => {
    if (high <= low) throw noWindow();
    const at = (defocus: number) => {
      const one = planeGain(spotAt(light, planeOfDefocus(light, defocus)), defocus, high / low);
      return { ...one, gain: plate * one.gain };
    };
    const all = Array.from({ length: planes }, (_, i) => at(i / (planes - 1)));
    return {
      planes: all,
      best: all.reduce((a, b) => (b.gain > a.gain ? b : a)),
      flat: all.find(({ axisDip }) => axisDip < flatBelow) ?? null,
    };
  },
  shownAs: ({ best }) => `${formatNumber(best.gain, 3)} at best`,
  formula: 'G_{A,F_2}',
  source: 'search',
  heavy: 'search',
});
