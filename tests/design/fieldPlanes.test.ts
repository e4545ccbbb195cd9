import { describe, expect, it } from 'vitest';
import { hasValue } from '../../lib/graph/outcome.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from '../notebooks/designOutcomes.ts';

function result<T = number>(id: string, design: Values = {}): T {
  const outcome = outcomesOf(design)(id);
  if (!hasValue(outcome)) throw new Error(outcome.problem.message);
  return outcome.value as T;
}
function problem(id: string, design: Values) {
  const outcome = outcomesOf(design)(id);
  if (hasValue(outcome)) throw new Error(`${id} has a value`);
  return outcome.problem;
}

const um = 1e-6;
const size = { 'scan.fieldWidth': 20e-3, 'scan.fieldHeight': 10e-3 };
const all = {
  ...size,
  'workpiece.z': 2 * um,
  'workpiece.tilt': 1e-3,
  'workpiece.tiltDirection': 0.5,
  'workpiece.heightError': 3 * um,
  'scan.fieldCurvature': 5 * um,
  'lens.thermalShift': -7 * um,
};
interface Stretch {
  from: number;
  to: number;
}

describe('planes met over the field', () => {
  it('without a slant or curvature the same as the planes reached along the width', () => {
    const design = { ...all, 'workpiece.tiltDirection': 0, 'scan.fieldCurvature': 0 };
    const [met, reached] = [
      result<Stretch>('workpiece.zMet', design),
      result<Stretch>('workpiece.zReached', design),
    ];
    expectClose(met.from, reached.from, { relative: 1e-12 });
    expectClose(met.to, reached.to, { relative: 1e-12 });
  });

  it('a field of no height has the planes of the width, the spread no more than the sum of the causes', () => {
    const low = { ...all, 'workpiece.tiltDirection': 0, 'scan.fieldHeight': 100 * um };
    const [met, reached] = [
      result<Stretch>('workpiece.zMet', low),
      result<Stretch>('workpiece.zReached', low),
    ];
    expect(met.from).toBeGreaterThanOrEqual(reached.from - 1e-9);
    expect(met.to).toBeLessThanOrEqual(reached.to + 1e-12);
  });

  it('corners lie further out: by hand', () => {
    // Half the width 10 mm, half the height 5 mm: the corner ahead and the one behind; curvature s·(1 + ¼).
    const slope = Math.tan(1e-3) * (10e-3 * Math.cos(0.5) + 5e-3 * Math.sin(0.5));
    const { from, to } = result<Stretch>('workpiece.zMet', all);
    expectClose(from, 2 * um - slope - 6.25 * um - 3 * um, { relative: 1e-9, source: 'by hand' });
    // The surface turns back inside the field: its vertex lies tan²α/(4b) above the middle, b = s/(F/2)².
    expectClose(to, 2 * um + (Math.tan(1e-3) ** 2 * 10e-3 ** 2) / (4 * 5 * um) + 10 * um, {
      relative: 1e-9,
      source: 'by hand',
    });
  });

  it('the map holds what the numbers say', () => {
    const map = result<{ columns: number; rows: number; z: Float64Array; room: Float64Array }>(
      'workpiece.fieldPlanes',
      all,
    );
    expect([map.columns, map.rows]).toEqual([97, 49]);
    const met = result<Stretch>('workpiece.zMet', all);
    expectClose(Math.min(...map.z), met.from + 3 * um, { relative: 1e-9 });
    const inside = map.room.filter((room) => room >= 0).length / map.room.length;
    expectClose(result('scan.fieldInTolerance', all), inside, { absolute: 0.02, source: 'counting the map' });
  });
});

describe('what the fixture must hold', () => {
  it('height error: just used up at the value allowed', () => {
    const allowed = result('workpiece.allowedHeightError', all);
    const at = (h: number) => ({ ...all, 'workpiece.heightError': h });
    const depth = result('spot.depthOfFocus', all);
    expectClose(result('workpiece.zMetSpread', at(allowed)), depth, { relative: 1e-9 });
    expect(result('scan.usableFieldMoved', at(allowed * 1.01))).toBeLessThan(20e-3);
    expect(result('scan.usableFieldMoved', at(allowed * 0.99))).toBeGreaterThan(20e-3);
    expect(result('workpiece.allowedHeightError', { ...all, 'workpiece.tilt': 0.02 })).toBe(0);
  });

  it('tilt: less over the whole field than along its width', () => {
    const allowed = result('workpiece.allowedFieldTilt', all);
    expectClose(
      result('workpiece.zMetSpread', { ...all, 'workpiece.tilt': allowed }),
      result('spot.depthOfFocus', all),
      {
        relative: 1e-9,
      },
    );
    const straight = { ...size, 'workpiece.tiltDirection': 0 };
    expectClose(result('workpiece.allowedFieldTilt', straight), result('workpiece.allowedTilt', straight), {
      relative: 1e-12,
    });
  });
});

describe('what cannot be', () => {
  it.each([
    ['scan.fieldWidth', { 'scan.fieldWidth': 5 * um }],
    ['scan.fieldHeight', { 'scan.fieldHeight': 5 * um }],
  ])('%s smaller than the spot', (input, design) => {
    for (const id of ['workpiece.fieldPlanes', 'scan.usableField', 'workpiece.lowestPeakMet']) {
      const { kind, parts } = problem(id, design);
      expect([kind, parts.input]).toEqual(['impossible', input]);
    }
  });

  it('no depth at the tolerance names it; no limit names the tilt', () => {
    for (const id of ['scan.usableField', 'scan.fieldInTolerance', 'workpiece.allowedHeightError'])
      expect(problem(id, { 'plate.stop': 'open' }).parts.input).toBe('focus.depthTolerance');
    expect(problem('scan.usableField', {})).toMatchObject({
      kind: 'absent',
      parts: { input: 'workpiece.tilt' },
    });
    expect(result('scan.fieldInTolerance')).toBe(1);
  });

  it('a surface further from the focus than spots are computed', () => {
    const { kind, parts, message } = problem('workpiece.lowestPeakMet', { 'workpiece.tilt': 0.5 });
    expect([kind, parts.input]).toEqual(['outside', 'scan.fieldWidth']);
    expect(message).toMatch(/^Over the field the surface goes as far as -?−?2\.73\smm from the focus/);
  });
});
