import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { expectClose } from '../close.ts';

/** Outcomes of the initial design with a change. */
function designOf(patch: Patch = {}) {
  const { inputs } = applyPatch(designGraph, initialState(designGraph), patch);
  const engine = createEngine(designGraph, inputs);
  const outcome = (id: string) => engine.evaluate([id])[id]!;
  const value = (id: string): number => {
    const found = outcome(id);
    return hasValue(found) ? (found.value as number) : Number.NaN;
  };
  const note = (id: string) => {
    const found = outcome(id);
    return hasValue(found) ? (found.note ?? '') : `problem: ${found.problem.message}`;
  };
  return { outcome, value, note };
}

/** A thick part and a quick field, where a half-space holds. */
const thick: Patch = {
  'workpiece.thickness': 0.1,
  'scan.fieldWidth': 1e-3,
  'scan.fieldHeight': 0.2e-3,
  'scan.speed': 1,
};

describe('heat of a pulse', () => {
  it('is the energy through the stop, the part absorbed and the part that stays', () => {
    const { value } = designOf({ 'heat.absorptanceSource': 'typed', 'laser.pulsesPerBurst': 3 });
    const expected = 0.3 * 0.4 * value('losses.energyAfter') * value('plate.transmission') * 3;
    expectClose(value('heat.perPulse'), expected, {
      relative: 1e-8,
      source: 'stop and losses by another way',
    });
  });

  it('of the plain beam at the same energy is that of its own way through the stop', () => {
    const { value } = designOf({ 'ripples.unshapedRuns': 'energy' });
    expect(value('unshaped.heat.perPulse')).toBeGreaterThan(0.9 * value('heat.perPulse'));
    // At the same peak fluence the narrower spot needs less energy.
    expect(designOf().value('unshaped.heat.perPulse')).toBeLessThan(0.5 * value('heat.perPulse'));
  });

  it('a burst that lasts long says so', () => {
    expect(designOf({ 'laser.pulsesPerBurst': 5 }).note('heat.perPulse')).toBe('');
    const long = designOf({ 'laser.pulsesPerBurst': 5, 'laser.burstSpacing': 1e-6 });
    expect(long.note('heat.perPulse')).toMatch(/A burst lasts 0\.8 of the time between bursts/);
  });
});

describe('the rise of a field', () => {
  it('is its parts, and keeps to the limit or not', () => {
    for (const limit of [100, 5000]) {
      const { value, outcome } = designOf({ ...thick, 'heat.riseLimit': limit });
      const sum = value('heat.ownRise') + value('heat.lineRise');
      expectClose(value('heat.rise'), sum, { relative: 1e-12 });
      expect(outcome('heat.withinLimit')).toMatchObject({ value: sum <= limit });
    }
  });

  it('at the rate found is the limit, speed raised with the rate', () => {
    const now = designOf({ ...thick, 'laser.pulseEnergy': 1e-6, 'heat.riseLimit': 100 });
    const rate = now.value('heat.maxRepetitionRate');
    const there = designOf({
      ...thick,
      'laser.pulseEnergy': 1e-6,
      'laser.repetitionRate': rate,
      'scan.speed': now.value('scan.pulseSpacing') * rate,
      'scan.maxSpeed': 1000,
      'laser.maxRepetitionRate': 1e9,
      'laser.maxPower': 1e5,
    });
    expectClose(there.value('heat.rise'), 100, { relative: 1e-6, source: 'the limit' });
  });

  it('says what is left out, and nothing where nothing is', () => {
    expect(designOf(thick).note('heat.rise')).toBe('');
    expect(designOf().note('heat.rise')).toMatch(/^Heat is through the thickness in about 270\sms/);
    expect(designOf({ 'scan.turnRound': 'inside' }).note('heat.rise')).toMatch(/crowd/);
    expect(designOf({ ...thick, 'scan.passes': 2, 'scan.hatchAngle': 1 }).note('heat.rise')).toMatch(
      /lay along/,
    );
  });

  it('is withheld where pulses crowd at turns with the laser on', () => {
    const crowding = designOf({ 'scan.turnRound': 'inside', 'scan.speed': 5, 'scan.lineSpacing': 12e-6 });
    const problem = { kind: 'outside', parts: { input: 'scan.turnRound' } };
    const resting = [
      'rise',
      'ownRise',
      'lineRise',
      'withinLimit',
      'maxRepetitionRate',
      'variations',
      'lineByLine',
    ];
    for (const what of [...resting, 'spotRise', 'fieldRise', 'warmThroughRise'])
      expect(crowding.outcome(`heat.${what}`)).toMatchObject({ problem });
    expect(crowding.outcome('unshaped.heat.rise')).toMatchObject({ problem });
    expect(crowding.outcome('scan.hottestRate')).toMatchObject({ value: null });
    // What rests on one place only does not turn.
    expect(crowding.value('heat.pointRise')).toBeGreaterThan(0);
    // Today's turns are short, those at the rate looked for are not.
    const cool = designOf({ 'scan.turnRound': 'inside', 'heat.riseLimit': 5000 });
    expect(cool.value('heat.rise')).toBeGreaterThan(0);
    expect(cool.outcome('heat.maxRepetitionRate')).toMatchObject({ problem });
  });

  it('holds against the hottest place, not only where the next pulse comes', () => {
    const apart = { 'scan.speed': 2, 'scan.lineSpacing': 12e-6, 'laser.pulseEnergy': 40e-6 };
    const { value } = designOf({ ...apart, 'laser.energySource': 'typed' });
    expect(value('heat.rise')).toBeGreaterThan(2 * value('heat.spotRise'));
    expectClose(value('heat.rise'), value('heat.profileRise'), {
      relative: 0.03,
      source: 'its own profile at 35 places; earlier lines add 3 %',
    });
  });

  it('names the input where thermal values or a limit that is met are wanting', () => {
    const other = { 'workpiece.material': 'other', 'ripples.constantsSource': 'iron' };
    expect(designOf(other).outcome('heat.rise')).toMatchObject({
      problem: { kind: 'absent', parts: { input: 'heat.thermalSource' } },
    });
    const typed = { ...other, 'heat.thermalSource': 'typed' };
    expect(designOf(typed).value('heat.rise')).toBeGreaterThan(0);
    const cold = { ...thick, 'laser.pulseEnergy': 1e-9, 'heat.riseLimit': 10e3, 'scan.acceleration': 1e3 };
    expect(designOf(cold).note('heat.maxRepetitionRate')).toMatch(
      /problem: Up to the highest repetition rate of the laser, 1\sMHz, .*10000\sK/,
    );
  });
});

it('estimates side by side: which is larger follows from what each leaves out', () => {
  const { value } = designOf();
  expect(value('heat.pointRise')).toBeGreaterThan(value('heat.staticRise'));
  expect(value('heat.fieldRise')).toBeLessThan(value('heat.plateRise'));
  expect(value('heat.plateRise')).toBeLessThan(value('heat.warmThroughRise'));
  // P t/(ρ c d A) by hand: 1.754 µJ, 40 000 pulses on each of 1667 lines, 0.4 J/K below the field.
  expectClose(value('heat.warmThroughRise'), (1.754e-6 * 40000 * 1667) / 0.4, {
    relative: 1e-3,
    source: 'by hand',
  });
  expectClose(value('heat.profileRise'), value('heat.spotRise'), { relative: 0.05, source: 'w_eff' });
});
