import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { hasValue, type Outcome } from '../../lib/graph/outcome.ts';
import { citation } from '../../lib/materials/bibliography.ts';
import { extendGraph, ownQuantities } from '../../lib/studies/ownQuantities.ts';
import { expectClose } from '../close.ts';
import { evaluated, line } from './ownOnes.ts';

function numberOf(outcome: Outcome | undefined): number {
  if (!outcome || !hasValue(outcome)) return expect.fail(outcome?.problem.message ?? 'no outcome');
  return outcome.value as number;
}

describe('own quantities over the design', () => {
  const lines = [
    line('twice', '2 * own.fluence'),
    line(
      'fluence',
      'laser.pulseEnergy / (pi * (lens.focalLength * laser.wavelength / plate.stepDiameter)^2)',
    ),
    line('share', 'laser.pulseEnergy / 1 mJ', { display: '%' }),
    line('half', 'plate.designPhase / 2', { display: '°', about: 'Half of the phase.' }),
    line('wide', 'lens.focalLength', { display: 'cm' }),
  ];
  const inputs = {
    'laser.pulseEnergy': 50e-6,
    'lens.focalLength': 0.1,
    'laser.wavelength': 1e-6,
    'plate.stepDiameter': 0.01,
    'plate.designPhase': Math.PI,
  };

  it('have the values of their formulas, in whatever order the lines stand', () => {
    const { outcomes, problems } = evaluated(lines, inputs);
    expect(problems).toEqual([]);
    // f λ / d = 10 µm: 50 µJ over π (10 µm)².
    const fluence = 50e-6 / (Math.PI * 1e-10);
    expectClose(numberOf(outcomes['own.fluence']), fluence, { relative: 1e-15, source: 'by hand' });
    expectClose(numberOf(outcomes['own.twice']), 2 * fluence, { relative: 1e-15, source: 'by hand' });
  });

  it('are shown in the unit chosen, or else in one of the trade or of what they are made of', () => {
    expect(evaluated(lines, inputs).texts).toEqual({
      'own.twice': '31.83 J/cm²'.replace(' ', '\u202f'),
      'own.fluence': '15.92 J/cm²'.replace(' ', '\u202f'),
      'own.share': '5\u202f%',
      'own.half': '90°',
      'own.wide': '10\u202fcm',
    });
  });

  it('say what they are as any quantity does, their formula and symbol typeset', () => {
    const { quantities } = evaluated(lines);
    expect(quantities.map(({ id }) => id)).toEqual(lines.map(({ id }) => id));
    const [twice, fluence, , half] = quantities;
    expect(twice).toMatchObject({
      kind: 'derived',
      name: 'twice of mine',
      symbol: '\\text{twice of mine}',
      unit: 'J/m^2',
      source: 'own',
      formula: '2 \\cdot \\text{fluence of mine}',
      about: 'Own quantity, worked out by the formula 2 * own.fluence.',
    });
    expect(Object.keys(fluence!.from)).toEqual([
      'laser.pulseEnergy',
      'lens.focalLength',
      'laser.wavelength',
      'plate.stepDiameter',
    ]);
    expect(fluence!.formula).toBe(
      '\\frac{E_\\text{typed}}{\\pi \\cdot {\\left(\\frac{f \\cdot \\lambda}{2a}\\right)}^{2}}',
    );
    expect(half).toMatchObject({ unit: 'rad', display: 'deg', about: 'Half of the phase.' });
    expect(citation('own')).toBe('the person’s own formula');
  });

  it('every function and sign can be typeset, hostile names are not', () => {
    const { quantities } = evaluated([
      line('a', '-(spot.width - 3 µm)^2 / abs(cbrt(8 mm³)) * sqrt(4) + 1.5e-3 m', { name: 'a_{b}$^\\foo%' }),
      line('b', 'if(ln(2) <= exp(1), floor(2.5) - (1 - e), ceil(10^-7) * match.stopRatio^2)'),
      line(
        'c',
        'atan2(1, 2) + asin(0.5) + 45° + log10(min(2, 3)) + hypot(1, 2) + 5 % + 0.9 π + 3 /mm * 2 m/s²*1 s^2',
      ),
      line('d', 'round(3 W·min / 1 J) + 180 deg'),
    ]);
    expect(quantities).toHaveLength(4);
    expect(quantities[0]!.symbol).toBe('\\text{a}');
    for (const { formula, symbol } of quantities) {
      expect(
        katex.renderToString(`${symbol} = ${formula}`, { throwOnError: true, strict: 'error' }),
      ).toContain('katex');
    }
  });

  it('follow when inputs change or are pinned', () => {
    const { quantities } = ownQuantities(designGraph, [
      line('f', '2 * lens.focalLength'),
      line('g', 'own.f / 1 m'),
    ]);
    const engine = createEngine(extendGraph(designGraph, quantities), { 'lens.focalLength': 0.1 });
    expect(numberOf(engine.evaluate(['own.g'])['own.g'])).toBe(0.2);
    engine.setInputs({ 'lens.focalLength': 0.2 });
    expect(numberOf(engine.evaluate(['own.g'])['own.g'])).toBe(0.4);
    expect(numberOf(engine.evaluate(['own.g'], { pins: { 'own.f': 3 } })['own.g'])).toBe(3);
  });

  it('have a problem where there is no value, which names the input to change', () => {
    const { outcomes } = evaluated(
      [line('a', '1 m / workpiece.z'), line('b', '2 * own.a'), line('c', 'focus.zeroCurvaturePlanes * 2')],
      { 'workpiece.z': 0 },
    );
    const message =
      "'1 m / workpiece.z' divides by 0: 'workpiece.z' is 0 here; change workpiece.z or the formula.";
    expect(outcomes['own.a']).toMatchObject({
      problem: { kind: 'impossible', message, at: 'own.a', parts: { input: 'workpiece.z', character: 1 } },
    });
    expect(outcomes['own.b']).toBe(outcomes['own.a']);
    expect(outcomes['own.c']).toMatchObject({
      problem: {
        message:
          "'focus.zeroCurvaturePlanes' is no single number, and a formula needs one; use another quantity.",
      },
    });
  });
});
