import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { influencesOn } from '../../lib/studies/influence.ts';
import { mostPlaces, patchAt, valuesBetween, vary } from '../../lib/studies/vary.ts';
import { expectClose } from '../close.ts';
import { run, succeed } from '../notebooks/runCommand.ts';

const { initial } = designGraph;
const magnifications = valuesBetween(1, 3, 5, 'steps');
const over = [{ id: 'expander.magnification', values: magnifications }];

describe('one or two inputs varied', () => {
  it('every place is that of a design with those inputs (independent: an engine of its own each)', () => {
    const two = [...over, { id: 'lens.focalLength', values: [0.08, 0.1, 0.15] }];
    const ids = ['match.stepRatio', 'focus.rayleighLength', 'spot.peakFluence'];
    const results = vary(designGraph, initial, two, ids);
    for (let place = 0; place < 15; place++) {
      const patch = patchAt(two, place);
      const alone = createEngine(designGraph, { ...initial, ...patch }).evaluate(ids);
      for (const { id, values } of results)
        expect({ value: values[place] }).toEqual({ value: (alone[id] as { value: number }).value });
    }
    expect(patchAt(two, 4)).toEqual({ 'expander.magnification': 1.5, 'lens.focalLength': 0.1 });
  });

  it('follows closed forms: a/w with 1/M, the Rayleigh length with (f/M)²', () => {
    const [ratio, length] = vary(designGraph, initial, over, ['match.stepRatio', 'focus.rayleighLength']);
    magnifications.forEach((m, i) => {
      expectClose(ratio!.values[i]! * m, ratio!.values[0]!, { relative: 1e-12, source: 'definition' });
      expectClose(length!.values[i]! * m * m, length!.values[0]!, { relative: 1e-9, source: 'definition' });
    });
  });

  it('leaves out what has no number, and says why', () => {
    const [stop] = vary(
      designGraph,
      initial,
      [{ id: 'plate.stop', values: ['round', 'open'] }],
      ['match.stopRatio'],
    );
    expect(stop!.values).toEqual([1.4, undefined]);
    expect(stop!.problem!.length).toBeGreaterThan(10);
  });

  it('tells how far it is', () => {
    const parts: number[] = [];
    vary(designGraph, initial, over, ['match.stepRatio'], (part) => parts.push(part));
    expect(parts).toEqual([0.2, 0.4, 0.6, 0.8, 1]);
  });

  it.each([
    [
      'too many places',
      [{ id: 'lens.focalLength', values: Array(mostPlaces + 1).fill(0.1) }],
      /20001 places/,
    ],
    ['no input', [], /One or two inputs can be varied at a time, not 0/],
    ['a value that is not allowed', [{ id: 'lens.focalLength', values: [0] }], /Focal length of 0/],
    ['a result', [{ id: 'match.stepRatio', values: [1] }], /follows from other values/],
  ])('%s: refused', (_words, wrong, says) => {
    expect(() => vary(designGraph, initial, wrong, ['match.stepRatio'])).toThrow(says);
  });

  it('by factors both ends must lie above 0', () => {
    expect(valuesBetween(1, 100, 3, 'factors')).toEqual([1, 10, 100]);
    expect(() => valuesBetween(0, 1, 3, 'factors')).toThrow(/need both ends above 0/);
  });
});

describe('what a result depends on', () => {
  it('stands in the order of its strength: Rayleigh length λf²/(π w²) with w = M D/2 (closed form)', () => {
    const found = influencesOn(designGraph, initial, 'focus.rayleighLength');
    const strength = Object.fromEntries(found.map(({ id, strength }) => [id, strength]));
    // A central difference over a thousandth: h²/6 of the third derivative, 4e-6 for an inverse square.
    for (const [id, power] of [
      ['lens.focalLength', 2],
      ['expander.magnification', -2],
      ['laser.beamDiameter', -2],
      ['laser.wavelength', 1],
    ] as const)
      expectClose(strength[id]!, power, { absolute: 1e-5, source: 'definition' });
    expect(found.length).toBe(4);
    expect(found.at(-1)!.id).toBe('laser.wavelength');
  });

  it('has none where the result is 0 or no number', () => {
    expect(() => influencesOn(designGraph, { ...initial, 'plate.stop': 'open' }, 'match.stopRatio')).toThrow(
      /is no number as the design stands/,
    );
    expect(() => influencesOn(designGraph, initial, 'no.such')).toThrow(/There is no quantity/);
  });
});

describe('on the command line', () => {
  it('vary writes CSV in the units shown', () => {
    const out = succeed([
      'vary',
      '--over',
      'lens.focalLength=50:150:3 mm',
      '--get',
      'match.stepRatio,focus.rayleighLength',
    ]);
    const [head, ...rows] = out.trimEnd().split('\r\n');
    expect(head).toMatch(/^lens\.focalLength \(mm\),match\.stepRatio,focus\.rayleighLength \(.m\)$/);
    expect(rows.map((row) => row.split(',').slice(0, 2))).toEqual([
      ['50', '1'],
      ['100', '1'],
      ['150', '1'],
    ]);
  });

  it('vary takes lists, and two inputs', () => {
    const out = succeed([
      'vary',
      '--over',
      'plate.stop=round;open',
      '--over',
      'expander.magnification=1;2',
      '--get',
      'match.stepRatio',
    ]);
    expect(out.split('\r\n').slice(0, 5)).toEqual([
      'plate.stop,expander.magnification,match.stepRatio',
      'round,1,2',
      'round,2,1',
      'open,1,2',
      'open,2,1',
    ]);
  });

  it.each([
    [['vary', '--get', 'spot.dip'], /The option --over is missing/],
    [['vary', '--over', 'nothing', '--get', 'spot.dip'], /There is no quantity ''/],
    [['vary', '--over', 'lens.focalLength=1:2:3 kg', '--get', 'spot.dip'], /kg/],
    [['influence'], /The option --of is missing/],
  ])('%j says what is wrong', (argv, says) => {
    const { code, err, out } = run(argv);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
  });

  it('influence lists the strongest first', () => {
    const [head, first] = succeed(['influence', '--of', 'match.stepRatio']).split('\r\n');
    expect(head).toBe('id,name,relative change over relative change');
    expect(first).toMatch(/^(expander\.magnification|laser\.beamDiameter|plate\.stepDiameter),".*",-?1$/);
  });
});
