import { readFileSync } from 'node:fs';
import { designs } from '../../data/designs/make.ts';
import { leaveOut } from '../../lib/design/leftOut.ts';
import { readSpotFile } from '../../lib/design/spotFile.ts';
import type { PlaneVerdict } from '../../lib/process/planeVerdict.ts';
import type { Values } from './designOutcomes.ts';
import { here } from './runCommand.ts';
import type { Case } from './sentenceCases.ts';

const name = 'rain-gauge-spots.csv';
const text = readFileSync(here(`data/measured/${name}`), 'utf8');
const rainGauge = designs['rain-gauge-funnel.json']!.patch;
const given: Values = { ...rainGauge, 'threshold.spotTable': readSpotFile(text, name) };
const withoutOutlier: Values = { ...given, 'threshold.leftOut': leaveOut(18, 'outlier', []) };
const few: Values = {
  ...rainGauge,
  'threshold.spotTable': readSpotFile('E (µJ);d (µm);N\n9;44;5\n12;0;5\n', 'few.csv'),
};
/** Verdicts as they come out of a coupon, held. */
const plane: PlaneVerdict = {
  z: 0,
  pulses: 1,
  seen: 9,
  unmarked: 0,
  verdict: 'confirmed',
  reasons: [],
  threshold: { value: 2000, uncertainty: 50 },
};
const many = (wrong: number) =>
  Array.from(
    { length: 12 },
    (_, i): PlaneVerdict => ({ ...plane, z: 1e-5 * i, verdict: i < wrong ? 'not confirmed' : 'confirmed' }),
  );
const verdicts = (value: (id: string) => number) =>
  value('coupon.planeVerdicts') as unknown as readonly PlaneVerdict[];

/** Cases of the sentence about the planes of a coupon. */
export const planeVerdictCases: readonly Case[] = [
  {
    says: 'planeVerdictsSaid',
    design: withoutOutlier,
    text: /^At z.=.0.mm \(19 marks and 2 places without\) the predicted profile is confirmed, with a threshold of 0\.2\d*.±.0\.00\d+.J\/cm²\. The marks lie/,
    truth: (value) =>
      Math.abs(verdicts(value)[0]!.threshold!.value - 2100) < 3 * verdicts(value)[0]!.threshold!.uncertainty,
  },
  {
    says: 'planeVerdictsSaid',
    design: given,
    text: /^At z.=.0.mm \(20 marks .*is not confirmed, with a threshold.*times what the scatter/,
    truth: (value) => verdicts(value)[0]!.verdict === 'not confirmed',
  },
  {
    says: 'planeVerdictsSaid',
    design: few,
    text: /^At z.=.0.mm, 5 pulses \(1 mark and 1 place without\) it cannot be told whether the profile is as predicted\. The table gives 1 mark, not enough/,
    truth: (value) => verdicts(value)[0]!.threshold === null,
  },
  {
    says: 'planeVerdictsSaid',
    pins: { 'coupon.planeVerdicts': many(2) },
    text: /^In 10 of 12 groups .* is confirmed\. At z.=.0.mm \(9 marks\) the predicted profile is not confirmed.*At z.=.0\.01.mm .*\.$/,
    truth: (value) => verdicts(value).filter(({ verdict }) => verdict === 'confirmed').length === 10,
  },
  {
    says: 'planeVerdictsSaid',
    pins: { 'coupon.planeVerdicts': many(9) },
    text: /^In 3 of 12 groups .* 3 more are not confirmed or undecided\.$/,
    truth: (value) => verdicts(value).filter(({ verdict }) => verdict === 'confirmed').length === 3,
  },
];
