import { smoothing } from '../lib/design/micrographInputs.ts';
import { counterClockwise, warningsOf } from '../lib/design/micrographResults.ts';
import { firstMicrograph, type Micrograph, otherMicrograph } from '../lib/design/micrographs.ts';
import type { Quantity } from '../lib/graph/quantity.ts';
import { formatReadable } from '../lib/graph/units.ts';
import type { CoherenceLength } from '../lib/measured/rippleCoherence.ts';
import type { RipplePicture } from '../lib/measured/ripplePicture.ts';
import { irregularities, regularityCells, regularityRule, weakCells } from './micrographWords.ts';
import { type Phrase, phrase, type Sentence, says } from './prose.ts';
import { angleText, listed, percentText } from './shortTexts.ts';

const pixels = (value: number, digits = 4) => formatReadable(value, '1', 'px', digits);

/** The notes on rows that were left out. */
const leftOutNotes = ({ notes, written }: RipplePicture) => notes.slice(0, written.length);

/** The second kind of ripples. */
function secondSaid(m: Micrograph, { second }: RipplePicture, pitch: number | null): Phrase {
  if (!second) return 'No second period stands out.';
  const length =
    pitch === null
      ? `${pixels(second.period)} ± ${pixels(second.periodUncertainty, 2)}`
      : phrase`${m.secondPeriod} ± ${m.secondPeriodUncertainty}`;
  return phrase`A second kind of ripples lies ${length} apart, with its wave vector at ${m.secondDirection}.`;
}

/** Period and direction. */
function rippledSaidOf(m: Micrograph, letter: string): Sentence {
  return says(
    { found: m.found, pitch: m.knownPitch },
    ({ found, pitch }) => {
      const leftOut = leftOutNotes(found).map((note) => ` ${note}`);
      if (!found.main)
        return phrase`No ripples were found in micrograph ${letter}. ${found.without!.text}${leftOut.join('')}`;
      const apart =
        pitch === null
          ? phrase`${m.periodPixels} ± ${m.periodPixelsUncertainty} apart; how long a pixel is has not been said`
          : phrase`${m.period} ± ${m.periodUncertainty} apart`;
      return phrase`Micrograph ${letter} shows ripples ${apart}. Their wave vector, the direction in which they repeat, lies at ${m.direction} ± ${m.directionUncertainty} in the picture, and the ridges run at right angles to it. ${secondSaid(m, found, pitch)}${leftOut.join('')}`;
    },
    [
      m.periodPixels,
      m.periodPixelsUncertainty,
      m.period,
      m.periodUncertainty,
      m.direction,
      m.directionUncertainty,
      m.secondPeriod,
      m.secondPeriodUncertainty,
      m.secondDirection,
    ],
  );
}

export const rippledSaid = rippledSaidOf(firstMicrograph, 'A');
export const otherRippledSaid = rippledSaidOf(otherMicrograph, 'B');

/** A coherence length with what is known of it. */
function coherenceSaid(
  quantity: Quantity,
  { length, atLeast }: CoherenceLength,
  pitch: number | null,
): Phrase {
  const shown = pitch === null ? pixels(length, 3) : quantity;
  return phrase`${atLeast ? 'at least ' : ''}${shown}`;
}

/** How regular the field is. */
function regularSaidOf(m: Micrograph): Sentence {
  return says(
    { found: m.found, pitch: m.knownPitch },
    ({ found, pitch }) => {
      const { main, orientation } = found;
      if (!main) return '';
      const scatter =
        orientation.halfWidth === undefined
          ? phrase`The local orientation, smoothed over ${smoothing}, nowhere falls to half of its maximum`
          : phrase`The local orientation, smoothed over ${smoothing}, has a half-width of ${m.halfWidth}`;
      const kept = phrase`the ripples stay in step over ${coherenceSaid(m.coherenceAlong, main.coherenceAlong, pitch)} along the wave vector and ${coherenceSaid(m.coherenceAcross, main.coherenceAcross, pitch)} along the ridges`;
      const weak = `${weakCells(found)} of ${regularityCells(found)} cells of the map of local regularity lie below 0.5`;
      const against = irregularities(found);
      const verdict = against.length === 0 ? 'this one is' : `this one is not, for ${listed(against)}`;
      return phrase`${scatter}; ${kept}; ${weak}. ${regularityRule}: ${verdict}.`;
    },
    [smoothing, m.halfWidth, m.coherenceAlong, m.coherenceAcross],
  );
}

export const regularSaid = regularSaidOf(firstMicrograph);
export const otherRegularSaid = regularSaidOf(otherMicrograph);

/** What tells against the numbers; nothing where nothing does. */
function warningOf(m: Micrograph, letter: string): Sentence {
  return says({ found: m.found }, ({ found }) => {
    const against = warningsOf(found);
    return against.length === 0 ? '' : `Micrograph ${letter}: ${against.join(' ')}`;
  });
}

export const micrographWarning = warningOf(firstMicrograph, 'A');
export const otherMicrographWarning = warningOf(otherMicrograph, 'B');

/** Two standard uncertainties. */
export const coverage = 2;

/** The measured values that are compared, with what they leave open. */
interface Compared {
  readonly value: number;
  readonly uncertainty: number;
}

/** True where two values differ by more than twice their combined uncertainty. */
const differ = (a: Compared, b: Compared, apart = Math.abs(a.value - b.value)) =>
  apart > coverage * Math.hypot(a.uncertainty, b.uncertainty);

/** Angle between two lines, 0 to π/2. */
export function betweenLines(a: number, b: number): number {
  const turn = Math.abs(a - b) % Math.PI;
  return Math.min(turn, Math.PI - turn);
}

const compared = {
  foundA: firstMicrograph.found,
  foundB: otherMicrograph.found,
  pitchA: firstMicrograph.knownPitch,
  pitchB: otherMicrograph.knownPitch,
  scanA: firstMicrograph.scanAngle,
  scanB: otherMicrograph.scanAngle,
};

/** Periods of both pictures. */
function periodsCompared(a: Compared, b: Compared, pitchA: number | null, pitchB: number | null): string {
  if ((pitchA === null) !== (pitchB === null))
    return `The periods cannot be compared before the scale of micrograph ${pitchA === null ? 'A' : 'B'} is said.`;
  const [scaleA, scaleB] = [pitchA ?? 1, pitchB ?? 1];
  const scaled = ({ value, uncertainty }: Compared, by: number) => ({
    value: value * by,
    uncertainty: uncertainty * by,
  });
  const [first, other] = [scaled(a, scaleA), scaled(b, scaleB)];
  const proviso =
    pitchA === null ? 'If both were taken at the same magnification, the periods' : 'The periods';
  if (!differ(first, other)) return `${proviso} agree within twice their combined uncertainty.`;
  const change = percentText(Math.abs(other.value / first.value - 1), 2);
  return `${proviso} differ by more than twice their combined uncertainty: that of B is ${change} ${other.value > first.value ? 'longer' : 'shorter'}.`;
}

/** Half-widths of both pictures; without an uncertainty nothing is made of their difference. */
function widthsCompared(a: RipplePicture, b: RipplePicture, sameScale: boolean): string {
  const [first, other] = [a.orientation.halfWidth, b.orientation.halfWidth];
  if (first === undefined || other === undefined) return '';
  const smoothed = sameScale
    ? 'with the same smoothing'
    : 'with the same smoothing in pixels, which is the same length only where the scales are alike';
  return ` The half-width is ${angleText(first)} in A and ${angleText(other)} in B, ${smoothed}.`;
}

/** Pitches closer than this count as alike. */
const alike = 0.02;

/** Micrograph B beside micrograph A. */
export const micrographsCompared = says(compared, ({ foundA, foundB, pitchA, pitchB, scanA, scanB }) => {
  const [a, b] = [foundA.main, foundB.main];
  if (!a || !b)
    return a || b
      ? `Only micrograph ${a ? 'A' : 'B'} shows ripples, so there is nothing to compare.`
      : 'Neither micrograph shows ripples.';
  const period = (main: typeof a): Compared => ({ value: main.period, uncertainty: main.periodUncertainty });
  const direction = (main: typeof a, scan: number): Compared => ({
    value: counterClockwise(main.direction) - scan,
    uncertainty: main.directionUncertainty,
  });
  const [lineA, lineB] = [direction(a, scanA), direction(b, scanB)];
  const turn = betweenLines(lineA.value, lineB.value);
  const turned = differ(lineA, lineB, turn)
    ? `lie ${angleText(turn)} apart, more than twice their combined uncertainty`
    : 'agree within twice their combined uncertainty';
  const sameScale = pitchA !== null && pitchB !== null && Math.abs(pitchB / pitchA - 1) < alike;
  const lines =
    scanA === 0 && scanB === 0 ? 'directions in the pictures' : 'directions against the scan, as typed,';
  return `${periodsCompared(period(a), period(b), pitchA, pitchB)} Their ${lines} ${turned}.${widthsCompared(foundA, foundB, sameScale)}`;
});
