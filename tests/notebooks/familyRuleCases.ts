import {
  asymmetric,
  cut,
  dark,
  noStep,
  open,
  range,
  ratio,
  sixFlat,
  wider,
  within7,
} from './familyDesigns.ts';
import type { Case } from './sentenceCases.ts';

interface Gap {
  readonly ringBetween: boolean;
  readonly widthRatio: number;
  readonly heightRatio: number;
  readonly largestDip: number;
}
const gap = (ringBetween: boolean, widthRatio: number, heightRatio: number, largestDip = 0.4) => ({
  kinds: [ringBetween ? 'ring' : 'peaked'],
  ringBetween,
  largestDip: ringBetween ? largestDip : 0,
  largestDipAt: 0.1,
  widthRatio,
  heightRatio,
  alike: Math.max(widthRatio, heightRatio) <= 1.25,
});
const verdict = (
  outcome: string,
  reading: string,
  run: number,
  gaps: readonly Gap[],
  flatTops = gaps.length + 1,
) => ({
  'rule.verdict': {
    outcome,
    reading,
    count: flatTops,
    run,
    order: 'flat-top, ring, flat-top',
    flatTops: Array.from({ length: flatTops }, (_, i) => ({ defocus: i, z: i, width: 1, relativePeak: 1 })),
    gaps,
    from: -7,
    to: 7,
  },
});
const always = () => true;
type Values = Parameters<Case['truth']>[0];
/** What the verdict holds for a design, read again. */
const judged = (value: Values) =>
  value('rule.verdict') as unknown as { count: number; run: number; outcome: string; gaps: readonly Gap[] };
const counts = (count: number, run: number) => (value: Values) =>
  judged(value).count === count && judged(value).run === run;

export const familyRuleCases: readonly Case[] = [
  {
    says: 'familyRuleSaid',
    pins: verdict('reproduced', 'three alike', 3, [
      gap(true, 1.24, 1.24, 0.9),
      gap(false, 2, 3),
      gap(true, 1.1, 1.2),
      gap(true, 1.02, 1, 0.07),
    ]),
    text: /^Reproduced: within 7 Rayleigh lengths of the focus there are 5 flat-tops, 3 of them in a row with rings between; neighbours there differ by at most 10\s% in width and 20\s% in height, and the rings dip by 40\s%, 7\s%\.$/,
    truth: always,
  },
  {
    says: 'familyRuleSaid',
    design: open,
    text: new RegExp(
      `^Reproduced in part: ${within7} there are 4 flat-tops, but no three .* Two neighbours do: equally wide and high, around a ring with a dip of 64\\s%\\. Elsewhere neighbours differ by factors of up to 1\\.7.? in width and 3\\.4.? in height .each in the middle of its stretch along z., with peaked profiles between\\.$`,
    ),
    truth: counts(4, 2),
  },
  {
    says: 'familyRuleSaid',
    text: /^Reproduced in part: .* 4 flat-tops, .* equally wide and high, around a shallow ring with a dip of 5\.1\s%\./,
    truth: (value) => counts(4, 2)(value) && judged(value).gaps[1]!.largestDip < 0.1,
  },
  {
    says: 'familyRuleSaid',
    design: asymmetric,
    text: /^Reproduced in part: .* 4 flat-tops, .* Two neighbours do: 4\.\d\s% apart in width and 1[23]\s% apart in height, around a ring with a dip of 79\s%\./,
    truth: counts(4, 2),
  },
  {
    says: 'familyRuleSaid',
    design: sixFlat,
    text: /^Reproduced in part: .* 6 flat-tops, .* equally wide and 4\.\d\s% apart in height, around a ring with a dip of 13\s%\. Elsewhere .* with rings between some and peaked profiles between others\.$/,
    truth: counts(6, 2),
  },
  {
    says: 'familyRuleSaid',
    pins: verdict('reproduced in part', 'pair among more', 2, [
      gap(true, 1.1, 1),
      gap(false, 1, 1),
      gap(true, 1.01, 1.02),
    ]),
    text: /2 pairs of neighbours do, the most alike: 1\s% apart in width and 2\s% apart in height, around a ring with a dip of 40\s%/,
    truth: always,
  },
  {
    says: 'familyRuleSaid',
    pins: verdict('reproduced in part', 'pair among more', 2, [gap(true, 1.1, 1), gap(true, 2, 3)]),
    text: /Two neighbours do: 10\s% apart in width and equally high, .* Elsewhere neighbours differ by factors of up to 2 in width and 3 in height .each in the middle of its stretch along z., with rings between\.$/,
    truth: always,
  },
  {
    says: 'familyRuleSaid',
    design: dark,
    text: /^Not reproduced: .* only two flat-tops, equally wide and high, around a ring with a dip of 100\s%; the rule speaks of at least three\.$/,
    truth: counts(2, 2),
  },
  {
    says: 'familyRuleSaid',
    design: { ...wider, ...ratio(1.2) },
    text: /^Not reproduced: .* 3 flat-tops, as many as the rule asks for, but no two neighbours that differ a little .* up to 1\.71 in width and 3\.15 in height .each in the middle of its stretch along z., with peaked profiles between\.$/,
    truth: counts(3, 1),
  },
  {
    says: 'familyRuleSaid',
    design: noStep,
    text: new RegExp(`^Not reproduced: ${within7} there is no flat-top\\.$`),
    truth: counts(0, 0),
  },
  {
    says: 'familyRuleSaid',
    design: { ...wider, ...ratio(1.2), ...range(1) },
    text: /^Not reproduced: within 1 Rayleigh length of the focus there is one flat-top only; the rule speaks of at least three\.$/,
    truth: counts(1, 1),
  },
  {
    says: 'familyRuleSaid',
    pins: verdict('not reproduced', 'none', 1, [gap(false, 1.7, 3.1)]),
    text: /^Not reproduced: .* there are only two flat-tops; they differ by factors of up to 1\.7 in width and 3\.1 in height .each in the middle of its stretch along z., with peaked profiles between\.$/,
    truth: always,
  },
  {
    says: 'familyOrderSaid',
    design: noStep,
    text: new RegExp(`^Everywhere ${within7} the profile is peaked\\.$`),
    truth: counts(0, 0),
  },
  {
    says: 'familyOrderSaid',
    design: { ...wider, ...ratio(1.2), ...range(0.3) },
    text: /^Everywhere within 0\.3 Rayleigh lengths of the focus the profile is a flat-top\.$/,
    truth: counts(1, 1),
  },
  {
    says: 'familyOrderSaid',
    design: open,
    text: new RegExp(
      `^Along the beam, ${within7}, the profile is in turn: ring, flat-top, peaked, flat-top, ring, flat-top, peaked, flat-top, ring \\(a shallow ring beside a ring counted as part of it\\)\\.$`,
    ),
    truth: counts(4, 2),
  },
  {
    says: 'familyOrderSaid',
    design: cut,
    text: /^(Along the beam|Everywhere),? between −\d\S* and \d\S* Rayleigh lengths from the focus \(as far as the formulas hold\)/,
    truth: (value) => (judged(value) as unknown as { to: number }).to < 7,
  },
  {
    says: 'dipRunSaid',
    design: noStep,
    text: /^There are no two flat-tops within 7 Rayleigh lengths of the focus/,
    truth: counts(0, 0),
  },
  {
    says: 'dipRunSaid',
    design: { ...wider, ...ratio(1.2) },
    text: /^Between neighbouring flat-tops within 7 .* the dip stays below 5\s%: the profiles there are peaked\.$/,
    truth: (value) => judged(value).gaps.every(({ largestDip }) => largestDip < 0.05),
  },
  {
    says: 'dipRunSaid',
    design: open,
    text: /^Along z, within 7 .*, the dip rises to 64\s% at ζ = 0 between the flat-tops at −0\.446 and 0\.446, and falls again on both sides\. Between the others it stays below 5\s%\.$/,
    truth: (value) => Math.abs(judged(value).gaps[1]!.largestDip - 0.64386) < 1e-4,
  },
  {
    says: 'dipRunSaid',
    design: dark,
    text: /the dip rises to 100\s% at ζ = 0 between the flat-tops at −0\.846 and 0\.846, and falls again on both sides\.$/,
    truth: (value) => judged(value).gaps.length === 1,
  },
];
