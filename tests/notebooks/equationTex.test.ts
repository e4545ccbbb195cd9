import { expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { equationTex } from '../../notebooks/equationTex.ts';

it.each([
  ['an expression', 'x', 'a+b', 'x = a+b'],
  ['abbreviations behind a comma', 'x', '\\frac{a}{b},\\ b=2c', 'x = \\frac{a}{b},\\ b=2c'],
  ['an equals sign in brackets', 'x', '\\sum_{n=1}^{50}a_n', 'x = \\sum_{n=1}^{50}a_n'],
  ['a condition', '\\kappa', '2e^{-\\kappa^2} = 1', '\\kappa\\colon\\quad 2e^{-\\kappa^2} = 1'],
  ['its own equation', 'q_2', 'q_2 = \\frac{A}{B}', 'q_2 = \\frac{A}{B}'],
  ['only a name', 'x', 'x', 'x'],
])('%s', (_words, symbol, formula, tex) => {
  expect(equationTex(symbol, formula)).toBe(tex);
});

it('the ratio of the dark centre is told by the condition that it meets', () => {
  const quantity = designGraph.quantities.get('match.darkRatio');
  if (quantity?.kind !== 'derived') throw new Error('It is worked out.');
  expect(equationTex(quantity.symbol, quantity.formula)).toContain('\\colon\\quad 2e^{-\\kappa^2} = 1+');
});
