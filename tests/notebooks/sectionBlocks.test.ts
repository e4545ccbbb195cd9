import { describe, expect, it } from 'vitest';
import type { measuredSection } from '../../lib/design/measuredSection.ts';
import type { ValueOf } from '../../lib/graph/quantity.ts';
import { sectionBlocks } from '../../notebooks/sectionBlocks.ts';
import { sectionDeviationFigure, sectionFigure } from '../../notebooks/sectionFigures.ts';

const section = (count: number, rim = 0): ValueOf<typeof measuredSection> => ({
  position: Float64Array.from({ length: count }, (_, i) => (i - (count - 1) / 2) * 1e-6),
  depth: Float64Array.from({ length: count }, (_, i) => (i === (count - 1) / 2 ? 4e-6 : 0)),
  noise: 1e-8,
  tilt: 0,
  sides: [],
  downwards: false,
  wayFrom: 'groove',
  above: 0,
  rim,
  missing: 0,
});
const today = { y: Float64Array.of(-5e-6, 0, 5e-6), depth: Float64Array.of(0, 6e-6, 0), deviation: 1e-7 };
const fit = {
  residual: 3e-8,
  fitted: { y: Float64Array.of(-4e-6, 0, 4e-6), depth: Float64Array.of(0, 4e-6, 0) },
};
const draw = (values: object) =>
  sectionFigure.view({ section: section(41), today, fit: null, passes: 5, ...values });

describe('a measured groove with the computed ones over it', () => {
  it('is drawn at once with that of today, and with the fitted one when it is there', () => {
    expect(draw({}).series.map(({ label }) => label)).toEqual([
      'measured',
      'computed with the values of today',
    ]);
    const spec = draw({ fit });
    expect(spec.series.map(({ label }) => label)).toEqual([
      'measured',
      'computed with the values of today',
      'computed with the fitted values',
    ]);
    expect(spec.series[2]!.y[1]).toBeCloseTo(-4, 12);
    expect(spec.summary).toBe(
      '41 measured places, the deepest 4\u202fµm below the surface; with 5 passes and the values of today the model cuts 6\u202fµm deep, and differs from the measured depths by 0.1\u202fµm (root mean square over all of them). The fitted groove differs from the measured one by 0.03\u202fµm (root mean square inside it).',
    );
    expect(draw({ passes: 1 }).summary).toMatch(/with 1 pass and/);
  });

  it('goes down from the surface, as far as the deepest and as high as the rim', () => {
    const spec = draw({});
    expect(spec.y.domain[0]).toBeLessThan(-6);
    expect(spec.y.domain[1]).toBeGreaterThan(0);
    expect(draw({ section: section(41, 2e-6) }).y.domain[1]).toBeGreaterThan(2);
    expect([...spec.series[1]!.y].some((y) => Object.is(y, -0))).toBe(false);
  });

  it('draws few places as points, many as a line', () => {
    const gaps = (count: number) =>
      [...draw({ section: section(count) }).series[0]!.y].filter((y) => Number.isNaN(y)).length;
    expect(gaps(41)).toBe(41);
    expect(gaps(301)).toBe(0);
  });
});

describe('deviations from the fitted groove', () => {
  const drawn = (depth: readonly number[]) => {
    const position = Float64Array.from(depth, (_, i) => i * 1e-6);
    const deviations = { position, depth: Float64Array.from(depth) };
    return sectionDeviationFigure.view({ fit: { deviations }, section: section(41) });
  };

  it('counts up, in nm, with the noise as a band', () => {
    const spec = drawn([0, 2e-8, -1e-8]);
    expect([...spec.series[0]!.y].filter((y) => !Number.isNaN(y)).map((y) => y.toFixed(6))).toEqual([
      '0.000000',
      '-20.000000',
      '10.000000',
    ]);
    expect(spec.series[1]!.y2![0]).toBeCloseTo(19.6, 9);
    expect(spec.y.domain[1]).toBeGreaterThanOrEqual(30);
  });

  it.each([
    [[0, 1e-8], 'No place lies further'],
    [[0, 4e-8], 'One place lies further'],
    [[-5e-8, 4e-8], '2 places lie further'],
  ] as const)('%j: %s', (depth, says) => {
    expect(drawn(depth).summary).toBe(
      `${says} from the fitted groove than three times the noise of the surface, 0.03\u202fµm; places above the surface, which the fit leaves out, are not drawn.`,
    );
  });
});

describe('the fitted values taken over', () => {
  it('become depth per pulse and typed threshold, in one patch', () => {
    const block = sectionBlocks.find(({ id }) => id === 'section-fit')!;
    const slots = block.kind === 'prose' ? block.prose.slots : [];
    const link = slots.find((slot) => slot.slot === 'link');
    const values = {
      depthPerPulse: { value: 1.6e-8, uncertainty: 1e-10 },
      threshold: { value: 4100, uncertainty: 30 },
    };
    expect(link?.patch({ fit: values })).toEqual({
      'removal.depthPerPulse': 1.6e-8,
      'threshold.source': 'typed',
      'threshold.typedFluence': 4100,
      'threshold.typedUncertainty': 30,
    });
  });
});
