import { type Machine, netArea, type ScaledWork, type ScaleLimit, scaledField } from './scaleUp.ts';
import type { SpotHeat } from './scaleUpHeat.ts';

/** What changes from step to step on the way from today's machine to the larger one. */
export type ScaleStep = 'today' | 'fastest' | 'power' | 'repetition rate' | 'scanner' | 'spots';

/** One step; m²/s. The field as it is set today need not stand at a limit. */
export interface StepRate {
  readonly step: ScaleStep;
  readonly rate: number;
  readonly limit: ScaleLimit | 'settings';
}

/** Today's machine with one spot. */
export interface Today {
  readonly machine: Machine;
  /** What heat allows with its scanner; null where that is not known. */
  readonly heat: SpotHeat | null;
  /** Time of a field as it is set, s. */
  readonly time: number;
}

/**
 * The way from the field as it is set to the larger machine, everything before kept in each step:
 * today's machine at its fastest, with the power of the larger laser, with its repetition rate, with the larger scanner,
 * and with all spots.
 */
export function scaleSteps(work: ScaledWork, { machine: today, heat, time }: Today): StepRate[] {
  const { machine, stitching, recipe } = work;
  const { maxPower, maxRepetitionRate, maxSpeed, acceleration } = machine;
  const power = { ...today, maxPower };
  const rate = { ...power, maxRepetitionRate };
  const scanner = { ...rate, maxSpeed, acceleration };
  const steps: readonly (readonly [ScaleStep, Machine, SpotHeat | null])[] = [
    ['fastest', today, heat],
    ['power', power, heat],
    ['repetition rate', rate, heat],
    ['scanner', scanner, work.heat],
    ['spots', machine, work.heat],
  ];
  const asSet: StepRate = {
    step: 'today',
    rate: netArea(recipe.hatch, stitching) / (time + stitching.moveTime),
    limit: 'settings',
  };
  return [
    asSet,
    ...steps.map(([step, one, heat]): StepRate => {
      const { rate, limit } = scaledField({ ...work, machine: one, heat });
      return { step, rate, limit };
    }),
  ];
}
