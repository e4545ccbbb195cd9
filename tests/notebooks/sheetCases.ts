import type { Values } from './designOutcomes.ts';
import type { Case } from './sentenceCases.ts';

const sheet = {
  passes: 6,
  allPasses: 11,
  y: Float64Array.of(-1, 0, 1),
  opening: Float64Array.of(0, 3e-5, 0),
  depth: Float64Array.of(0, 3e-5, 0),
  entryKerf: 28e-6,
  exitKerf: 8e-6,
  besideDepth: 0,
  taper: 0.32,
};
const cut = (changes: Partial<typeof sheet> = {}): Values => ({ 'sheet.cut': { ...sheet, ...changes } });
const plain = (changes: Partial<typeof sheet> = {}): Values => ({
  'unshaped.sheet.cut': { ...sheet, ...changes },
});

const bestSheet = {
  peak: 18e3,
  energy: 1.65e-6,
  focusDepth: 0,
  passes: 21,
  allPasses: 26,
  entryKerf: 14.4e-6,
  exitKerf: 1.68e-6,
  taper: 0.209,
};
const best = (changes: Partial<typeof bestSheet> = {}): Values => ({
  'unshaped.sheet.best': { ...bestSheet, ...changes },
});
/** In J/mm. */
const energies = (shaped: number, plain: number): Values => ({
  'sheet.energyPerLength': 1e3 * shaped,
  'unshaped.sheet.bestEnergyPerLength': 1e3 * plain,
});

/** Cases of the sentences about a thin sheet. */
export const sheetCases: readonly Case[] = [
  {
    says: 'sheetSaid',
    pins: cut(),
    text: /^The sheet of 30\sµm is through after 6 passes; after 5 more the far face is open 8\sµm wide, less than half of the near one \(28\sµm\)\. The sides lean by 18\.3°\.$/,
    truth: (value) => value('sheet.exitKerf') < 0.5 * value('sheet.entryKerf'),
  },
  {
    says: 'sheetSaid',
    pins: cut({ exitKerf: 20e-6 }),
    text: /the far face is open 20\sµm wide, the near one 28\sµm\. The sides/,
    truth: (value) => value('sheet.exitKerf') > 0.5 * value('sheet.entryKerf'),
  },
  {
    says: 'sheetSaid',
    pins: cut({ passes: 1, allPasses: 1, exitKerf: 0 }),
    text: /^The sheet of 30\sµm is through after one pass: the far face is open along a thread only, .* Further passes would widen the exit\.$/,
    truth: (value) => value('sheet.exitKerf') === 0 && value('sheet.passes') === 1,
  },
  {
    says: 'plainSheetSaid',
    pins: { ...cut(), ...plain({ allPasses: 22, taper: 0.4 }) },
    text: /^Without the plate, in its focus, the beam takes 2 times the time and its sides lean more \(22\.9°\); its cut is 28\sµm wide in front and 8\sµm behind, less than half of that: more passes would widen it, .* yet\.$/,
    truth: (value) => value('unshaped.sheet.taper') > value('sheet.taper'),
  },
  {
    says: 'plainSheetSaid',
    pins: { ...cut(), ...plain({ allPasses: 5, taper: 0.2, exitKerf: 20e-6 }) },
    text: /takes 0\.455 of the time and its sides lean less .* in front and 20\sµm behind\.$/,
    truth: (value) => value('unshaped.sheet.taper') < value('sheet.taper'),
  },
  {
    says: 'plainSheetSaid',
    pins: { ...cut(), ...plain() },
    text: /takes about as long and its sides lean alike/,
    truth: (value) => value('unshaped.sheet.taper') === value('sheet.taper'),
  },
  {
    says: 'sheetBesideSaid',
    pins: cut({ besideDepth: 6e-6 }),
    text: /^Beside the cut, by rings of the spot and at the foot of the walls, up to 6\sµm are cut into the near face, 20\s% of the thickness:/,
    truth: (value) => value('sheet.besideDepth') > 0.02 * value('sheet.thickness'),
  },
  {
    says: 'sheetBesideSaid',
    pins: cut(),
    text: /^$/,
    truth: (value) => value('sheet.besideDepth') === 0,
  },
  {
    says: 'bestPlainSheetSaid',
    pins: { ...cut(), ...best(), ...energies(0.8, 0.17) },
    text: /^With the plate taken out, lens and pulse spacing as today, a cut takes least energy for its length at 1\.65\sµJ, a peak of 1\.8\sJ\/cm², with the focus in the near face: the sheet is then through after 21 passes, with a cut 14\.4\sµm wide in front and 1\.68\sµm behind and sides that lean by 12°\. That is 170\smJ\/mm, against 800\smJ\/mm with the plate as it is set: the plate takes more, for a cut that is wider behind\.$/,
    truth: (value) => value('sheet.energyPerLength') > value('unshaped.sheet.bestEnergyPerLength'),
  },
  {
    says: 'bestPlainSheetSaid',
    pins: { ...cut({ exitKerf: 1e-6 }), ...best({ focusDepth: 15e-6 }), ...energies(0.1, 0.17) },
    text: /with the focus in the middle of the sheet: .*: the plate takes less, for a cut that is narrower behind\.$/,
    truth: (value) => value('sheet.energyPerLength') < value('unshaped.sheet.bestEnergyPerLength'),
  },
  {
    says: 'bestPlainSheetSaid',
    pins: {
      ...cut({ exitKerf: 1.7e-6 }),
      ...best({ focusDepth: 30e-6, passes: 1 }),
      ...energies(0.17, 0.17),
    },
    text: /with the focus in the far face: the sheet is then through after one pass, .*: the plate takes as much\.$/,
    truth: (value) => value('sheet.energyPerLength') === value('unshaped.sheet.bestEnergyPerLength'),
  },
];
