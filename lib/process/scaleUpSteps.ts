import { type Machine, netArea, type ScaledWork, type ScaleLimit, scaledField } from './scaleUp.ts';

/** What changes from step to step on the way from today's machine to the larger one. */
export type ScaleStep = 'today' | 'fastest' | 'power' | 'repetition rate' | 'scanner' | 'spots';

/** One step; m²/s. The field as it is set today need not stand at a limit. */
export interface StepRate {
  readonly step: ScaleStep;
  readonly rate: number;
  readonly limit: ScaleLimit | 'settings';
}

/**
 * The way from the field as it is set, in `todayTime` (s), to the larger machine, everything before kept in each step:
 * today's machine at its fastest, with the power of the larger laser, with its repetition rate, with the larger scanner,
 * and with all spots. `today` is today's machine with one spot.
 */
export function scaleSteps(work: ScaledWork, today: Machine, todayTime: number): StepRate[] {
  const { machine, stitching, recipe } = work;
  const { maxPower, maxRepetitionRate, maxSpeed, acceleration } = machine;
  const power = { ...today, maxPower };
  const rate = { ...power, maxRepetitionRate };
  const scanner = { ...rate, maxSpeed, acceleration };
  const steps: readonly (readonly [ScaleStep, Machine])[] = [
    ['fastest', today],
    ['power', power],
    ['repetition rate', rate],
    ['scanner', scanner],
    ['spots', machine],
  ];
  const asSet: StepRate = {
    step: 'today',
    rate: netArea(recipe.hatch, stitching) / (todayTime + stitching.moveTime),
    limit: 'settings',
  };
  return [
    asSet,
    ...steps.map(([step, one]): StepRate => {
      const { rate, limit } = scaledField({ ...work, machine: one });
      return { step, rate, limit };
    }),
  ];
}
