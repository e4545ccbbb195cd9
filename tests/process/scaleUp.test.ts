import { describe, expect, it } from 'vitest';
import {
  diffusionLength,
  type ScaledWork,
  type SpeedLimit,
  scaledField,
  scaledTimes,
  speedLimits,
} from '../../lib/process/scaleUp.ts';
import { scaleSteps } from '../../lib/process/scaleUpSteps.ts';
import { expectClose } from '../close.ts';
import { heatAt, moving, on, recipe, work } from './scaledWork.ts';

const byHand = { relative: 1e-9, source: 'worked by hand' };

describe('the rate of common practice', () => {
  it('10 mm × 10 mm in 30 s is 3.33 mm²/s, and a square metre takes 10 000 fields of 30 s: 83.3 h', () => {
    // 10 000 lines of 3 ms, in a machine that only its speed limits, without turns and moves.
    const slow: ScaledWork = {
      ...work,
      recipe: { ...work.recipe, hatch: { ...work.recipe.hatch, lineSpacing: 1e-6 } },
      machine: { ...on({}).machine, spots: 1, maxSpeed: 10e-3 / 3e-3, acceleration: 1e300 },
      stitching: { moveTime: 0, overlap: 0 },
    };
    const { rate, fieldTime } = scaledField(slow);
    expectClose(fieldTime, 30, byHand);
    expectClose(rate, 100e-6 / 30, byHand);
    expectClose(1 / rate / 3600, 83 + 1 / 3, byHand);
  });
});

describe('a field on a larger machine, worked by hand', () => {
  it('pulses of 4 · 20 µJ/0.8 = 100 µJ, so that 100 W are 1 MHz and 5 m/s', () => {
    const { speed, repetitionRate, power, limit } = scaledField(work);
    expectClose(speed, 5, byHand);
    expectClose(repetitionRate, 1e6, byHand);
    expectClose(power, 100, byHand);
    expect(limit).toBe('power');
  });

  it('250 scans of 2 ms and 0.2 ms for turning: 0.55 s, and 0.85 s for 9.9 mm × 9.9 mm', () => {
    const { fieldTime, rate, energyPerArea } = scaledField(work);
    expectClose(fieldTime, 0.55, byHand);
    expectClose(rate, 98.01e-6 / 0.85, byHand);
    expectClose(energyPerArea, (100 * 0.5) / 98.01e-6, byHand);
  });

  it.each([
    [1, 1000],
    [3, 334],
    [4, 250],
    [7, 143],
    [999, 2],
    [1000, 1],
    [5000, 1],
  ])('%i spots scan ⌈1000/N⌉ = %i lines', (spots, scans) => {
    // Every scan 1 s: 10 mm at 10 mm/s.
    const times = scaledTimes(on({ spots, acceleration: 1e300 }), 10e-3);
    expectClose(times.total, scans, byHand);
  });

  it('one spot loses nothing in a splitter: 100 W are 5 MHz, and the repetition rate limits', () => {
    const { limit, power, speed } = scaledField(on({ spots: 1 }));
    expect(limit).toBe('repetition rate');
    expectClose(speed, 10, byHand);
    expectClose(power, 40, byHand);
  });

  it('a burst of 5 takes five times the power: 1 m/s', () => {
    expectClose(scaledField(recipe({ burst: 5 })).speed, 1, byHand);
  });

  it('speeds: power 5 m/s, repetition rate 10 m/s, acceleration √(50 000 · 0.01/2) m/s, scanner 20 m/s', () => {
    const limits = speedLimits(work);
    expect(limits.map(({ kind }) => kind)).toEqual([
      'power',
      'repetition rate',
      'acceleration',
      'scanner speed',
    ]);
    [5, 10, Math.sqrt(250), 20].forEach((speed, i) => {
      expectClose(limits[i]!.speed, speed, byHand);
    });
  });
});

describe('what limits, first and next', () => {
  it.each<[string, ScaledWork, string, string]>([
    ['as it is', work, 'power', 'repetition rate'],
    ['1 kW', on({ maxPower: 1000 }), 'repetition rate', 'acceleration'],
    ['2 m/s', on({ maxSpeed: 2 }), 'scanner speed', 'power'],
    ['1000 m/s²', on({ acceleration: 1000 }), 'acceleration', 'power'],
    // At 5 m/s the field takes 0.55 s, at 10 m/s 250 · (1 + 0.4) ms = 0.35 s.
    ['moves of 0.5 s', moving(0.5), 'power', 'stitching'],
    ['moves of 0.6 s', moving(0.6), 'stitching', 'power'],
  ])('%s', (_, changed, limit, next) => {
    const found = scaledField(changed);
    expect([found.limit, found.next]).toEqual([limit, next]);
  });
});

describe('heat as a limit', () => {
  it('spreads √(4χD/v): 4 mm²/s, 30 µm at 1 m/s, 21.9 µm', () => {
    expectClose(diffusionLength(30e-6, 4e-6, 1), Math.sqrt(4 * 4e-6 * 30e-6), byHand);
  });

  it('200 kHz are 1 m/s with one spot, whatever else the machine can do', () => {
    const { limit, speed } = scaledField({ ...on({ spots: 1 }), heat: heatAt(2e5) });
    expect(limit).toBe('heat');
    expectClose(speed, 1, byHand);
  });

  it('with more spots each is slower, and several that leave next to nothing are not', () => {
    const speeds = [1, 4, 10].map((spots) => {
      const [{ kind, speed }] = speedLimits({ ...on({ spots, maxPower: 1e4 }), heat: heatAt(2e5) }) as [
        SpeedLimit,
      ];
      expect(kind).toBe('heat');
      return speed;
    });
    speeds.slice(1).forEach((speed, i) => {
      expect(speed).toBeLessThan(speeds[i]!);
    });
    const cool = { ...heatAt(2e5), input: { ...heatAt(2e5).input, energy: 1e-20 } };
    expectClose(scaledField({ ...on({ spots: 10 }), heat: cool }).speed, 1, byHand);
  });

  it('beyond the other limits it is none, and not there where the highest rate does not reach it', () => {
    const one = on({ spots: 1, maxRepetitionRate: 1e6 });
    const beyond = { ...one, heat: heatAt(1.1e6) };
    expect(scaledField(beyond)).toMatchObject({ limit: 'repetition rate', next: 'heat' });
    const never = { ...heatAt(1e6), own: { ...heatAt(1e6).own, reached: false } };
    expect(speedLimits({ ...one, heat: never }).some(({ kind }) => kind === 'heat')).toBe(false);
  });
});

describe('from today’s machine to the larger one', () => {
  it('each step changes one thing: 20 W, 1 MHz, 5 m/s and 10 km/s² to begin with', () => {
    const today = {
      maxPower: 20,
      maxRepetitionRate: 1e6,
      maxSpeed: 5,
      acceleration: 10e3,
      spots: 1,
      distance: 10e-6,
      efficiency: 1,
    };
    const steps = scaleSteps(work, { machine: today, heat: null, time: 10.2 });
    const area = 98.01e-6;
    // Field times by hand: set 10.2 s; 5 m/s 3 s; the same; the same, as the scanner stops it; 10 m/s 1.4 s; 0.55 s.
    [10.2, 3, 3, 3, 1.4, 0.55].forEach((time, i) => {
      expectClose(steps[i]!.rate, area / (time + 0.3), byHand);
    });
    expect(steps.map(({ limit }) => limit)).toEqual([
      'settings',
      'power',
      'repetition rate',
      'scanner speed',
      'repetition rate',
      'power',
    ]);
  });

  it('heat holds each step on the scanner that it stands on: 200 kHz before, 400 kHz from the larger scanner on', () => {
    const today = { ...work.machine, maxPower: 20, maxRepetitionRate: 1e6, spots: 1, efficiency: 1 };
    const hot = { ...on({ spots: 1 }), heat: heatAt(4e5) };
    const steps = scaleSteps(hot, { machine: today, heat: heatAt(2e5), time: 10.2 });
    // 1000 lines of 10 ms and 0.04 ms, then of 5 ms and 0.08 ms.
    [10.2, 10.04, 10.04, 10.04, 5.08, 5.08].forEach((time, i) => {
      expectClose(steps[i]!.rate, 98.01e-6 / (time + 0.3), byHand);
    });
  });
});
