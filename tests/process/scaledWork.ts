import type { ScaledWork } from '../../lib/process/scaleUp.ts';
import type { SpotHeat } from '../../lib/process/scaleUpHeat.ts';

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
  heat: null,
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
/** Steel on which one spot comes to 100 K at that rate (Hz), and to half as much at half of it; spots 200 µm apart. */
export const heatAt = (rate: number): SpotHeat => ({
  input: { energy: 0.5e-6, radius: 15e-6, diffusivity: 3.75e-6, heatCapacity: 4e6, thickness: 1e-3 },
  own: { rates: [rate, rate / 2], rises: [100, 50], reached: true },
  limit: 100,
  distance: 200e-6,
});
