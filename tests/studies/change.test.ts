import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { chainTo, studyChange } from '../../lib/studies/change.ts';
import { changedSaid, movedSaid } from '../../notebooks/changeWords.ts';

const start = initialState(designGraph);
const ids = [
  'match.stepRatio',
  'focus.rayleighLength',
  'spot.peakFluence',
  'threshold.fluence',
  'groove.depth',
];
const changedBy = (patch: Patch) =>
  studyChange(designGraph, start.inputs, applyPatch(designGraph, start, patch).inputs, ids);

describe('a change', () => {
  const study = changedBy({ 'expander.magnification': 2.4 });

  it('moves numbers, the furthest first, each along a chain that begins with the input', () => {
    expect(study.moved.map(({ id }) => id)).toContain('match.stepRatio');
    const sizes = study.moved.map(({ changes }) => Math.abs(changes[1]!));
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    for (const { chain, name } of study.moved)
      expect([chain[0], chain.at(-1)]).toEqual(['magnification', name]);
    expect([study.same, study.heavy.length]).toEqual([1, 1]);
  });

  it('goes by the shortest way: magnification, beam at the plate, step ratio', () => {
    const { chain } = study.moved.find(({ id }) => id === 'match.stepRatio')!;
    expect(chain).toEqual([
      'magnification',
      'magnified beam diameter',
      'beam diameter at the plate',
      'step ratio',
    ]);
  });

  it('is told by name, and of many by number', () => {
    expect(changedSaid(study)).toBe('The last step changed magnification from 2 to 2.4.');
    expect(changedSaid(changedBy({}))).toBe('The last step changed no input.');
    const many = changedBy({
      'expander.magnification': 2.4,
      'lens.focalLength': 0.08,
      'plate.stop': 'open',
      'laser.wavelength': 515e-9,
      'scan.speed': 0.2,
    });
    expect(changedSaid(many)).toMatch(/^The last step changed .* from .* and 2 other inputs\.$/);
  });

  it('that comes to nothing is told so', () => {
    const none = changedBy({ 'scan.speed': 0.2 });
    expect(none.moved).toEqual([]);
    expect(movedSaid(none, 'Grooves')).toBe(
      'None of the 4 numbers of ‘Grooves’ moved. One number takes a longer computation and is left out.',
    );
    expect(movedSaid(study, 'Grooves')).toMatch(/^3 of the 4 numbers of ‘Grooves’ moved; /);
    const empty = { ...none, same: 0, heavy: ['a', 'b'] };
    expect(movedSaid(empty, 'X')).toBe(
      '‘X’ shows no numbers that can be compared at once. 2 numbers take a longer computation and are left out.',
    );
  });
});

describe('the way of a change', () => {
  it('does not lead through a case that is not chosen, where there is another', () => {
    const changed = new Set(['laser.beamDiameter']);
    expect(chainTo(designGraph, 'match.stepRatio', changed, start.inputs)[0]).toBe('raw beam diameter');
  });

  it('is empty where no input leads there', () => {
    expect(chainTo(designGraph, 'match.stepRatio', new Set(['scan.speed']), start.inputs)).toEqual([]);
  });
});
