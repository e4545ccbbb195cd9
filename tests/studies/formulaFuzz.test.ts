import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { number } from '../../lib/graph/define.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { createGraph } from '../../lib/graph/graph.ts';
import { hasValue } from '../../lib/graph/outcome.ts';
import { Problem } from '../../lib/problem.ts';
import { parseFormula } from '../../lib/studies/formulaParser.ts';
import { type FormulaNode, formulaLimits, namesIn, partsOf } from '../../lib/studies/formulaSyntax.ts';
import { evaluateFormula } from '../../lib/studies/formulaValue.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';
import { cases } from '../cases.ts';
import { invented, worked } from './formulas.ts';
import { trees } from './formulaTrees.ts';
import { hostile } from './hostileFormulas.ts';

const graph = createGraph(
  Object.entries(invented).map(([id, [unit, initial]]) =>
    number({ id, name: id, symbol: 'x', unit, about: 'Invented.', initial, range: { min: -1e9, max: 1e9 } }),
  ),
);

function countOf(node: FormulaNode): number {
  return partsOf(node).reduce((sum, part) => sum + countOf(part), 1);
}

/** All that a formula could reach if it ran as code. */
function globals(): string {
  const owners = [
    globalThis,
    Object.prototype,
    Array.prototype,
    Function.prototype,
    String.prototype,
    Number.prototype,
  ];
  return JSON.stringify([...owners, Math, Map.prototype].map((owner) => Reflect.ownKeys(owner).map(String)));
}

describe('hostile text', () => {
  it('is refused with a Problem or gives a finite value, in bounded time, and leaves all else alone', () => {
    const before = globals();
    const seen = { refused: 0, value: 0, none: 0, slowest: 0 };
    fc.assert(
      fc.property(hostile, (formula) => {
        const start = performance.now();
        const lines = [{ id: 'own.x', name: formula.slice(0, 80) || 'x', formula }];
        const { quantities, problems } = ownQuantities(graph, lines);
        expect(quantities.length + problems.length).toBe(1);
        for (const { problem } of problems) {
          expect(problem).toBeInstanceOf(Problem);
          expect(problem.message).not.toMatch(
            /NaN|undefined|\[object/.test(formula) ? /\[object Object/ : /NaN|undefined|\[object/,
          );
          seen.refused++;
        }
        for (const quantity of quantities) {
          const outcome = createEngine(extendGraph(graph, quantities)).evaluate(['own.x'])['own.x']!;
          if (hasValue(outcome)) expect(Number.isFinite(outcome.value)).toBe(true);
          else expect(outcome.problem.kind, outcome.problem.message).not.toBe('fault');
          seen[hasValue(outcome) ? 'value' : 'none']++;
          expect(quantity.formula).not.toMatch(/undefined|NaN|\\url|script/);
          expect(countOf(parseFormula(formula))).toBeLessThanOrEqual(formulaLimits.nodes);
        }
        seen.slowest = Math.max(seen.slowest, performance.now() - start);
      }),
      { seed: 41, numRuns: cases(30_000, 4000) },
    );
    console.log(`hostile: ${JSON.stringify(seen)}`);
    expect(globals()).toBe(before);
    expect(seen.value).toBeGreaterThan(100);
    expect(seen.none).toBeGreaterThan(100);
    // A second core's work may stand between; without it the slowest takes some 20 ms.
    expect(seen.slowest).toBeLessThan(1000);
  });

  it('takes one step a part: no value is asked for more often than its name stands there', () => {
    fc.assert(
      fc.property(fc.oneof(trees.pure, trees.length), ({ text }) => {
        fc.pre(text.length <= formulaLimits.characters);
        const node = parseFormula(text);
        let asked = 0;
        const count = (id: string) => {
          asked++;
          return invented[id]![1];
        };
        try {
          evaluateFormula(node, { text, valueOf: count });
        } catch (error) {
          expect(error).toBeInstanceOf(Problem);
        }
        expect(asked).toBeLessThanOrEqual(namesIn(node).length);
      }),
      { seed: 42, numRuns: cases(3000, 500) },
    );
  });
});

describe('valid formulas', () => {
  it.each(['pure', 'length'] as const)(
    '%s: read from their text they have the value of plain arithmetic',
    (kind) => {
      let compared = 0;
      fc.assert(
        fc.property(trees[kind], ({ text, value }) => {
          fc.pre(text.length <= formulaLimits.characters);
          if (value === undefined) {
            expect(() => worked(text), text).toThrow(Problem);
            return;
          }
          const result = worked(text);
          compared++;
          expect(result.value, text).toBe(value);
          expect(result.unit === 'm').toBe(kind === 'length');
        }),
        { seed: 43, numRuns: cases(10_000, 1600) },
      );
      console.log(`${kind}: ${compared} compared`);
      expect(compared).toBeGreaterThan(1000);
    },
  );
});
