import { describe, expect, it } from 'vitest';
import { designs } from '../../data/designs/make.ts';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, valueOrThrow } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { type Light, planeOfDefocus } from '../../lib/optics/light.ts';
import { Problem } from '../../lib/problem.ts';
import type { ChosenField } from '../../lib/process/chosenField.ts';
import { expectClose } from '../close.ts';

const initial = initialState(designGraph);
const engineOf = (patch: Patch) => createEngine(designGraph, applyPatch(designGraph, initial, patch).inputs);
const numberOf = (patch: Patch, id: string) => valueOrThrow(engineOf(patch).evaluate([id])[id]!) as number;

describe('a field of 10 mm × 10 mm, worked by hand', () => {
  const patch: Patch = {
    'scan.lineSpacing': 10e-6,
    'scan.speed': 1,
    'scan.acceleration': 10e3,
    'scan.maxSpeed': 5,
  };
  const byHand = { relative: 1e-9, source: 'worked by hand' };

  it('1000 lines of 10 ms and 2 × 1/10 000 s for turning round: 10.2 s, 9.80 mm²/s, duty 1/1.02', () => {
    expectClose(numberOf(patch, 'scan.fieldTime'), 10.2, byHand);
    expectClose(numberOf(patch, 'scan.areaRate'), 100e-6 / 10.2, byHand);
    expectClose(numberOf(patch, 'scan.duty'), 1 / 1.02, byHand);
  });

  it('3.33 mm²/s is a square metre in 83 h', () => {
    expectClose(1 / 3.33e-6 / 3600, 83.4, { relative: 1e-3, source: 'worked by hand' });
  });

  it('limits at p = 5 µm: repetition rate 5 m/s, power p·20 W/20 µJ, turning round √(aL/2)', () => {
    const limits = valueOrThrow(engineOf(patch).evaluate(['scan.limits'])['scan.limits']!) as {
      kind: string;
      speed: number;
    }[];
    const speed = (kind: string) => limits.find((limit) => limit.kind === kind)!.speed;
    expectClose(speed('repetition rate'), 5, byHand);
    expectClose(speed('power'), 5, byHand);
    expectClose(speed('acceleration'), Math.sqrt(50), byHand);
    expect(speed('scanner speed')).toBe(5);
  });

  it('a Gaussian of w gets π w² f/(2 v Δy) pulses, and 2w f/v along a line', () => {
    const plain = { ...patch, 'plate.stop': 'open', 'plate.designPhase': 2 * Math.PI };
    const w = numberOf(plain, 'focus.radius');
    const [rate, v, spacing] = [200e3, 1, 10e-6];
    const closed = { relative: 1e-6, source: 'closed form' };
    expectClose(numberOf(plain, 'scan.pulsesPerSpot'), (2 * w * rate) / v, closed);
    expectClose(
      numberOf(plain, 'scan.accumulatedPulses'),
      (Math.PI * w * w * rate) / (2 * v * spacing),
      closed,
    );
  });

  it('bursts count pulse by pulse in fluence and power', () => {
    const burst = { ...patch, 'laser.pulsesPerBurst': 4 };
    expectClose(
      numberOf(burst, 'scan.accumulatedFluence'),
      4 * numberOf(patch, 'scan.accumulatedFluence'),
      byHand,
    );
    expectClose(numberOf(burst, 'laser.averagePower'), 4 * numberOf(patch, 'laser.averagePower'), byHand);
    expectClose(numberOf(burst, 'scan.fieldTime'), 10.2, byHand);
  });
});

describe('what cannot be', () => {
  const problemOf = (patch: Patch, id = 'scan.fieldTime') => {
    const outcome = engineOf(patch).evaluate([id])[id]!;
    if (hasValue(outcome)) throw new Error(`accepted: ${JSON.stringify(patch)}`);
    return outcome.problem;
  };

  it.each<[string, Patch, string, RegExp]>([
    ['a field narrower than the spot', { 'scan.fieldWidth': 20e-6 }, 'scan.fieldWidth', /20\sµm.*31\.2\sµm/],
    ['a field lower than the spot', { 'scan.fieldHeight': 5e-6 }, 'scan.fieldHeight', /5\sµm.*31\.2\sµm/],
    ['a speed the scanner lacks', { 'scan.speed': 6 }, 'scan.speed', /6\sm\/s.*5\sm\/s/],
    [
      'pulses the laser lacks',
      { 'laser.repetitionRate': 2e6 },
      'laser.repetitionRate',
      /2000\skHz.*1000\skHz/,
    ],
    ['energy the laser lacks', { 'laser.pulseEnergy': 200e-6 }, 'laser.pulseEnergy', /200\sµJ.*100\sµJ/],
    [
      'power the laser lacks',
      { 'laser.pulseEnergy': 90e-6, 'laser.repetitionRate': 1e6 },
      'laser.pulseEnergy',
      /90\sW.*20\sW/,
    ],
    [
      'power typed that the laser lacks',
      { 'laser.energySource': 'power', 'laser.typedPower': 30, 'laser.repetitionRate': 1e6 },
      'laser.typedPower',
      /30\sW.*20\sW/,
    ],
  ])('%s is refused, and the input named', (_what, patch, input, message) => {
    const problem = problemOf(patch);
    expect(problem.kind).toBe('impossible');
    expect(problem.parts.input).toBe(input);
    expect(problem.message).toMatch(message);
    // Nothing that rests on the field is said either.
    expect(problemOf(patch, 'scan.areaRate').parts.input).toBe(input);
  });

  it.each<[string, Patch]>([
    ['a line spacing of zero', { 'scan.lineSpacing': 0 }],
    ['a speed of zero', { 'scan.speed': 0 }],
    ['a field of no width', { 'scan.fieldWidth': 0 }],
    ['no acceleration', { 'scan.acceleration': 0 }],
    ['less than one pass', { 'scan.passes': 0.2 }],
  ])('%s never enters the design', (_what, patch) => {
    expect(() => applyPatch(designGraph, initial, patch)).toThrow(Problem);
    try {
      applyPatch(designGraph, initial, patch);
    } catch (problem) {
      expect((problem as Problem).parts.input).toBe(Object.keys(patch)[0]);
    }
  });
});

describe('the rain gauge in 30 s', () => {
  const gauge = designs['rain-gauge-funnel.json']!.patch;
  const engine = engineOf(gauge);
  const best = valueOrThrow(engine.evaluate(['comparison.shaped'])['comparison.shaped']!) as ChosenField;
  const light = valueOrThrow(engine.evaluate(['focus.light'])['focus.light']!) as Light;
  /** The best pattern with the spot of today, as slow as 30 s allow. */
  const speed = (today: ChosenField['today']) => 100e-6 / 30 / today.lineSpacing;
  const settings: Patch = {
    ...gauge,
    'workpiece.z': planeOfDefocus(light, best.defocus),
    'laser.pulseEnergy': best.today.pulseEnergy,
    'scan.lineSpacing': best.today.lineSpacing,
    'scan.speed': speed(best.today) * 1.01,
    'laser.repetitionRate': (speed(best.today) * 1.01) / best.today.pulseSpacing,
  };

  it('is reached with the plate, 90 % of the field inside the window', () => {
    const time = numberOf(settings, 'scan.fieldTime');
    const inside = numberOf(settings, 'ripples.areaInWindow');
    const power = numberOf(settings, 'laser.averagePower');
    console.log(
      `rain gauge: ${time.toFixed(2)} s, ${(100 * inside).toFixed(1)} % inside, ${(1e6 * best.today.pulseEnergy).toFixed(2)} µJ, lines ${(1e6 * best.today.lineSpacing).toFixed(2)} µm, ${speed(best.today).toFixed(3)} m/s, ${((settings['laser.repetitionRate'] as number) / 1e3).toFixed(1)} kHz, ${power.toFixed(3)} W`,
    );
    expect(time).toBeLessThanOrEqual(30);
    expect(inside).toBeGreaterThan(0.9 - 2e-3);
    expect(power).toBeLessThan(numberOf(gauge, 'laser.maxPower'));
  });
});
