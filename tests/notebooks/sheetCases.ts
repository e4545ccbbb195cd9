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
  taper: 0.32,
};
const cut = (changes: Partial<typeof sheet> = {}): Values => ({ 'sheet.cut': { ...sheet, ...changes } });
const plain = (changes: Partial<typeof sheet> = {}): Values => ({
  'unshaped.sheet.cut': { ...sheet, ...changes },
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
    text: /^Without the plate, in its focus, the beam takes 2 times the time and its sides lean more \(22\.9°\); its cut is 28\sµm wide in front\.$/,
    truth: (value) => value('unshaped.sheet.taper') > value('sheet.taper'),
  },
  {
    says: 'plainSheetSaid',
    pins: { ...cut(), ...plain({ allPasses: 5, taper: 0.2 }) },
    text: /takes 0\.455 of the time and its sides lean less/,
    truth: (value) => value('unshaped.sheet.taper') < value('sheet.taper'),
  },
  {
    says: 'plainSheetSaid',
    pins: { ...cut(), ...plain() },
    text: /takes about as long and its sides lean alike/,
    truth: (value) => value('unshaped.sheet.taper') === value('sheet.taper'),
  },
];
