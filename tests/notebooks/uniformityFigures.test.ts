import { describe, expect, it } from 'vitest';
import type { FigureBlock } from '../../notebooks/document.ts';
import { readValues } from '../../notebooks/prose.ts';
import { acrossLinesFigure, lineProfileFigure, modulationFigure } from '../../notebooks/uniformityFigures.ts';
import { expectClose } from '../close.ts';
import { outcomesOf, type Values } from './designOutcomes.ts';

function specOf(block: FigureBlock, design: Values = {}) {
  const outcomeOf = outcomesOf(design);
  const read = readValues(block.from, ({ id }) => outcomeOf(id));
  if (!('values' in read)) throw new Error(read.problem.message);
  return block.view(read.values);
}

describe('the chart of modulation against line spacing', () => {
  it('does not only rise with the plate, and says where it falls', () => {
    const { series, marks, summary } = specOf(modulationFigure);
    expect(marks!.map(({ label }) => label)).toEqual(['today', 'largest allowed']);
    const [shaped] = series;
    const falls = shaped!.y.filter((value, i) => i > 0 && value < shaped!.y[i - 1]! - 0.01);
    expect(falls.length).toBeGreaterThan(10);
    expect(summary).toMatch(
      /it does not only rise: after a rise it has minima at 9\.56\sµm \(less than 0\.01\s%\), 16\.1\sµm \(0\.753\s%\) and 3[12]\.?\d?\sµm \(73\.\d\s%\)(, the first of \d)?\.$/,
    );
  });

  it('of a plain beam only rises, and a limit of all is no line', () => {
    const plain = specOf(modulationFigure, { 'plate.designPhase': 0.05, 'comparison.largestModulation': 1 });
    expect(plain.summary).toMatch(/With the plate it has no minimum after a rise\.$/);
    expect(plain.marks!.map(({ label }) => label)).toEqual(['today']);
  });
});

it('across three lines the curves run in joules per square centimetre about their means', () => {
  const { series, marks, summary } = specOf(acrossLinesFigure, { 'scan.lineSpacing': 14e-6 });
  expect(marks!.map(({ x }) => Math.round(x!))).toEqual([-14, 0, 14]);
  const shaped = series[0]!.y;
  const middle = (shaped.length - 1) / 2;
  // The same on each line.
  expectClose(shaped[middle]!, shaped[middle - 80]!, { relative: 1e-9 });
  expect(summary).toMatch(
    /^Lines lie 14\sµm apart\. With the plate the mean is [\d.]+\sJ\/cm² and the modulation 9\.\d+\s%/,
  );
});

it('a line and a pulse are drawn over their own highest', () => {
  const { series, summary } = specOf(lineProfileFigure);
  expect(series.length).toBe(4);
  for (const { y } of series) expectClose(Math.max(...y), 100, { absolute: 0.3 });
  expect(summary).toMatch(/^At half height the line is 17\sµm wide with the plate and one pulse 20\sµm/);
});
