import { describe, expect, it } from 'vitest';
import { levelSection } from '../../lib/measured/sectionLevel.ts';
import type { SectionTable } from '../../lib/measured/sectionTable.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { Problem } from '../../lib/problem.ts';
import { expectClose } from '../close.ts';

const noise = 30e-9;
const groove = (y: number) => 5e-6 * Math.max(0, 1 - (y / 8e-6) ** 2) ** 1.5;

/** 301 places over 40 µm: a groove at `centre`, tilted by 2 %, 3 µm above zero; `way` −1 where depth counts. */
function tableOf(changes: {
  readonly centre?: number;
  readonly way?: 1 | -1;
  readonly named?: SectionTable['named'];
  readonly more?: (y: number) => number;
  readonly depth?: (y: number) => number;
  readonly to?: number;
}): SectionTable {
  const { centre = 1.3e-6, way = 1, named = 'unsaid', more = () => 0, depth = groove, to = 20e-6 } = changes;
  const random = createRandom(11);
  const position = Array.from({ length: 301 }, (_, i) => -20e-6 + (i / 300) * (to + 20e-6));
  const height = position.map(
    (x) => way * (3e-6 + 0.02 * x - depth(x - centre) + more(x - centre) + noise * random.normal()),
  );
  return { position, height, named, missing: 2 };
}

const worstOf = (table: SectionTable, depth = groove) => {
  const section = levelSection(table);
  return section.depth.reduce((most, d, i) => Math.max(most, Math.abs(d - depth(section.position[i]!))), 0);
};

describe('a section levelled by the surface on both sides', () => {
  it('lies about the middle of its groove, with its depth counted from the surface', () => {
    const section = levelSection(tableOf({}));
    // Four deviations of the noise, and a centre that the walls of slope 1 give to a third of it.
    expect(worstOf(tableOf({}))).toBeLessThan(5 * noise);
    // Three standard errors: 30 nm over the root of 170 samples of surface, some 13 µm from their middle.
    expectClose(section.tilt, 0.02, { absolute: 5.4e-4 });
    // About 170 samples of surface: 1/√(2·170), and the median is less sharp by 1.65.
    expectClose(section.noise, noise, { relative: 0.27 });
    expectClose(section.position[0]!, -21.3e-6, { absolute: 30e-9 });
    expect(section).toMatchObject({ downwards: false, wayFrom: 'groove', missing: 2 });
    const [left, right] = section.sides;
    expect(left![0]).toBeLessThan(left![1]);
    expect(left![1]).toBeLessThan(-7.5e-6);
    expect(right![0]).toBeGreaterThan(7.5e-6);
    expectClose(right![1], 18.7e-6, { absolute: 30e-9 });
  });

  it('finds which way the values count from the way the groove goes', () => {
    const down = levelSection(tableOf({ way: -1 }));
    const up = levelSection(tableOf({ way: 1 }));
    expect(down.downwards).toBe(true);
    down.depth.forEach((d, i) => {
      expectClose(d, up.depth[i]!, { absolute: 1e-12 });
    });
    // Also against a header that says otherwise: some instruments write heights below 0 as depths.
    expect(levelSection(tableOf({ way: 1, named: 'depth' })).downwards).toBe(false);
  });

  it('asks the header where as much lies above the surface as below', () => {
    const more = (y: number) => (Math.abs(y) > 8e-6 && Math.abs(y) < 12e-6 ? 4e-6 : 0);
    const table = tableOf({ more, named: 'height' });
    expect(levelSection(table)).toMatchObject({ downwards: false, wayFrom: 'header' });
  });

  it.each([
    [
      'dust and pits',
      (y: number) => (Math.abs(y - 15e-6) < 0.4e-6 ? 2e-6 : Math.abs(y + 14e-6) < 0.3e-6 ? -1e-6 : 0),
    ],
    ['a rim on both sides', (y: number) => 1e-6 * Math.exp(-(((Math.abs(y) - 9.2e-6) / 0.6e-6) ** 2))],
    ['a rim on one side', (y: number) => 1.5e-6 * Math.exp(-(((y - 9.2e-6) / 0.6e-6) ** 2))],
  ])('%s do not pull the level', (_name, more) => {
    const section = levelSection(tableOf({ more }));
    const floor = section.depth.filter((_, i) => Math.abs(section.position[i]!) < 1e-6);
    const mean = floor.reduce((sum, d) => sum + d, 0) / floor.length;
    // The mean of 5(1 − y²/64)^{3/2} over a µm either way.
    expectClose(mean, 4.961e-6, { absolute: 1.5 * noise });
    expect(section.above).toBeGreaterThan(3);
    expect(section.rim).toBeGreaterThan(0.8e-6);
  });

  it('takes the two troughs of a ring for one groove', () => {
    const depth = (y: number) => 4e-6 * Math.exp(-(((Math.abs(y) - 4e-6) / 1.5e-6) ** 4));
    const section = levelSection(tableOf({ depth }));
    expectClose(section.position[0]!, -21.3e-6, { absolute: 60e-9 });
    expect(section.sides[0]![1]).toBeLessThan(-5e-6);
  });

  it('heights rounded to steps wider than their scatter have the noise of the rounding', () => {
    const table = tableOf({ depth: groove });
    const step = 100e-9;
    const rounded = table.position.map((x) => step * Math.round((3e-6 - groove(x)) / step));
    expectClose(levelSection({ ...table, height: rounded }).noise, step / Math.sqrt(12), { relative: 1e-9 });
  });

  it.each([
    ['noise alone', tableOf({ depth: () => 0 }), 'absent', /No groove shows/],
    [
      'a scratch no deeper than the scatter',
      tableOf({ depth: (y) => 0.01 * groove(y) }),
      'absent',
      /No groove shows/,
    ],
    [
      'one and the same height',
      { ...tableOf({}), height: Array<number>(301).fill(2e-6) },
      'absent',
      /No groove shows/,
    ],
    ['no surface to the right', tableOf({ to: 8e-6 }), 'outside', /surface to the right of the groove/],
  ] as const)('%s: a problem that says what to do', (_name, table, kind, says) => {
    let problem: unknown;
    try {
      levelSection(table);
    } catch (error) {
      problem = error;
    }
    expect(problem).toBeInstanceOf(Problem);
    expect((problem as Problem).kind).toBe(kind);
    expect((problem as Problem).message).toMatch(says);
  });
});
