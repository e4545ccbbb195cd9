import { inStep } from './halfWaveStep.ts';

/** What is said with a number written out, or in words, and whether it holds; the words as they stand in the step. */
export type Claims = Readonly<Record<string, () => boolean>>;

/** Near what is said, in parts of it. */
export const about = (value: number, said: number, part = 0.05) => Math.abs(value / said - 1) <= part;
/** True where the number, rounded as it is written, is the one that is said. */
export const rounds = (value: number, said: string) =>
  value.toFixed(said.split('.')[1]?.length ?? 0) === said;
export const percent = (value: number, said: string) => rounds(100 * value, said);
export const zetaOf = (step: string, zeta: number) => {
  const zR = inStep(step)('focus.rayleighLength');
  return inStep(step, { 'workpiece.z': zeta * zR });
};
export const phaseOf = (step: string, waves: number) =>
  inStep(step, { 'plate.designPhase': waves * 2 * Math.PI })('explain.axisIrradianceInFocus');
export const dipAt = (step: string, changes: Readonly<Record<string, unknown>>) =>
  inStep(step, changes)('spot.dip');
/** True where the workpiece of a step stands at so many millimetres, as they are written. */
export const stands = (step: string, said: string) => rounds(1e3 * inStep(step)('workpiece.z'), said);
