import type { PlannedLadder } from '../../lib/design/ladder.ts';
import { sidesDiffer } from '../../notebooks/ladderSentences.ts';
import type { Case } from './sentenceCases.ts';

type Read = (id: string) => number;
const planOf = (value: Read) => value('ladder.plan') as unknown as PlannedLadder;
const rows = (which: string) => ({ 'ladder.rows': which });
/** Nine tenths of half a wave: the sides of the focus differ. */
const sided = { 'plate.designPhase': 0.9 * Math.PI };
const plate = (value: Read, plate: boolean) =>
  planOf(value).marks.filter((mark) => mark.plate === plate).length;
const energies = (value: Read) => value('laser.usedPulseEnergy') / value('ladder.shaped.energy');

/** Cases of the sentences about a focus ladder that is planned. */
export const ladderCases: readonly Case[] = [
  {
    says: 'ladderRowsSaid',
    text: /^Fire 49 marks with the plate, from z\s=\s−0\.792\smm to 0\.792\smm, then 31 marks without the plate, from z\s=\s−0\.495\smm to 0\.495\smm, 33\sµm apart\.$/,
    truth: (value) => plate(value, true) === 49 && plate(value, false) === 31,
  },
  {
    says: 'ladderRowsSaid',
    design: rows('with'),
    text: /^Fire 49 marks with the plate, from z\s=\s−0\.792\smm to 0\.792\smm, 33\sµm apart\.$/,
    truth: (value) => plate(value, true) === 49 && plate(value, false) === 0,
  },
  {
    says: 'ladderRowsSaid',
    design: { ...rows('without'), 'ladder.expectedReading': 12.3e-3 },
    text: /^Fire 31 marks without the plate, from z\s=\s11\.805\smm to 12\.795\smm, 33\sµm apart\.$/,
    truth: (value) => plate(value, true) === 0 && plate(value, false) === 31,
  },
  {
    says: 'ladderEnergySaid',
    text: /^Set 0\.704\sµJ with the plate and 0\.396\sµJ without it, so that the brightest plane has 3 times the threshold\. The pulse energy of the design, 20\sµJ, is 28 times as much: its marks would/,
    truth: (value) => Math.abs(energies(value) - 28.4) < 0.1,
  },
  {
    says: 'ladderEnergySaid',
    design: { ...rows('with'), 'laser.pulseEnergy': 0.3e-6 },
    text: /^Set 0\.704\sµJ, so .* threshold\. That is more than the pulse energy of the design, 0\.3\sµJ: what is said above of X-rays, .* before the first pulse\.$/,
    truth: (value) => energies(value) < 0.5,
  },
  {
    says: 'ladderEnergySaid',
    design: { ...rows('without'), 'laser.pulseEnergy': 0.4e-6 },
    text: /^Set 0\.396\sµJ, so .* That is about the pulse energy of the design, 0\.4\sµJ\.$/,
    truth: (value) => Math.abs(0.4e-6 / value('ladder.unshaped.energy') - 1) < 0.02,
  },
  {
    says: 'ladderSidesSaid',
    design: rows('without'),
    text: /^A focus without the plate is alike to both sides/,
    truth: (value) => sidesDiffer(planOf(value)) === 0,
  },
  {
    says: 'ladderSidesSaid',
    text: /^Behind this plate the marks are alike to both sides of the focus: the ladder gives the zero of z, but not/,
    truth: (value) => sidesDiffer(planOf(value)) < 1e-6,
  },
  {
    says: 'ladderSidesSaid',
    design: { 'plate.designPhase': 0.99 * Math.PI },
    text: /alike to both sides of the focus, to \d\s% of the largest: the ladder/,
    truth: (value) => sidesDiffer(planOf(value)) > 0.005 && sidesDiffer(planOf(value)) < 0.1,
  },
  {
    says: 'ladderSidesSaid',
    design: sided,
    text: /^Behind this plate the two sides of the focus differ, in area by up to \d\d\s% of the largest mark: the ladder can tell/,
    truth: (value) => sidesDiffer(planOf(value)) > 0.1,
  },
  {
    says: 'ladderPlateOutSaid',
    text: /^Taking the plate out at unchanged energy, 0\.704\sµJ, raises the peak fluence in the focus from 0\.18\d?\sJ\/cm² to 0\.769\sJ\/cm², 4\.3 times as much\. Set 0\.396\sµJ before the plate is out: then the peak stays at the 0\.433\sJ\/cm² that/,
    // In the focus, where the workpiece of the initial design stands: the same two peaks by another way.
    truth: (value) =>
      Math.abs(value('unshaped.spot.peakFluence') / value('spot.peakFluence') / value('ladder.rise') - 1) <
      1e-3,
  },
  {
    says: 'ladderPlateOutSaid',
    design: { 'plate.designPhase': 0.02 },
    text: /leaves the peak fluence in the focus nearly as it is \(0\.43\d?\sJ\/cm² and 0\.43\d?\sJ\/cm²\); with another plate/,
    truth: (value) => Math.abs(value('ladder.rise') - 1) < 0.01,
  },
  {
    says: 'ladderPlateOutSaid',
    pins: { 'ladder.rise': 0.5 },
    text: /^Taking the plate out at unchanged energy, 0\.704\sµJ, lowers the peak fluence/,
    truth: (value) => value('ladder.rise') < 1,
  },
];
