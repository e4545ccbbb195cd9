import { largestModulation } from '../lib/design/comparisonInputs.ts';
import { lineSpacing, passes, pulseSpacing } from '../lib/design/scanInputs.ts';
import { hatchAngle } from '../lib/design/scannerInputs.ts';
import {
  alongModulation,
  modulation,
  noModulationBelow,
  unshapedModulation,
} from '../lib/design/uniformity.ts';
import {
  allowedSpacings,
  evenerSpacing,
  lineProfiles,
  noModulation,
} from '../lib/design/uniformityCharts.ts';
import { type KeptSpacings, same } from '../lib/process/spacingSearch.ts';
import { type Phrase, phrase, says } from './prose.ts';
import { lengthText, percentText } from './shortTexts.ts';

const none = noModulation;
const left = (value: number) => (value < none ? `less than ${percentText(none)}` : percentText(value));

/** How even a field is across its lines and along them. */
export const evenSaid = says(
  {
    m: modulation,
    plain: unshapedModulation,
    along: alongModulation,
    spacing: lineSpacing,
    p: pulseSpacing,
    passes,
    angle: hatchAngle,
  },
  ({ m, plain, along, passes, angle }) => {
    const turned =
      Math.round(passes) > 1 && angle !== 0
        ? ' That is for one pass: turned passes lay their stripes over one another, and their sum is no less even.'
        : '';
    const pulses =
      along > 1e-3
        ? phrase` Along the lines the pulses, ${pulseSpacing} apart, leave ${alongModulation} besides.`
        : phrase` Along the lines the pulses, ${pulseSpacing} apart, leave next to nothing.`;
    return phrase`${acrossText(m, plain)}${pulses}${turned}`;
  },
);

function acrossText(m: number, plain: number): Phrase {
  if (m < none && plain < none)
    return phrase`Lines ${lineSpacing} apart leave a modulation of less than ${percentText(none)} across them, with the plate and without it: the field is even.`;
  const both = phrase`Lines ${lineSpacing} apart leave a modulation of ${left(m)} across them with the plate and of ${left(plain)} with the plate taken out`;
  if (m < 0.9 * plain) return phrase`${both}: the field is more even with the plate.`;
  if (m > 1.1 * plain) return phrase`${both}: the field is less even with the plate.`;
  return phrase`${both}: as even with either.`;
}

/** What the stop does to fine detail. */
export const noneBelowSaid = says(
  { below: noModulationBelow, spacing: lineSpacing },
  ({ below, spacing }) =>
    phrase`Behind the stop the spot holds no detail finer than ${noModulationBelow}. Lines closer than that leave no modulation at all, whatever the plate and the plane; today’s ${spacing < below ? 'are' : 'are not'}.`,
  [],
  'Without a stop the spot holds ever finer detail, ever weaker: no range of line spacings leaves exactly nothing, but close lines leave little.',
);

/** Which line spacing near today's is more even. */
export const evenerSaid = says(
  { evener: evenerSpacing, today: lineSpacing, m: modulation },
  ({ evener: { best }, today, m }) => {
    if (m < none)
      return `With the plate the field is as even as lines can make it: across them less than ${percentText(none)} of modulation is left.`;
    if (best === null)
      return 'Between half today’s line spacing and one and a half times it the modulation has no minimum.';
    const { spacing, modulation: there } = best;
    const at = `lines ${lengthText(spacing, 4)} apart`;
    if (Math.abs(spacing / today - 1) < same)
      return 'Today’s line spacing lies in a minimum of the modulation: a little closer or a little further is less even.';
    if (there >= m)
      return `The best minimum between half today’s line spacing and one and a half times it, ${left(there)} at ${at}, is no more even than today’s.`;
    const share = percentText(Math.abs(1 - today / spacing), 2);
    return spacing > today
      ? `The nearest minimum with wider lines is more even: ${at} leave ${left(there)}, with ${share} fewer lines than today’s. The mean accumulated fluence falls by as much.`
      : `Up to one and a half times today’s line spacing no minimum with wider lines is more even. One with closer lines is: ${at} leave ${left(there)}, with ${share} more lines than today’s. The mean accumulated fluence rises by as much.`;
  },
);

/** Which spacings of one beam keep the modulation let pass, besides those up to the first. */
const furtherText = ({ further }: KeptSpacings) =>
  further === null
    ? 'and no wider one does'
    : `and wider ones from ${lengthText(further.from)} to ${lengthText(further.to)} keep it as well`;

/** Which beam needs the closer lines for the modulation let pass. */
export const closerLinesSaid = says(
  { allowed: allowedSpacings, limit: largestModulation },
  ({ allowed: { shaped, plain } }) => {
    const each = phrase`With the plate every line spacing up to ${lengthText(shaped.all)} keeps the modulation at ${largestModulation} or below, ${furtherText(shaped)}. With the plate taken out every one up to ${lengthText(plain.all)} does, ${furtherText(plain)}.`;
    const both = phrase`${each} The widest lines that keep it lie ${lengthText(shaped.widest)} apart with the plate and ${lengthText(plain.widest)} without it`;
    const share = (ratio: number) => percentText(ratio - 1, 2);
    if (shaped.widest > 1.02 * plain.widest)
      return phrase`${both}: the plain beam needs the closer lines, the shaped one lets them lie ${share(shaped.widest / plain.widest)} further apart.`;
    if (plain.widest > 1.02 * shaped.widest)
      return phrase`${both}: the shaped beam needs the closer lines, the plain one lets them lie ${share(plain.widest / shaped.widest)} further apart.`;
    return phrase`${both}: both need lines about as close.`;
  },
);

/** Part of the width above half of the highest that lies above nine tenths of it. */
function flatness(values: Float64Array): number {
  const above = (level: number) => values.reduce((count, value) => count + (value > level ? 1 : 0), 0);
  return above(0.9) / above(0.5);
}

/** What a line makes of the profile of a pulse. */
export const lineAgainstPulseSaid = says({ profiles: lineProfiles }, ({ profiles }) => {
  const { shaped: line, shapedPulse: pulse } = profiles;
  const middle = (line.length - 1) / 2;
  const [inLine, inPulse] = [line[middle]!, pulse[middle]!];
  if (inPulse < 0.9) {
    const ring = `With the plate one pulse is a ring, ${percentText(1 - inPulse, 2)} lower in its middle than at its highest`;
    return inLine > 0.95
      ? `${ring}; the line that it writes is level: its middle lies ${percentText(1 - inLine, 2)} below its highest.`
      : `${ring}; the line that it writes keeps ${percentText(1 - inLine, 2)} of a dip in its middle.`;
  }
  const [flatLine, flatPulse] = [flatness(line), flatness(pulse)];
  const both = `With the plate one pulse stays above nine tenths of its highest over ${percentText(flatPulse, 2)} of its width at half height, and the line that it writes over ${percentText(flatLine, 2)}`;
  if (flatLine < flatPulse - 0.03)
    return `${both}: the line is rounder, as the chords of a disc are shorter towards its edge.`;
  if (flatLine > flatPulse + 0.03) return `${both}: the line is flatter than the pulse.`;
  return `${both}: as flat as one another.`;
});
