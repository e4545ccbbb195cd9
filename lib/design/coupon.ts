import { derived } from '../graph/define.ts';
import { formatReadable } from '../graph/units.ts';
import { spotAt } from '../optics/spot.ts';
import { Problem } from '../problem.ts';
import { type Coupon, type CouponGrid, layCoupon, steps } from '../process/coupon.ts';
import { markOf } from '../process/marks.ts';
import {
  energyCount,
  firstZ,
  fullEnergy,
  highEnergy,
  lastZ,
  lowEnergy,
  mostPulses,
  pitchFactor,
  planeCount,
  pulseCount,
  repeats,
  setting,
} from './couponInputs.ts';
import { light, unshapedPeak } from './focus.ts';
import { repetitionRate } from './laser.ts';
import { usedPulseEnergy } from './losses.ts';
import { incubationExponent, thresholdAtN, thresholdFloor, thresholdFluence } from './threshold.ts';

/** A coupon as planned, with what is set for each of its energies. */
export interface PlannedCoupon extends Coupon {
  readonly grid: CouponGrid;
  readonly setting: 'power' | 'attenuator';
  /** Watts, or a part of the open attenuator’s energy, by energy of the grid. */
  readonly settings: readonly number[];
  /** Threshold fluence of one pulse that the marks are predicted with, J/m². */
  readonly threshold: number;
}

export const couponGrid = derived({
  id: 'coupon.grid',
  name: 'grid of the coupon',
  symbol: 'E_i\\times z_j\\times N_k',
  unit: 'none',
  about:
    'Energies, planes and numbers of pulses of the coupon, rounded to three digits so that they can be set.',
  from: { lowEnergy, highEnergy, energyCount, firstZ, lastZ, planeCount, mostPulses, pulseCount, repeats },
  compute: (of): CouponGrid => {
    const whole = Math.round;
    const pulses = steps(1, of.mostPulses, whole(of.pulseCount), true).map(whole);
    return {
      energies: steps(of.lowEnergy, of.highEnergy, whole(of.energyCount), true).sort((a, b) => a - b),
      planes: steps(of.firstZ, of.lastZ, whole(of.planeCount)),
      pulses: [...new Set(pulses)],
      repeats: whole(of.repeats),
    };
  },
  shownAs: ({ energies, planes, pulses, repeats }) =>
    `${energies.length} × ${planes.length} × ${pulses.length}, each ${repeats} ${repeats === 1 ? 'time' : 'times'}`,
  formula: '(n_E, n_z, n_N, n_\\text{rep})',
  source: 'common practice',
});

const settings = derived({
  id: 'coupon.settings',
  name: 'settings of the coupon',
  symbol: 's_i',
  // Watts or a part of one, as chosen.
  unit: 'none',
  about:
    'What is set for each energy: average power in W, or the part of the energy that the attenuator lets through.',
  from: { grid: couponGrid, setting, lowEnergy, highEnergy, fullEnergy, rate: repetitionRate },
  compute: ({ grid, setting, lowEnergy, highEnergy, fullEnergy, rate }): readonly number[] => {
    if (setting === 'power') return grid.energies.map((energy) => energy * rate);
    const highest = Math.max(lowEnergy, highEnergy);
    if (highest > fullEnergy) throw beyondAttenuator(highest, fullEnergy);
    // Rounding to three digits may take the highest a little above.
    return grid.energies.map((energy) => Math.min(1, energy / fullEnergy));
  },
  formula: 'E_i f_\\text{rep}\\text{ or }E_i/E_\\text{open}',
  source: 'definition',
});

/** Least pitch: what a stage and an eye under a microscope tell apart. */
const leastPitch = 10e-6;

export const coupon = derived({
  id: 'coupon.plan',
  name: 'coupon plan',
  symbol: '\\text{coupon}',
  unit: 'none',
  about:
    'Every place of the coupon with its coordinates, energy, plane and pulses, and the mark predicted there.',
  from: {
    grid: couponGrid,
    settings,
    setting,
    light,
    peak: unshapedPeak,
    usedEnergy: usedPulseEnergy,
    pitchFactor,
    first: thresholdFluence,
    S: incubationExponent,
    floor: thresholdFloor,
  },
  compute: ({
    grid,
    settings,
    setting,
    light,
    peak,
    usedEnergy,
    pitchFactor,
    first,
    S,
    floor,
  }): PlannedCoupon => {
    const spots = new Map(grid.planes.map((z) => [z, inPlane(z, () => spotAt(light, z))]));
    const thresholds = new Map(grid.pulses.map((N) => [N, thresholdAtN.compute({ first, N, S, floor })]));
    const mark = (energy: number, z: number, N: number) =>
      markOf(spots.get(z)!, (thresholds.get(N)! * usedEnergy) / (energy * peak));
    return {
      ...layCoupon(grid, mark, { pitchFactor, leastPitch }),
      grid,
      setting,
      settings,
      threshold: first,
    };
  },
  shownAs: ({ spots, pitch }) => `${spots.length} spots, ${formatReadable(pitch, 'm', 'um')} apart`,
  formula: 'A\\{F>F_{\\text{th},N}\\}\\text{ over }E_i\\times z_j\\times N_k',
  source: 'liu1982',
  heavy: 'search',
});

/** A plane that cannot be asked for is one of the coupon, not the workpiece’s. */
function inPlane<T>(z: number, ask: () => T): T {
  try {
    return ask();
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const at = formatReadable(z, 'm', 'mm');
    throw new Problem(
      error.kind,
      `The plane of the coupon at z = ${at} cannot be predicted: ${error.message}`,
      {
        input: lastZ.id,
        value: at,
      },
    );
  }
}

function beyondAttenuator(highest: number, open: number): Problem {
  const [wanted, there] = [highest, open].map((energy) => formatReadable(energy, 'J', 'uJ', 3));
  return new Problem(
    'impossible',
    `The coupon wants ${wanted}, and the open attenuator lets ${there} through. Lower the highest energy of the coupon, or type the energy with the attenuator open.`,
    { input: highEnergy.id, value: wanted!, allowed: `up to ${there}` },
  );
}
