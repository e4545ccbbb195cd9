import { focusRadius } from '../../lib/design/focus.ts';
import { unshapedAsked } from '../../lib/design/marks.ts';
import {
  unshapedAccumulatedPulses,
  unshapedLinesPerSpot,
  unshapedPulsesPerSpot,
  unshapedSpotDiameter,
} from '../../lib/design/pulsesOnPlace.ts';
import { lineSpacing, pulseSpacing } from '../../lib/design/scanInputs.ts';
import type { Random } from '../../lib/numerics/random.ts';
import type { Spot } from '../../lib/optics/askedSpot.ts';
import { math, prose, term } from '../prose.ts';
import { type Lesson, numberTask } from './lesson.ts';
import { counting, faster } from './pulsesAndDoseChoices.ts';
import { linesFigure, pulsesOnLineFigure, sharesFigure } from './pulsesAndDoseFigures.ts';
import { rounded } from './rounded.ts';

/** A plain Gaussian without a stop, some pulses per spot, and a peak a little or well above the threshold. */
function draw(random: Random) {
  const beamRadius = rounded(random.between(3e-3, 5e-3), 2);
  const focalLength = 0.1;
  const spot = (1.03e-6 * focalLength) / (Math.PI * beamRadius);
  const rate = 50e3 * Math.round(random.between(2, 8));
  const threshold = rounded(random.between(1500, 3500), 2);
  const excess = random.uniform() < 0.5 ? random.between(1.2, 1.5) : random.between(3.2, 4.5);
  return {
    'laser.beamDiameter': beamRadius,
    'plate.stepDiameter': 2 * beamRadius,
    'plate.stop': 'open',
    'lens.focalLength': focalLength,
    'laser.repetitionRate': rate,
    'scan.speed': rounded((2 * spot * rate) / random.between(7, 20), 2),
    'scan.lineSpacing': rounded(spot * random.between(0.4, 1), 2),
    'threshold.source': 'typed',
    'threshold.typedFluence': threshold,
    'laser.pulseEnergy': rounded((excess * threshold * Math.PI * spot ** 2) / 2, 3),
  };
}

const perSpot = numberTask({
  id: 'pulses-per-spot',
  stage: 'observe',
  question: prose`
    The spot has a 1/e² **radius** of ${focusRadius}, the pulses lie ${pulseSpacing} apart. **${term('Pulses per spot')}** are those fired while the spot moves by its own 1/e² diameter. How many are they?
  `,
  shows: [pulsesOnLineFigure],
  from: { count: unshapedPulsesPerSpot, diameter: unshapedSpotDiameter, spacing: pulseSpacing },
  unit: '1',
  display: '1',
  within: 0.04,
  answer: ({ count }) => count,
  errors: [
    {
      id: 'radius',
      reason: prose`You have counted over the radius. The spot moves by its whole diameter, twice as far.`,
      answer: ({ diameter, spacing }) => diameter / 2 / spacing,
    },
    {
      id: 'full-width',
      reason: prose`That counts over the full width at half the peak (FWHM), 0.59 of the 1/e² diameter. It is a count too, but not the one that was asked for.`,
      answer: ({ diameter, spacing }) => (diameter * Math.sqrt(Math.LN2 / 2)) / spacing,
    },
    {
      id: 'one-over-e',
      reason: prose`That counts over the diameter at 1/e, which is √2 smaller than the one at 1/e².`,
      answer: ({ diameter, spacing }) => diameter / Math.SQRT2 / spacing,
    },
  ],
  explanation: prose`
    The diameter over the pulse spacing, ${math`2wf/v`}: ${unshapedPulsesPerSpot}. So many pulses of one line touch a place, each with another part of its spot.
  `,
});

/** Full peaks that one line brings to a place on it: the fluence of each pulse there over the peak, added up. */
function lineDose(spot: Spot, spacing: number): number {
  let sum = spot.irradianceAt(0, 0);
  const reach = Math.ceil(Math.sqrt(20 * spot.effectiveArea) / spacing);
  for (let i = 1; i <= reach; i++) sum += 2 * spot.irradianceAt(i * spacing, 0);
  return sum / spot.peak;
}

const line = numberTask({
  id: 'one-line',
  stage: 'observe',
  question: prose`
    Not every pulse brings its peak. The chart shows what each pulse of one line brings to the place in the middle. Added up in units of the peak, how many **full peaks** does that place get? You can add the points, or use what they add up to where they lie close, ${math`\sqrt{\pi/2}\;w/p`}, with ${math`w =`} ${focusRadius} and ${math`p =`} ${pulseSpacing}.
  `,
  shows: [sharesFigure],
  from: { spot: unshapedAsked, spacing: pulseSpacing, count: unshapedPulsesPerSpot, radius: focusRadius },
  unit: '1',
  display: '1',
  within: 0.04,
  answer: ({ spot, spacing }) => lineDose(spot, spacing),
  errors: [
    {
      id: 'pulses-per-spot',
      reason: prose`Those are the pulses per spot, each counted whole. But most of them meet the place with their flank and bring only a part of the peak.`,
      answer: ({ count }) => count,
    },
    {
      id: 'factor-left-out',
      reason: prose`That is ${math`w/p`} alone. The factor √(π/2) = 1.25 in front is missing.`,
      answer: ({ radius, spacing }) => radius / spacing,
    },
    {
      id: 'one-over-e',
      reason: prose`That comes out with the radius at 1/e. The formula belongs to the radius at 1/e², which is √2 larger.`,
      answer: ({ radius, spacing }) => (Math.sqrt(Math.PI / 2) * radius) / Math.SQRT2 / spacing,
    },
  ],
  explanation: prose`
    Pulses per spot, ${unshapedPulsesPerSpot}, are 1.6 times as many as the full peaks that one line brings. Both are in use, often under the same name: ask which one a paper means.
  `,
});

const field = numberTask({
  id: 'field',
  stage: 'observe',
  question: prose`
    Now a whole field, with lines ${lineSpacing} apart and pulses ${pulseSpacing} apart in each. A spot with a 1/e² radius of ${focusRadius} brings its energy over an **${term('effective area')}** of ${math`\pi w^2/2`}: the area that would take it all at the peak. How many full peaks does each place get on average?
  `,
  shows: [linesFigure],
  from: {
    count: unshapedAccumulatedPulses,
    perSpot: unshapedPulsesPerSpot,
    lines: unshapedLinesPerSpot,
    spot: unshapedAsked,
    spacing: pulseSpacing,
  },
  unit: '1',
  display: '1',
  within: 0.04,
  answer: ({ count }) => count,
  errors: [
    {
      id: 'pulses-times-lines',
      reason: prose`That is pulses per spot times lines per spot: every pulse that touches the place, counted as a full peak. Most bring much less. Use the effective area.`,
      answer: ({ perSpot, lines }) => perSpot * lines,
    },
    {
      id: 'mean-for-peak',
      reason: prose`You have taken the whole 1/e² circle, ${math`\pi w^2`}. In units of the peak the effective area counts, which is half of it.`,
      answer: ({ perSpot, lines }) => (Math.PI / 4) * perSpot * lines,
    },
    {
      id: 'one-line',
      reason: prose`That is what one line brings. The lines beside it bring their part too, since the spot is wider than their distance.`,
      answer: ({ spot, spacing }) => lineDose(spot, spacing),
    },
  ],
  explanation: prose`
    Each pulse has ${math`p\,\Delta y`} of the field for itself, pulse spacing times line spacing, and brings as much as its effective area full of peak: ${math`\pi w^2/(2p\,\Delta y)`}, ${unshapedAccumulatedPulses}. Times the peak fluence that is the **accumulated fluence**, the energy of all pulses per area.
  `,
});

export const pulsesAndDose: Lesson = {
  id: 'pulses-and-dose',
  title: 'Pulses per spot and dose',
  about:
    'You can tell pulses per spot, accumulated fluence and the pulses that act apart, and work out each.',
  minutes: 8,
  draw,
  tasks: [faster, perSpot, line, field, counting],
};
