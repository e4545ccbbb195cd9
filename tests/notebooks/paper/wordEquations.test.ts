import { latexToMath } from 'docx/math';
import { describe, expect, it } from 'vitest';
import { pairBrackets } from '../../../notebooks/paper/pairBrackets.ts';
import { quoteScriptSigns } from '../../../notebooks/paper/scriptSigns.ts';
import { designEquations as equations } from './designEquations.ts';

describe('brackets that belong together', () => {
  it.each([
    ['(R/w)^2', '\\left(R/w\\right)^2'],
    ['e^{-(R/w)^2}', 'e^{-\\left(R/w\\right)^2}'],
    ['f(x,[y])', 'f\\left(x,\\left[y\\right]\\right)'],
    ['|F/G-1|\\le|x|', '\\left|F/G-1\\right|\\le\\left|x\\right|'],
    ['A\\{F>F_2\\}', 'A\\left\\{F>F_2\\right\\}'],
    ['\\left(a\\right)(b)', '\\left(a\\right)\\left(b\\right)'],
    ['\\left[(a)\\right)', '\\left[\\left(a\\right)\\right)'],
    ['\\text{(in words)}', '\\text{(in words)}'],
    ['\\sqrt[3]{(x)}', '\\sqrt[3]{\\left(x\\right)}'],
  ])('%s', (tex, paired) => {
    expect(pairBrackets(tex)).toBe(paired);
  });

  it.each([
    '(a',
    'a)',
    '[a,b)',
    '(a{b)}',
    '{(a}b)',
    '\\begin{cases}(a&b)\\end{cases}',
    '\\big(a\\big)',
    '|a',
  ])('leaves alone what has no partner on its level: %s', (tex) => {
    expect(pairBrackets(tex)).toBe(tex);
  });

  it('changes nothing else in any equation of the design', () => {
    console.log(`equations: ${equations.length}`);
    expect(equations.length).toBeGreaterThan(1000);
    for (const tex of equations) {
      const strip = (text: string) => text.replace(/\\(left|right)(?![a-z])/g, '');
      expect(strip(pairBrackets(tex)), tex).toBe(strip(tex));
      const left = pairBrackets(tex).match(/\\left(?![a-z])/g)?.length ?? 0;
      expect(pairBrackets(tex).match(/\\right(?![a-z])/g)?.length ?? 0, tex).toBe(left);
    }
  });
});

it.each([
  ['\\Lambda_+', '\\Lambda_\\text{+}'],
  ['z_-', 'z_\\text{−}'],
  ['A_{>F_2}', 'A_{\\text{>}F_2}'],
  ['s^{=,1}', 's^{\\text{=},1}'],
  ['\\Lambda_{0+}', '\\Lambda_{0\\text{+}}'],
  ['e^{-x}', 'e^{-x}'],
  ['a_{x=1}', 'a_{x=1}'],
])('a sign alone in a script is a word: %s', (tex, quoted) => {
  expect(quoteScriptSigns(tex)).toBe(quoted);
});

it('every equation of the design is one that Word can edit', () => {
  for (const tex of equations)
    expect(() => latexToMath(pairBrackets(quoteScriptSigns(tex))), tex).not.toThrow();
});
