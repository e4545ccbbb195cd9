import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { markPictureTruth, predictedMark } from '../../data/measured/drawMarkPicture.ts';
import type { FigureSpec } from '../../notebooks/document.ts';
import { markPictureFigure } from '../../notebooks/markPictureFigure.ts';
import { readFileAsPatch } from '../../notebooks/measuredFiles.ts';
import { figureCsv } from '../../notebooks/page/figures/figureCsv.ts';
import { expectClose } from '../close.ts';
import { outcomesOf } from './designOutcomes.ts';
import { here } from './runCommand.ts';

const name = 'lecture-table-mark.png';
const { patch, pixelPitch, x, y } = markPictureTruth;
const part = {
  'markPicture.scaleSource': 'typed',
  'markPicture.pixelPitch': pixelPitch,
  'markPicture.regionSource': 'part',
  'markPicture.regionLeft': 80,
  'markPicture.regionTop': 30,
  'markPicture.regionWidth': 180,
  'markPicture.regionHeight': 180,
};
const given = {
  ...readFileAsPatch(
    'markPicture.picture',
    new Uint8Array(readFileSync(here(`data/measured/${name}`))),
    name,
  ),
  ...patch,
  ...part,
};

function specOf(pins: Readonly<Record<string, unknown>> = {}): FigureSpec {
  const outcomeOf = outcomesOf(given, pins);
  const values = Object.fromEntries(
    Object.entries(markPictureFigure.from).map(([key, { id }]) => [
      key,
      (outcomeOf(id) as { value: unknown }).value,
    ]),
  );
  return markPictureFigure.view(values);
}

/** Mean distance from the middle of the drawn mark of those points of a series that are numbers, µm. */
function meanRadius({ series }: FigureSpec, label: string): number {
  const { x: xs, y: ys } = series.find((one) => one.label === label)!;
  const radii = [...xs].flatMap((value, i) =>
    Number.isFinite(value) ? [Math.hypot(value - x * pixelPitch * 1e6, ys[i]! - y * pixelPitch * 1e6)] : [],
  );
  return radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
}

describe('the mark in its picture', () => {
  const spec = specOf();
  const { outerDiameter, innerDiameter } = predictedMark();

  it('has its contours and the predicted mark where they were drawn, in µm of the whole picture', () => {
    const near = { absolute: 0.03, source: 'data/measured/README.md, a third of a pixel' };
    expectClose(meanRadius(spec, 'outer contour'), outerDiameter * 5e5, near);
    expectClose(meanRadius(spec, 'inner contour'), innerDiameter * 5e5, near);
    expect(spec.series.map(({ label }) => label)).toEqual([
      'outer contour',
      'inner contour',
      'predicted mark',
    ]);
    expectClose(spec.x.domain[0], 8.05, { absolute: 1e-9 });
    expectClose(spec.x.domain[1], 25.95, { absolute: 1e-9 });
    expectClose(spec.y.domain[1], 3.05, { absolute: 1e-9 });
    expect([spec.x.unit, spec.y.unit]).toEqual(['µm', 'µm']);
    expect(spec.y.domain[0]).toBeGreaterThan(spec.y.domain[1]);
  });

  it('shows the grey of the mark where the mark lies', () => {
    const { columns, rows, values } = spec.map!;
    const at = (column: number, fromTop: number) => values[(rows - 1 - fromTop) * columns + column]!;
    // On the ring to the right of the middle, and beside it.
    const right = Math.round(x - 80 + (outerDiameter + innerDiameter) / 4 / pixelPitch);
    expect(at(right, Math.round(y - 30))).toBeLessThan(90);
    expect(at(right, 5)).toBeGreaterThan(130);
    expect(spec.map!.grey).toBe(true);
  });

  it('says its numbers, and gives the contours as a table', () => {
    expect(spec.summary).toMatch(
      /^The outer contour encloses a disc of 11\.3\d\sµm ± 0\.17\sµm, its unmarked centre 4\.1\d+\sµm\..* The predicted mark is drawn/,
    );
    const [head, first] = figureCsv(spec).split('\r\n');
    expect(head).toMatch(
      /^"?outer contour, x \(µm\)"?,"?outer contour, y \(µm\)"?,"?inner contour, x \(µm\)"?/,
    );
    expect(
      first!
        .split(',')
        .slice(0, 4)
        .every((cell) => Number.isFinite(Number(cell)) && cell !== ''),
    ).toBe(true);
  });

  it('says where the predicted mark reaches beyond the frame, which is 18 µm wide, or lies outside it', () => {
    const of = (outerDiameter: number) =>
      specOf({ 'markPicture.predicted': { area: 1e-10, outerDiameter, innerDiameter: 0, cut: false } });
    const reaching = of(20e-6);
    expect(reaching.series).toHaveLength(3);
    expect(reaching.summary).toMatch(
      /as discs of equal area; 20\sµm wide, it reaches beyond what is shown here\.$/,
    );
    const outside = of(40e-6);
    expect(outside.series.map(({ label }) => label)).toEqual(['outer contour', 'inner contour']);
    expect(outside.summary).toMatch(/The predicted mark, 40\sµm wide, is larger than what is shown here\.$/);
  });

  it('does without a prediction, and without a predicted mark', () => {
    for (const mark of [null, { area: 0, outerDiameter: 0, innerDiameter: 0, cut: false }]) {
      const alone = specOf({ 'markPicture.predicted': mark });
      expect(alone.series.map(({ label }) => label)).toEqual(['outer contour', 'inner contour']);
      expect(alone.summary).not.toMatch(/predicted/);
    }
  });
});
