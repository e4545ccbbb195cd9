import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const input = (radius: number) => ({
  energy: 1e-6,
  radius,
  diffusivity: 3.75e-6,
  heatCapacity: 4e6,
  thickness: 1e-3,
});
const hottest = (own: number, lines: number, pulse: number): Values => ({
  'heat.hottest': { rise: own + lines, own, lines, pulse, line: 5, behind: 0 },
  'heat.rise': own + lines,
  'heat.ownRise': own,
  'heat.lineRise': lines,
});
/** Pulses a line of the initial design. */
const pulses = 40000;

/** Cases of the sentences about heat. */
export const heatCases: readonly Case[] = [
  {
    says: 'absorbedSaid',
    text: /^A cold, flat, bare surface absorbs 29\.8\s% of the light at normal incidence/,
    truth: (value) => Math.abs(value('heat.absorptance') - 0.298) < 1e-3,
  },
  {
    says: 'absorbedSaid',
    design: { 'heat.absorptanceSource': 'typed' },
    text: /^The surface absorbs 40\s% of the light, as typed\.$/,
    truth: (value) => value('heat.absorptance') === 0.4,
  },
  {
    says: 'perPulseSaid',
    text: /^Of what it absorbs 30\s% stay as heat .* no source\): 1\.75\sµJ a pulse\.$/,
    truth: (value) => Math.abs(value('heat.perPulse') - 1.754e-6) < 1e-9,
  },
  {
    says: 'perPulseSaid',
    design: { 'workpiece.material': 'copper' },
    text: /a pulse\. Of copper so little is absorbed when it is bare that roughness and oxide decide\.$/,
    truth: (value) => value('heat.absorptance') < 0.05,
  },
  {
    says: 'perPulseSaid',
    design: { 'workpiece.material': 'copper', 'heat.absorptanceSource': 'typed' },
    text: /a pulse\.$/,
    truth: (value) => value('heat.absorptance') === 0.4,
  },
  {
    says: 'riseSaid',
    pins: hottest(300, 50, 20000),
    text: /is 350\sK warmer than at the start, in the hottest state, 50\s% along a line: 300\sK from the line being written and 50\sK left by earlier lines\. That passes the limit of 200\sK\.$/,
    truth: (value) => value('heat.rise') > value('heat.riseLimit'),
  },
  {
    says: 'riseSaid',
    pins: hottest(100, 1, 100),
    text: /near the beginning of a line: nearly all of it from the line being written\. That keeps to the limit of 200\sK\.$/,
    truth: (value) => value('heat.rise') <= value('heat.riseLimit') && 100 / pulses < 0.02,
  },
  {
    says: 'riseSaid',
    pins: hottest(1, 100, pulses - 1),
    text: /at the end of a line: nearly all of it left by earlier lines\. That keeps/,
    truth: (value) => value('heat.lineRise') > 0.98 * value('heat.rise'),
  },
  {
    says: 'rateSaid',
    pins: { 'scan.hottestRate': 100e3, 'heat.maxRepetitionRate': 100e3 },
    text: /the limit is met at 100\skHz, below the 200\skHz now; the scan speed goes with the rate\.$/,
    truth: (value) => value('heat.maxRepetitionRate') < value('laser.repetitionRate'),
  },
  {
    says: 'rateSaid',
    pins: { 'scan.hottestRate': 500e3, 'heat.maxRepetitionRate': 500e3 },
    text: /the limit is met at 500\skHz, 2\.5 times the rate now; the scan speed goes with it\.$/,
    truth: (value) => value('heat.maxRepetitionRate') > value('laser.repetitionRate'),
  },
  {
    says: 'rateSaid',
    pins: { 'scan.hottestRate': 203e3, 'heat.maxRepetitionRate': 203e3 },
    text: /the limit is met at 203\skHz, close to today’s rate\.$/,
    truth: (value) => Math.abs(value('heat.maxRepetitionRate') / value('laser.repetitionRate') - 1) < 0.05,
  },
  {
    says: 'rateSaid',
    design: { 'scan.turnRound': 'inside', 'heat.riseLimit': 5e3 },
    text: /held, the rate at which the limit is met is not worked out: the scan speed rises with the rate, and pulses would crowd where/,
    truth: (value) => Number.isNaN(value('heat.maxRepetitionRate')),
  },
  {
    says: 'rateSaid',
    design: { 'laser.pulseEnergy': 1e-9, 'heat.riseLimit': 10e3 },
    text: /held, heat does not limit the field up to the highest rate of the laser, 1000\skHz\.$/,
    truth: (value) => Number.isNaN(value('heat.maxRepetitionRate')),
  },
  {
    says: 'plainRiseSaid',
    pins: { 'heat.rise': 300, 'unshaped.heat.rise': 120 },
    text: /^With the plate taken out, scanned alike at the same peak fluence \(pulse energy lowered to 4\.684\sµJ\), it would be 120\sK, less: a pulse then leaves 0\.411\sµJ instead of 1\.75\sµJ, in a spot of its own size\.$/,
    truth: (value) => value('unshaped.heat.rise') < value('heat.rise'),
  },
  {
    says: 'plainRiseSaid',
    pins: { 'heat.rise': 300, 'unshaped.heat.rise': 500 },
    text: /it would be 500\sK, more: a pulse then leaves/,
    truth: (value) => value('unshaped.heat.rise') > value('heat.rise'),
  },
  {
    says: 'plainRiseSaid',
    pins: { 'heat.rise': 300, 'unshaped.heat.rise': 301 },
    text: /it would be 301\sK, much the same\.$/,
    truth: (value) => Math.abs(value('unshaped.heat.rise') / value('heat.rise') - 1) < 0.02,
  },
  {
    says: 'plainRiseSaid',
    pins: { 'heat.rise': 300, 'unshaped.heat.rise': 500 },
    design: { 'ripples.unshapedRuns': 'energy' },
    text: /scanned alike with the same pulse energy, it would be 500\sK, more: a pulse then leaves/,
    truth: (value) => value('unshaped.laser.pulseEnergy') === value('laser.usedPulseEnergy'),
  },
  {
    says: 'pointSaid',
    text: /^Between two pulses heat spreads over 12\.2\sµm; the spot, .* has a 1\/e² radius of 15\.6\sµm\. The spot is no point: after 50 pulses in one place the point estimate gives 565\sK, 1\.7 times the 330\sK of the spot\.$/,
    // √(8·3.75e-6/200e3) by hand.
    truth: (value) => Math.abs(value('heat.briefPointRise') / value('heat.staticRise') - 1.715) < 0.005,
  },
  {
    says: 'pointSaid',
    pins: { 'heat.input': input(1e-6) },
    text: /The spot is small against that, and the point estimate can be used: after 50 pulses in one place it gives .*, the spot .*\.$/,
    truth: (value) => value('heat.briefPointRise') < 1.25 * value('heat.staticRise'),
  },
  {
    says: 'heatProfileSaid',
    pins: { 'heat.spotRise': 300, 'heat.profileRise': 302 },
    text: /reaches 302\sK, hardly other than the 300\sK .*: heat has spread so far that the shape hardly counts\.$/,
    truth: (value) => Math.abs(value('heat.profileRise') / value('heat.spotRise') - 1) < 0.02,
  },
  {
    says: 'heatProfileSaid',
    pins: { 'heat.spotRise': 300, 'heat.profileRise': 360 },
    text: /reaches 360\sK, 20\s% more than the 300\sK .*, because of the shape or because the hottest place lies behind the middle\.$/,
    truth: (value) => value('heat.profileRise') > value('heat.spotRise'),
  },
  {
    says: 'heatProfileSaid',
    pins: { 'heat.spotRise': 300, 'heat.profileRise': 270 },
    text: /reaches 270\sK, 10\s% less than the 300\sK in the middle of the Gaussian of the same effective area\.$/,
    truth: (value) => value('heat.profileRise') < value('heat.spotRise'),
  },
  {
    says: 'fieldRiseSaid',
    pins: { 'heat.fieldRise': 1, 'heat.rise': 300 },
    text: /would warm a thick part by 1\sK: what counts here is what the last pulses and lines left\.$/,
    truth: (value) => value('heat.fieldRise') < 0.1 * value('heat.rise'),
  },
  {
    says: 'fieldRiseSaid',
    pins: { 'heat.fieldRise': 60, 'heat.rise': 300 },
    text: /by 60\sK, 20\s% of the rise before the next pulse: the field as a whole counts too\.$/,
    truth: (value) => value('heat.fieldRise') >= 0.1 * value('heat.rise'),
  },
  {
    says: 'thicknessSaid',
    design: { 'workpiece.thickness': 0.2 },
    text: /^The field is done in 333\.4\ss, long before heat is through the thickness \(about 3\sh\): the part counts as endlessly thick \(half-space\)\.$/,
    truth: (value) => value('scan.fieldTime') < 0.1 * (0.04 / value('heat.diffusivity')),
  },
  {
    says: 'thicknessSaid',
    text: /^Heat is through the thickness in about 270\sms and the field takes 333\.4\ss: the part no longer counts as endlessly thick \(half-space\)\. .* between 10\.2\sK, if it is wide .* and 292\sK, if it is no larger than the field;/,
    truth: (value) => value('heat.plateRise') < value('heat.warmThroughRise'),
  },
];
