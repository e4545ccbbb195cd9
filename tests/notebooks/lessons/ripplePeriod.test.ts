import { expect, it } from 'vitest';
import { ripplePeriodLesson } from '../../../notebooks/lessons/ripplePeriod.ts';
import { periodChange, ridgesRun } from '../../../notebooks/lessons/ripplePeriodWords.ts';
import { caseWith, chosenBy, expectByHand } from './byHand.ts';
import { describeLesson } from './lessonSeeds.ts';

describeLesson(ripplePeriodLesson);

/** Stainless steel at 1030 nm, the field at 40° to the scan. n + ik = 3.762 + 5.270i (Karlsson & Ribbing 1982). */
const opened = caseWith(ripplePeriodLesson, {
  'workpiece.material': 'stainless',
  'laser.wavelength': 1030e-9,
  'laser.polarisationAngle': (40 * Math.PI) / 180,
});

it('by hand: ridges at 40° + 90°', () => {
  expect(opened.at('ridges').right).toBe('across');
  expect(chosenBy(opened, 'ridges')).toEqual({
    'field-for-ridges': 'along',
    'scan-for-field': 'scan',
    'circular-for-linear': 'any',
  });
});

it('by hand: 0.70 to 0.95 of 1030 nm is 721 to 979 nm, below the model and above 515 nm', () => {
  expect(opened.at('measured').right).toBe('shorter');
  expect(chosenBy(opened, 'measured')).toEqual({
    'model-for-measured': 'model',
    'other-mechanism': 'half',
    // 2 · 1030 − 850 = 1210 nm
    'above-for-below': 'longer',
  });
});

it('by hand: under water', () => {
  // ε = (3.762 + 5.270i)² = 14.15 − 27.77 + 39.65i = −13.62 + 39.65i, |ε|² = 185.5 + 1572 = 1757.5
  // ε_d = 1.33² = 1.7689, ε_d/ε = 1.7689 (−13.62 − 39.65i)/1757.5 = −0.01371 − 0.03990i
  // η² = 1.7689/(0.98629 − 0.03990i) = 1.7689 (0.98629 + 0.03990i)/0.97436 = 1.79056 + 0.07245i
  // |η²| = 1.79203, Re η = √((1.79203 + 1.79056)/2) = 1.3384
  // Λ = 1030 nm/1.3384 = 769.6 nm; 1030 · 1.3384 = 1378.5 nm. (ε_d = 1.77: 769.3 nm, Sipe 1983 with Karlsson's n, k)
  expectByHand(opened, 'water', 769.6e-9, { vacuum: 1030e-9, multiplied: 1378.5e-9 }, 2e-4);
});

it('by hand: tilted by 30°', () => {
  // 1/ε = −0.00775 − 0.02256i, η² = 1/(0.99225 − 0.02256i) = 1.00729 + 0.02290i, Re η = √((1.00755 + 1.00729)/2) = 1.0037
  // sin 30° = 0.5: 1030/1.5037 = 685.0, 1030/0.5037 = 2044.9; straight down 1030/1.0037 = 1026.2
  // cos 30° = 0.8660: 1030/1.8697 = 550.9
  const errors = { 'sine-forgotten': 1026.2e-9, 'with-the-light': 2044.9e-9, cosine: 550.9e-9 };
  expectByHand(opened, 'tilted', 685.0e-9, errors, 2e-4);
});

it('by hand: across the tilt', () => {
  // 1030/√(1.0037² − 0.5²) = 1030/0.8703 = 1183.5 nm, 1.153 times 1026.2 nm; along it 685.0/1026.2 = 0.667
  expect(periodChange(1183.5 / 1026.2)).toBe('longer');
  expect(opened.at('crossed').right).toBe('longer');
  expect(chosenBy(opened, 'crossed')).toEqual({
    'p-for-s': 'much-shorter',
    'tilt-forgotten': 'same',
    // 2044.9/1026.2 = 1.99
    'with-the-light': 'twice-as-long',
  });
});

it.each([
  [0.8, 0.8, 'along'],
  [0.8 + Math.PI, 0.8, 'along'],
  [0.8 + Math.PI / 2, 0.8, 'across'],
  [0, 0.8, 'scan'],
  [Math.PI, 0.8, 'scan'],
  [0.4, 0.8, 'any'],
] as const)('ridges at %s with the field at %s run %s', (ridges, field, said) => {
  expect(ridgesRun(ridges, field)).toBe(said);
});

it('twice as long is told from a little longer', () => {
  expect([0.6, 1, 1.15, 2].map(periodChange)).toEqual(['much-shorter', 'same', 'longer', 'twice-as-long']);
});
