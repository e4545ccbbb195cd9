import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { readFormula } from '../../lib/studies/ownFormula.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';
import { formulaRules, takenOutSaid, usedBySaid } from '../../notebooks/ownWords.ts';
import { line } from '../studies/ownOnes.ts';

describe('words about own quantities', () => {
  it('say who uses one, and who lacks it', () => {
    expect(usedBySaid([])).toBe('');
    expect(usedBySaid(['‘b’'])).toBe('Used by ‘b’.');
    expect(takenOutSaid('a', [])).toBe('‘a’ has been taken out. Undo brings it back.');
    expect(takenOutSaid('a', ['the page ‘P’'])).toBe(
      '‘a’ has been taken out. The page ‘P’ lacks it now; undo brings it back.',
    );
    expect(takenOutSaid('a', ['‘b’', 'a requirement'])).toMatch(/‘b’ and a requirement lack it now/);
  });

  it('every example of how formulas are written can be read', () => {
    const { quantities } = ownQuantities(designGraph, [line('depthRatio', '2')]);
    const known = extendGraph(designGraph, quantities).quantities;
    const examples = formulaRules.flatMap(([, ...some]) => some);
    expect(examples.length).toBeGreaterThan(8);
    for (const example of examples) expect(() => readFormula(example, known), example).not.toThrow();
  });
});
