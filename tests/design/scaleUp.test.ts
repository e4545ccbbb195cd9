import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import type { Missing } from '../../lib/process/scaleUpLimits.ts';
import type { StepRate } from '../../lib/process/scaleUpSteps.ts';
import { expectClose } from '../close.ts';

const initial = initialState(designGraph);
const engineOf = (patch: Patch) => createEngine(designGraph, applyPatch(designGraph, initial, patch).inputs);
/** Reads quantities of a design, heat left out of the limits where `cold`. */
function reader(patch: Patch, cold = false) {
  const engine = engineOf(patch);
  const pins = cold ? { 'scaleUp.heat': null, 'scaleUp.todayHeat': null } : {};
  const outcome = (id: string) => engine.evaluate([id], { pins })[id]!;
  return { outcome, value: <T = number>(id: string) => valueOrThrow(outcome(id)) as T };
}
const byHand = { relative: 1e-9, source: 'worked by hand' };

/** 1000 lines of 10 mm, 20 µJ every 5 µm, on a machine that heat does not limit: as in tests/process/scaledWork.ts. */
const hand: Patch = {
  'scan.lineSpacing': 10e-6,
  'scan.speed': 1,
  'laser.repetitionRate': 200e3,
  'scaleUp.fieldOverlap': 0.1e-3,
  // Ten groups of 4 · 25 lines.
  'scaleUp.spotDistance': 250e-6,
};

describe('the initial machine, worked by hand', () => {
  const { value } = reader(hand, true);

  it('250 scans of 2.2 ms and a move of 0.3 s for 9.9 mm × 9.9 mm: 0.4151 m²/h, a square metre in 2.41 h', () => {
    expectClose(value('scaleUp.areaPerHour'), 98.01e-6 / 0.85, byHand);
    expectClose(value('scaleUp.timePerSquareMetre'), 0.85 / 98.01e-6, byHand);
    expect(value('scaleUp.scans')).toBe(250);
  });

  it('5 m/s, 1 MHz, 100 W and 50 J a field', () => {
    expectClose(value('scaleUp.speed'), 5, byHand);
    expectClose(value('scaleUp.repetitionRate'), 1e6, byHand);
    expectClose(value('scaleUp.power'), 100, byHand);
    expectClose(value('scaleUp.energyPerSquareMetre'), 50 / 98.01e-6, byHand);
    expect(value<string>('scaleUp.limit')).toBe('power');
    expect(value<string>('scaleUp.nextLimit')).toBe('repetition rate');
  });

  it('today: 1000 lines of 10 ms and 0.2 ms, and 0.3 s', () => {
    expectClose(value('scaleUp.todayAreaPerHour'), 98.01e-6 / 10.5, byHand);
  });

  it('100 µJ on w = 5 mm: 2E/(πw²) on the plate, and 10 mW in an optic', () => {
    expectClose(value('plate.fluence'), 2e-4 / (Math.PI * 25e-6), byHand);
    expectClose(value('scaleUp.absorbedPower'), 0.01, byHand);
    // π · 25e-6 · 5000/(2 · 3) J = 65.4 mJ, of which 80 % serve 2617 spots of 20 µJ.
    expect(value('plate.mostSpots')).toBe(2617);
  });

  it('has the B-integral of the plate by the ratio of the energies', () => {
    expectClose(value('scaleUp.bIntegral'), 5 * value('safety.bIntegral'), byHand);
  });
});

describe('what cannot be', () => {
  const problemOf = (patch: Patch, id = 'scaleUp.areaPerHour') => {
    const outcome = reader({ ...hand, ...patch }, true).outcome(id);
    if (hasValue(outcome)) throw new Error(`accepted: ${JSON.stringify(patch)}`);
    return outcome.problem;
  };

  it('21 spots for 500 µJ: the energy allows 20, and taking them mends it', () => {
    const problem = problemOf({ 'scaleUp.spots': 21 });
    expect(problem.kind).toBe('impossible');
    expect(problem.parts.input).toBe('scaleUp.spots');
    expect(problem.message).toMatch(
      /^For 21 spots of 20\sµJ the laser must give pulses of 525\sµJ .* 500\sµJ.* enough for 20 spots/,
    );
    expect(problem.parts.mend?.value).toBe(20);
    expect(hasValue(reader({ ...hand, 'scaleUp.spots': 20 }, true).outcome('scaleUp.areaPerHour'))).toBe(
      true,
    );
  });

  it.each<[string, Patch, string, RegExp]>([
    [
      'a laser without the energy for one spot',
      { 'scaleUp.maxPulseEnergy': 15e-6 },
      'scaleUp.maxPulseEnergy',
      /pulses of 20\sµJ, .* no more than 15\sµJ/,
    ],
    ['an overlap as wide as the field', { 'scaleUp.fieldOverlap': 10e-3 }, 'scaleUp.fieldOverlap', /overlap/],
    ['a field narrower than the spot', { 'scan.fieldWidth': 20e-6 }, 'scan.fieldWidth', /20\sµm/],
  ])('%s names its input', (_, patch, input, message) => {
    const problem = problemOf(patch);
    expect(problem.kind).toBe('impossible');
    expect(problem.parts.input).toBe(input);
    expect(problem.message).toMatch(message);
  });

  it('a target out of reach: which limit, and by how much', () => {
    const patch = { 'scaleUp.target': 1.2 / 3600 };
    const { factor, short } = reader({ ...hand, ...patch }, true).value<Missing>('scaleUp.missing');
    expectClose(factor, 1.2 / 3600 / (98.01e-6 / 0.85), byHand);
    expect(short.map(({ kind }) => kind)).toEqual(['power', 'acceleration', 'stitching']);
    expectClose(short[0]!.factor, 1.2 / 3600 / 2e-4, byHand);
    const problem = problemOf(patch, 'scaleUp.spotsForTarget');
    expect(problem.kind).toBe('absent');
    expect(problem.parts.input).toBe('scaleUp.target');
    expect(problem.message).toMatch(
      /^No number of spots brings 1\.2\sm²\/h: of up to 20, .* limited by power/,
    );
  });

  it('more spots than the field is high for are noted', () => {
    const outcome = reader({ ...hand, 'scaleUp.spotDistance': 5e-3 }, true).outcome('scaleUp.areaPerHour');
    expect(hasValue(outcome) && outcome.note).toMatch(
      /4 spots 5.* reach beyond the height .* no more than 2 stand/,
    );
  });
});

describe.each(Object.values(designs).map(({ name, patch }) => [name, patch] as const))('%s', (_, patch) => {
  const { value, outcome } = reader(patch);

  it('the spots that the target needs meet it, or the most of them is said to be too few', () => {
    const tried = value<{ met: boolean; spots: number; rate: number }>('scaleUp.spotsTried');
    const with_ = reader({ ...patch, 'scaleUp.spots': tried.spots });
    expectClose(with_.value('scaleUp.areaPerHour'), tried.rate, {
      relative: 1e-12,
      source: 'the same field',
    });
    expect(tried.met).toBe(tried.rate >= value('scaleUp.target') * (1 - 1e-12));
    expect(hasValue(outcome('scaleUp.spotsForTarget'))).toBe(tried.met);
  });

  it('the last step is the larger machine, the first today; nothing exceeds the lowest ceiling', () => {
    const steps = value<StepRate[]>('scaleUp.steps');
    expect(steps.at(-1)!.rate).toBe(value('scaleUp.areaPerHour'));
    expect(steps[0]!.rate).toBe(value('scaleUp.todayAreaPerHour'));
    const ceilings = value<{ kind: string; rate: number }[]>('scaleUp.ceilings');
    expect(value('scaleUp.areaPerHour')).toBeLessThanOrEqual(ceilings[0]!.rate * (1 + 1e-9));
    console.log(
      `${(3600 * value('scaleUp.areaPerHour')).toPrecision(3)} m²/h by ${value<string>('scaleUp.limit')}; ${steps.map(({ rate }) => (3600 * rate).toPrecision(3)).join(' → ')}`,
    );
  });

  it('the chart of the spots goes through the area per hour', () => {
    const { spots, rate } = value<{ spots: Float64Array; rate: Float64Array }>('scaleUp.rateBySpots');
    const at = [...spots].indexOf(value('scaleUp.wholeSpots'));
    expect(rate[at]).toBe(value('scaleUp.areaPerHour'));
  });

  it('a link to the target sets a number of spots with which it is met', () => {
    const target = 0.9 * value('scaleUp.areaPerHour');
    const asked = reader({ ...patch, 'scaleUp.target': target });
    const spots = asked.value('scaleUp.spotsForTarget');
    const then = reader({ ...patch, 'scaleUp.target': target, 'scaleUp.spots': spots });
    expect(then.value('scaleUp.missingFactor')).toBeLessThanOrEqual(1 + 1e-9);
  });
});

describe('heat on the larger machine', () => {
  it('is that of the larger laser, whatever today’s laser can do', () => {
    // One spot of the initial field comes to its limit at 115 kHz, eleven times what today’s laser can do at most here.
    const slow = { 'laser.repetitionRate': 10e3, 'scan.speed': 2.5e-3 };
    const [low, high] = [10e3, 12e3].map((most) => {
      const { value } = reader({ ...slow, 'laser.maxRepetitionRate': most });
      expect(value<string>('scaleUp.limit')).toBe('heat');
      return value('scaleUp.areaPerHour');
    });
    expectClose(low!, high!, { relative: 1e-9, source: 'the same machine' });
  });

  it('holds all spots together to the rise that is allowed, and each is slower than one alone', () => {
    const rates = [1, 4, 20].map((spots) => {
      const { value } = reader({ 'scaleUp.spots': spots });
      expectClose(value('scaleUp.allSpotsRise'), 200, { relative: 1e-7, source: 'the limit' });
      expectClose(value('scaleUp.repetitionRate'), value('scaleUp.heatRate'), { relative: 1e-12 });
      return value('scaleUp.repetitionRate');
    });
    // One spot comes to its limit at the rate that Throughput says, as the turns are short beside the lines.
    expectClose(rates[0]!, reader({}).value('scan.hottestRate'), { relative: 1e-3, source: 'Throughput' });
    expect(rates[1]).toBeLessThan(0.95 * rates[0]!);
    expect(rates[2]).toBeLessThan(0.9 * rates[1]!);
  });

  it('is left out where pulses crowd at the turns, and says so', () => {
    const { outcome, value } = reader({ 'scan.turnRound': 'inside', 'scaleUp.acceleration': 10 });
    const table = outcome('scaleUp.heatTable');
    expect(hasValue(table)).toBe(false);
    if (!hasValue(table))
      expect(table.problem.message).toMatch(/^Heat is not worked out where the scanner turns/);
    expect(value('scaleUp.heat')).toBeNull();
    expect(value<string>('scaleUp.limit')).not.toBe('heat');
  });
});

describe('each beam at its own best on the larger machine', () => {
  it('keeps fluences and spacings in proportion where a pulse has not energy for all spots', () => {
    const patch = designs['rain-gauge-funnel.json']!.patch;
    const { value } = reader({ ...patch, 'scaleUp.maxPulseEnergy': 150e-6 });
    const found = value<Record<string, number>>('comparison.shaped');
    const scaled = value<Record<string, number>>('scaleUp.best');
    const size = Math.sqrt((150e-6 * 0.8) / (4 * found['pulseEnergy']!));
    expect(size).toBeLessThan(1);
    expectClose(scaled['size']!, size, byHand);
    for (const key of ['pulseSpacing', 'lineSpacing', 'diameter'])
      expectClose(scaled[key]!, size * found[key]!, byHand);
    expectClose(scaled['pulseEnergy']!, size ** 2 * found['pulseEnergy']!, byHand);
  });
});
