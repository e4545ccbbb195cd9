import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { outcomesOf } from '../notebooks/designOutcomes.ts';

const lenses = { 'expander.kind': 'lenses' };

describe('an expander of two lenses', () => {
  for (const id of ['expander.firstFocalLength', 'expander.secondFocalLength']) {
    it(`with ${id} = 0 names that input, where the lenses count`, () => {
      const outcome = outcomesOf(lenses, { [id]: 0 })('plate.beamDiameter');
      expect(outcome).toMatchObject({
        problem: { kind: 'impossible', at: 'expander.lensBeam', parts: { input: id, value: '0' } },
      });
      expect(JSON.stringify(outcome)).toMatch(
        /The focal length of the (first|second) lens of the expander is 0/,
      );
    });

    it(`with ${id} = 0 concerns nothing while the magnification counts`, () => {
      const engine = createEngine(designGraph);
      const ids = [...designGraph.quantities.keys()].filter(
        (other) => !/^expander\.(lens|internal)/.test(other),
      );
      const before = engine.evaluate(ids);
      const after = engine.evaluate(ids, { pins: { [id]: 0 } });
      for (const other of ids)
        if (other !== id) expect(hasValue(after[other]!), other).toBe(hasValue(before[other]!));
    });
  }

  for (const [name, design, inside] of [
    ['by its magnification', {}, 'unknown'],
    ['Galilean', lenses, 'none'],
    ['Keplerian', { ...lenses, 'expander.firstFocalLength': 50e-3, 'expander.separation': 150e-3 }, 'focus'],
  ] as const) {
    it(`${name}: focus inside is '${inside}'`, () => {
      expect(outcomesOf(design)('expander.focusInside')).toEqual({ value: inside });
    });
  }
});
