import type { Case } from './sentenceCases.ts';

const inside = { 'scan.turnRound': 'inside' };

/** Cases of the sentences about the path; the lecture table's spot is 26 µm wide as pulses are counted. */
export const pathCases: readonly Case[] = [
  {
    says: 'pathOrderSaid',
    text: /^The lines are written one beside the other, to and fro\.$/,
    truth: (value) => value('scan.passes') === 1,
  },
  {
    says: 'pathOrderSaid',
    design: { 'scan.directions': 'one', 'scan.passes': 3 },
    text: /one beside the other, all the same way\. Each of the 3 passes goes along the same lines\.$/,
    truth: (value) => value('scan.hatchAngle') === 0,
  },
  {
    says: 'pathOrderSaid',
    design: { 'scan.interlacing': 4, 'scan.passes': 2, 'scan.hatchAngle': Math.PI / 2 },
    text: /^Every 4th line is written first, to and fro, then round by round those between: .* Each of the 2 passes is turned by 90° against the one before\.$/,
    truth: (value) => value('scan.interlacing') === 4,
  },
  {
    says: 'pathOrderSaid',
    design: { 'scan.passes': 1.5 },
    text: /Each of the 2 passes goes along the same lines\.$/,
    truth: (value) => value('scan.passes') === 1.5,
  },
  {
    says: 'pathOrderSaid',
    design: { 'scan.interlacing': 3 },
    text: /^Every third line is written first, .* when heat has had time to spread\.$/,
    truth: (value) => value('scan.passes') === 1,
  },
  {
    says: 'pathOrderSaid',
    design: { 'scan.interlacing': 2 },
    text: /^Every second line is written first/,
    truth: (value) => value('scan.interlacing') === 2,
  },
  {
    says: 'turnRoundSaid',
    design: { 'scan.speed': 2 },
    text: /^The scanner turns round outside the field with the laser off\. Each end of a line needs an overscan of 200\sµm, the square/,
    truth: (value) => Math.abs(value('scan.overscan') - 2 ** 2 / 2e4) < 1e-9,
  },
  {
    says: 'turnRoundSaid',
    design: inside,
    text: /pulses crowd\. That way is short against the spot of [\d.]+\sµm, and the accumulated fluence at the edges rises to no more than 10[0-4](\.\d)?\s% of its mean\.$/,
    truth: (value) => value('scan.overscan') < value('scan.spotDiameter') && value('scan.edgeExcess') < 1.05,
  },
  {
    says: 'turnRoundSaid',
    design: { ...inside, 'scan.speed': 2 },
    text: /over 200\sµm at each end of a line .* pulses crowd: the accumulated fluence there rises to \d+\s% of its mean\. Turn round outside with the laser off, which takes an overscan of 200\sµm at each end,/,
    truth: (value) => value('scan.edgeExcess') > 1.05,
  },
  {
    says: 'turnRoundSaid',
    design: { ...inside, 'scan.speed': 2 },
    pins: { 'scan.edgeExcess': 1 },
    text: /pulses crowd\. The accumulated fluence at the edges rises to no more than 100\s% of its mean\.$/,
    truth: (value) => value('scan.overscan') > value('scan.spotDiameter'),
  },
  {
    says: 'edgeWidthSaid',
    text: /^From 17\.4\sµm inside the edge on, .* within 5\s% of its mean: the size of the spot rounds the edge off\. Where the field must be even right up to its edge, scan one that is wider by this on every side\.$/,
    truth: (value) => value('scan.edgeWidth') < value('scan.spotDiameter'),
  },
  {
    says: 'edgeWidthSaid',
    design: { ...inside, 'scan.speed': 2 },
    text: /far more than the size of the spot: that is the turn of the scanner\. Where/,
    // √(overscan/x) = 1.05 at 91 % of the overscan.
    truth: (value) => Math.abs(value('scan.edgeWidth') - 200e-6 / 1.05 ** 2) < 5e-6,
  },
];
