import { describe, expect, it } from 'vitest';
import { quadratic } from '../../lib/numerics/smallMatrix.ts';
import { tabulateAreas } from '../../lib/process/areaTable.ts';
import { fitGaussianMarks } from '../../lib/process/gaussianMarks.ts';
import type { MarkFit } from '../../lib/process/markFit.ts';
import { fitTabulated } from '../../lib/process/profileMarks.ts';
import type { SpotMark } from '../../lib/process/spotMark.ts';
import { cases, long } from '../cases.ts';
import { areaAboveIn, markFrom, shapedSpots } from './spotsUnderTest.ts';
import { gaussianMark, type MarkRecipe, type SyntheticTable, syntheticMarks } from './syntheticMarks.ts';

const tables = cases(1000, 50);
const thresholdEnergy = 2e-6;
const radius = 15e-6;
const size = (Math.PI * radius ** 2) / 2;

type ThresholdFit = MarkFit & {
  readonly thresholdFluence: number;
  readonly uncertainties: { readonly thresholdFluence: number };
  readonly intervals: { readonly thresholdFluence: readonly [number, number] };
};

interface Tried {
  readonly markAt: MarkRecipe['markAt'];
  readonly fit: (marks: readonly SpotMark[]) => ThresholdFit;
  readonly truth: number;
  /** Area and its derivatives by the parameters, the first ln E_th, at ln(E/E_th). */
  readonly model: (u: number) => { readonly area: number; readonly slopes: readonly number[] };
  /** How ln of the threshold fluence follows from the parameters. */
  readonly direction: readonly number[];
}

/** Least-squares ideal for the known scatter (Cramér and Rao): standard uncertainty of ln of the threshold fluence. */
function idealOf({ marks, scatter }: SyntheticTable, { model, direction }: Tried): number {
  const count = direction.length;
  const information = Array.from({ length: count }, () => new Float64Array(count));
  for (const mark of marks) {
    const u = Math.log(mark.energy / thresholdEnergy);
    if (mark.area === 0 || u <= 0) continue;
    const { area, slopes } = model(u);
    const variance =
      Math.PI * area * scatter.reading ** 2 +
      4 * area ** 2 * scatter.relative ** 2 +
      (slopes[0]! * scatter.energy) ** 2;
    for (let i = 0; i < count; i++)
      for (let k = 0; k < count; k++) information[i]![k]! += (slopes[i]! * slopes[k]!) / variance;
  }
  if (count === 1) return 1 / Math.sqrt(information[0]![0]!);
  const [[a, b], [, c]] = information as unknown as [Float64Array, Float64Array];
  const determinant = a! * c! - b! * b!;
  const inverse = [
    Float64Array.of(c! / determinant, -b! / determinant),
    Float64Array.of(-b! / determinant, a! / determinant),
  ];
  return Math.sqrt(quadratic(direction, inverse, direction));
}

function tryAll(tried: Tried) {
  const found = Array.from({ length: tables }, (_, i) => {
    const table = syntheticMarks({ seed: 20260 + i, thresholdEnergy, markAt: tried.markAt });
    const fit = tried.fit(table.marks);
    const [low, high] = fit.intervals.thresholdFluence;
    return {
      inside: low < tried.truth && tried.truth < high,
      off: Math.log(fit.thresholdFluence / tried.truth),
      ratio: Math.log(high / low) / (2 * 1.96 * idealOf(table, tried)),
      alarm: fit.verdict !== 'describes',
    };
  });
  const share = (of: (one: (typeof found)[0]) => boolean) => found.filter(of).length / tables;
  const mean = found.reduce((sum, { off }) => sum + off, 0) / tables;
  const spread = Math.sqrt(found.reduce((sum, { off }) => sum + (off - mean) ** 2, 0) / (tables - 1));
  const ratio = found.map((one) => one.ratio).sort((a, b) => a - b)[Math.floor(tables / 2)]!;
  return { inside: share(({ inside }) => inside), alarms: share(({ alarm }) => alarm), ratio, mean, spread };
}

const spots: [string, Tried][] = [
  [
    'Gaussian, D² against ln E',
    {
      markAt: gaussianMark(radius),
      fit: (marks) => fitGaussianMarks(marks),
      truth: (2 * thresholdEnergy) / (Math.PI * radius ** 2),
      model: (u) => ({ area: size * u, slopes: [-size, size * u] }),
      direction: [1, -1],
    },
  ],
  ...shapedSpots.map(({ name, light, plane }): [string, Tried] => {
    const areaAbove = areaAboveIn(light, plane);
    const table = tabulateAreas(areaAbove);
    return [
      name,
      {
        markAt: markFrom(areaAbove),
        fit: (marks) => fitTabulated(marks, table, 1),
        truth: thresholdEnergy,
        model: (u) => ({ area: table.areaAt(u), slopes: [-table.slopeAt(u)] }),
        direction: [1],
      },
    ];
  }),
];

describe(`${tables} synthetic tables`, () => {
  it.each(spots)('%s', (name, tried) => {
    const { inside, alarms, ratio, mean, spread } = tryAll(tried);
    console.log(
      `${name}: ${(100 * inside).toFixed(1)} % inside, interval ${ratio.toFixed(2)} of the ideal, mean ${(100 * mean).toFixed(2)} % of scatter ${(100 * spread).toFixed(2)} %, false alarms ${(100 * alarms).toFixed(1)} %`,
    );
    // A mean of n has the n-th part of the variance: 3.5 of its deviations, beside a bias of a quarter of the scatter.
    expect(Math.abs(mean)).toBeLessThan((0.25 + 3.5 / Math.sqrt(tables)) * spread);
    if (!long) return;
    expect(inside).toBeGreaterThanOrEqual(0.93);
    expect(inside).toBeLessThanOrEqual(0.97);
    expect(ratio).toBeLessThanOrEqual(1.3);
    expect(alarms).toBeLessThanOrEqual(0.07);
  });
});
