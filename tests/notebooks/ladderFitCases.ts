import type { FittedLadder } from '../../lib/design/ladderFit.ts';
import { readLadderFile } from '../../lib/design/spotFile.ts';
import type { NamedSpots } from '../../lib/measured/spotTable.ts';
import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

/**
 * Marks of a Gaussian of w0 = 6.557 µm and zR = 0.1311 mm (initial design, no stop), fired with 0.27 µJ at a threshold of
 * 0.2 J/cm², which is twice in the focus, at a reading of 12 mm: D² = 2w² ln(2/(1 + ζ²)), w² = w0² (1 + ζ²).
 */
const rungs = [-1.5, -1.25, -1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1, 1.25, 1.5].map((zeta, i) => {
  const squared = 2 * 6.557 ** 2 * (1 + zeta ** 2) * Math.log(2 / (1 + zeta ** 2));
  const diameter = squared > 0 ? Math.sqrt(squared) * (1 + 0.01 * Math.sin(5 * i)) : 0;
  return [12 + 0.1311437 * zeta, diameter] as const;
});
const ladderOf = (head: string, row: (z: number, d: number) => string) =>
  readLadderFile([head, ...rungs.map(([z, d]) => row(z, d))].join('\n'), 'ladder.csv');
const start: Values = {
  'plate.stop': 'open',
  'threshold.source': 'typed',
  'threshold.typedFluence': 2000,
  'ladder.excess': 2,
};
const bare: Values = {
  ...start,
  'ladder.table': ladderOf('z (mm);d (µm);plate;E (µJ)', (z, d) => `${z};${d};0;0.27`),
};
const without = (head: string, more: string, rows = 'without'): Values => ({
  ...start,
  'ladder.rows': rows,
  'ladder.table': ladderOf(`z (mm);d (µm)${head}`, (z, d) => `${z};${d}${more}`),
});
const tableOf = (value: (id: string) => number) => value('ladder.measured') as unknown as NamedSpots;
const fitOf = (value: (id: string) => number) => value('ladder.fit') as unknown as FittedLadder;

const pinned = (more: object): Values => ({
  'ladder.fit': {
    verdict: 'describes',
    reason: '',
    used: 40,
    unmarked: 1,
    zero: { value: 1.2e-3, uncertainty: 2e-6, interval: [1.196e-3, 1.204e-3] },
    direction: null,
    directionEvidence: 0,
    thresholdFluence: { value: 2000, uncertainty: 20, interval: [1960, 2040] },
    alone: [{ direction: -1 }, { direction: 1 }],
    curves: { shaped: [{}], unshaped: [] },
    rivals: [],
    ...more,
  },
});
const always = () => true;
const both = readLadderFile(
  'z (mm);d (µm);plate;remark;operator\n0;20;1;;\n0;21;1;;\n0;20;0;;\n',
  'both.csv',
);
const coupon = (sizes: string) =>
  readLadderFile(`x on coupon (mm);y on coupon (mm);z (mm);d (µm)\n0;0;0;20\n${sizes}`, 'part.csv');

/** Cases of the sentences about a measured ladder. */
export const ladderFitCases: readonly Case[] = [
  {
    says: 'ladderTableSaid',
    design: bare,
    text: /^The table has 13 places made without the plate\. Their energies count as the table gives them\.$/,
    truth: (value) => tableOf(value).rows.every(({ plate, energy }) => plate === false && energy! > 0),
  },
  {
    says: 'ladderTableSaid',
    design: without('', ''),
    text: /^The table has 13 places made without the plate, as the ladder is planned, since the table has no column “plate”\. It gives no energies, so the planned ones count, 0\.27\d?\sµJ\.$/,
    truth: (value) => Math.abs(value('ladder.unshaped.energy') - 0.27e-6) < 0.01e-6,
  },
  {
    says: 'ladderTableSaid',
    design: without('', '', 'both'),
    text: /^The table has 13 places made with the plate, as .* the planned ones count, 0\.\d+\sµJ\.$/,
    truth: (value) => tableOf(value).rows.length === 13,
  },
  {
    says: 'ladderTableSaid',
    design: { ...start, 'ladder.table': both },
    text: /^The table has 2 places made with the plate and 1 without it\. It .* count, 0\.\d+\sµJ with the plate and 0\.\d+\sµJ without it\.$/,
    truth: (value) => tableOf(value).rows.filter(({ plate }) => plate).length === 2,
  },
  { says: 'ladderLeftSaid', design: bare, text: /^$/, truth: (value) => tableOf(value).ignored.length === 0 },
  {
    says: 'ladderLeftSaid',
    design: { 'ladder.table': both },
    text: /^Nothing is read from the columns "remark", "operator"\.$/,
    truth: (value) => tableOf(value).ignored.length === 2,
  },
  {
    says: 'ladderLeftSaid',
    design: { 'ladder.table': readLadderFile('z (mm);d (µm);remark\n0;20;\n', 'one.csv') },
    text: /^Nothing is read from the column "remark"\.$/,
    truth: (value) => tableOf(value).ignored.length === 1,
  },
  {
    says: 'ladderLeftSaid',
    design: { 'ladder.table': coupon('0;0;1;\n') },
    text: /1 row has no size yet; a mark that was looked for/,
    truth: (value) => tableOf(value).unmeasured.length === 1,
  },
  {
    says: 'ladderLeftSaid',
    design: { 'ladder.table': coupon('0;0;1;\n0;0;2;\n') },
    text: /2 rows have no size yet/,
    truth: (value) => tableOf(value).unmeasured.length === 2,
  },
  {
    says: 'ladderZeroSaid',
    design: bare,
    text: /^\d+ marks and \d places without a mark put the focus at a reading of 1[12]\.[09]\d+\smm, with a standard uncertainty of [\d.]+\sµm; with 95\s% it lies between 1[12]\.[09]\d+\smm and 12\.0\d+\smm, if the prediction is right\. With fewer than 9 marks the interval is often too narrow\.$/,
    truth: (value) => Math.abs(value('ladder.zero') - 12e-3) < 3 * value('ladder.zeroUncertainty'),
  },
  {
    says: 'ladderZeroSaid',
    pins: pinned({}),
    text: /^40 marks and 1 place without a mark put the focus at a reading of 1\.2\smm, with a standard uncertainty of 2\sµm; with 95\s% it lies between 1\.196\smm and 1\.204\smm, if the prediction is right\.$/,
    truth: always,
  },
  {
    says: 'ladderZeroSaid',
    pins: pinned({ unmarked: 0, zero: { value: 0, uncertainty: 2e-6, interval: [-4e-6, 4e-6] } }),
    text: /^40 marks put the focus at a reading of 0\smm, .* between −0\.004\smm and 0\.004\smm/,
    truth: always,
  },
  {
    says: 'ladderZeroSaid',
    pins: pinned({ rivals: [1.31e-3, 1.1e-3] }),
    text: /if the prediction is right\. But a focus at 1\.31\smm or 1\.1\smm fits about as well: add marks further out and between/,
    truth: always,
  },
  {
    says: 'ladderDirectionSaid',
    design: bare,
    text: /^Which way the readings count these marks cannot tell: a focus without the plate is alike/,
    truth: (value) => fitOf(value).direction === null && fitOf(value).directionEvidence < 1e-6,
  },
  {
    says: 'ladderDirectionSaid',
    pins: pinned({ direction: 1, directionEvidence: 20 }),
    text: /^The readings grow away from the lens, so that z\s=\sreading\s− 1\.2\smm\.$/,
    truth: always,
  },
  {
    says: 'ladderDirectionSaid',
    pins: pinned({ direction: -1, directionEvidence: 20 }),
    text: /^The readings grow towards the lens, so that z\s=\s1\.2\smm\s− reading\.$/,
    truth: always,
  },
  {
    says: 'ladderDirectionSaid',
    pins: pinned({}),
    text: /the two sides of the focus behind this plate are alike\. See which way the stage moves; the zero is the same for both\.$/,
    truth: always,
  },
  {
    says: 'ladderDirectionSaid',
    pins: pinned({ directionEvidence: 4 }),
    text: /is not certain: that they grow towards the lens is 7\.4 times as likely as the other way, where 90 times .* The interval holds the zeros of both\.$/,
    truth: () => Math.abs(Math.exp(4 / 2) - 7.4) < 0.05,
  },
  {
    says: 'ladderDirectionSaid',
    pins: pinned({ directionEvidence: 4, alone: [{ direction: 1 }, { direction: -1 }] }),
    text: /that they grow away from the lens is 7\.4 times/,
    truth: always,
  },
  {
    says: 'ladderVerdictSaid',
    design: bare,
    text: /^The predicted spot describes the marks\.$/,
    truth: (value) => fitOf(value).verdict === 'describes',
  },
  {
    says: 'ladderVerdictSaid',
    pins: pinned({ verdict: 'too few', reason: '3 different energies cannot tell.' }),
    text: /^Whether the predicted spot describes the marks cannot be told\. 3 different/,
    truth: always,
  },
  {
    says: 'ladderVerdictSaid',
    pins: pinned({ verdict: 'does not describe', reason: 'The marks are larger.' }),
    text: /does not describe the marks, so that zero and interval are not to be trusted\. The marks are larger\.$/,
    truth: always,
  },
];
