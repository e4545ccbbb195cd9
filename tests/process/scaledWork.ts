import type { ScaledWork } from '../../lib/process/scaleUp.ts';

/** 1000 lines of 10 mm, pulses of 20 µJ every 5 µm; 100 W, 2 MHz, 20 m/s, 50 km/s², four spots at 80 %. */
export const work: ScaledWork = {
  recipe: {
    hatch: {
      width: 10e-3,
      height: 10e-3,
      lineSpacing: 10e-6,
      passes: 1,
      angle: 0,
      interlacing: 1,
      directions: 'both',
    },
    motion: { directions: 'both', turnRound: 'outside', delay: 0 },
    pulseSpacing: 5e-6,
    energy: 20e-6,
    burst: 1,
  },
  machine: {
    maxPower: 100,
    maxRepetitionRate: 2e6,
    maxSpeed: 20,
    acceleration: 50e3,
    spots: 4,
    distance: 10e-6,
    efficiency: 0.8,
  },
  stitching: { moveTime: 0.3, overlap: 0.1e-3 },
  hottestRate: null,
};
/** The same with another machine. */
export const on = (machine: Partial<ScaledWork['machine']>): ScaledWork => ({
  ...work,
  machine: { ...work.machine, ...machine },
});
/** The same with another recipe. */
export const recipe = (changed: Partial<ScaledWork['recipe']>): ScaledWork => ({
  ...work,
  recipe: { ...work.recipe, ...changed },
});
/** The same with other moves. */
export const moving = (moveTime: number): ScaledWork => ({
  ...work,
  stitching: { moveTime, overlap: 0.1e-3 },
});
