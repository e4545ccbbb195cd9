import { describe, expect, it } from 'vitest';
import { type DrawnRipples, drawRipples } from '../../data/measured/drawRipples.ts';
import { measureRipples } from '../../lib/measured/ripplePicture.ts';
import { createRandom } from '../../lib/numerics/random.ts';
import { cases, long } from '../cases.ts';
import { expectClose } from '../close.ts';

const degree = Math.PI / 180;
const drawn: DrawnRipples = {
  width: 256,
  height: 256,
  period: 13.5,
  direction: 83 * degree,
  amplitude: 0.2,
  noise: 0.05,
};

/** Difference of two directions of lines, rad. */
function turnBetween(a: number, b: number): number {
  const turn = a - b;
  return turn - Math.PI * Math.round(turn / Math.PI);
}

/** Period within 0.3 %, direction within 0.3°: what issue and documents promise. */
function expectFound(ripples: DrawnRipples): void {
  const { main } = measureRipples(drawRipples(ripples));
  expect(main, JSON.stringify(ripples)).toBeDefined();
  expectClose(main!.period, ripples.period, { relative: 0.003, source: JSON.stringify(ripples) });
  expectClose(turnBetween(main!.direction, ripples.direction), 0, {
    absolute: 0.3 * degree,
    source: JSON.stringify(ripples),
  });
}

describe('period and direction as drawn', () => {
  it.each(Array.from({ length: 18 }, (_, i) => 10 * i + 3))('turned by %i°', (turn) => {
    expectFound({ ...drawn, direction: turn * degree });
  });

  it.each([0, 90, 45])('along an axis or the diagonal, %i°', (turn) => {
    expectFound({ ...drawn, direction: turn * degree });
  });

  it.each<[string, Partial<DrawnRipples>]>([
    ['no noise', { noise: 0 }],
    ['noise as strong as the ripples', { noise: 0.1, amplitude: 0.1 }],
    ['a tenth of the noise’s variance', { noise: 0.2, amplitude: 0.09, width: 512, height: 512 }],
    ['little contrast, 3 counts', { amplitude: 0.012, noise: 0.004 }],
    ['a background that tilts by more than the ripples', { gradientX: 0.4, gradientY: -0.3, amplitude: 0.1 }],
    ['narrow ridges', { harmonic: 0.4 }],
    ['twelve bits', { fullScale: 4095 }],
    ['stronger at one side', { strength: (x) => 0.3 + x / 300 }],
    ['a wide picture', { width: 700, height: 150 }],
  ])('%s', (_name, change) => {
    expectFound({ ...drawn, ...change });
  });

  it.each(long ? [256, 512, 1024, 2048, 4096] : [256, 512, 1024])('%i pixels', (side) => {
    expectFound({ ...drawn, width: side, height: side });
    expectFound({ ...drawn, width: side, height: side, period: side / 16, noise: 0.02 });
  });

  it('seeded periods and directions', () => {
    const random = createRandom(301);
    for (let i = 0; i < cases(200, 25); i++) {
      const period = random.between(4, 24);
      const direction = random.between(0, Math.PI);
      expectFound({ ...drawn, period, direction, noise: random.between(0, 0.1), seed: i });
    }
  });
});

describe('ripples that wander', () => {
  const disordered = { ...drawn, width: 768, height: 768, period: 16, disorderLength: 30 };

  it('the uncertainty covers how far the answer is off', () => {
    const count = cases(40, 8);
    const pulls = Array.from({ length: count }, (_, i) => {
      const ripples = { ...disordered, width: 512, height: 512, disorder: 0.12, seed: 100 + i };
      const main = measureRipples(drawRipples(ripples)).main!;
      return [
        (main.period - 16) / main.periodUncertainty,
        turnBetween(main.direction, ripples.direction) / main.directionUncertainty,
      ] as const;
    });
    const scatter = (of: 0 | 1) => Math.sqrt(pulls.reduce((sum, pull) => sum + pull[of] ** 2, 0) / count);
    console.log(`period ${scatter(0).toFixed(2)}, direction ${scatter(1).toFixed(2)} uncertainties off`);
    // Tiles overlap and the phase that wanders comes back, so that the uncertainty is rather too large.
    for (const of of [0, 1] as const) expect(scatter(of)).toBeLessThan(1.5);
  });

  it.each([0.05, 0.1, 0.2])(
    'the half-width of the orientation is that of a disorder of %f rad',
    (disorder) => {
      const ripples = { ...disordered, width: 1024, height: 1024, disorder, noise: 0, disorderLength: 40 };
      const { orientation } = measureRipples(drawRipples(ripples));
      // √(2 ln 2) of a normal distribution. 650 patches of 40² pixels tell a scatter to 3 %; the gradient of a bent phase
      // and the smoothing of 2 pixels in 16 take some more.
      expectClose(orientation.halfWidth!, Math.sqrt(2 * Math.LN2) * disorder, {
        relative: 0.08,
        source: 'normal distribution as drawn',
      });
      expectClose(turnBetween(orientation.direction, drawn.direction), 0, { absolute: 0.3 * disorder });
    },
  );

  it('half-width, resultant and coherence follow the disorder', () => {
    const results = [0.02, 0.08, 0.16, 0.24].map((disorder) => {
      const { main, orientation } = measureRipples(drawRipples({ ...disordered, disorder }));
      return [
        orientation.halfWidth!,
        -orientation.resultant,
        -main!.coherenceAcross.length,
        -main!.coherenceAlong.length,
      ];
    });
    for (let i = 1; i < results.length; i++)
      results[i]!.forEach((value, k) => {
        expect(value, `${k} of ${i}`).toBeGreaterThanOrEqual(results[i - 1]![k]!);
      });
  });

  it('coherence lengths of a phase that wanders: the autocorrelation as drawn', () => {
    const { disorderLength, period } = disordered;
    const disorder = 0.2;
    // A normal phase of variance s² and correlation e^(−r²/2l²): the envelope exp(−s²(1 − e^(−r²/2l²))) is 1/e where
    // e^(−r²/2l²) = 1 − 1/s².
    const scatter = (disorder * 2 * Math.PI * disorderLength) / period;
    const expected = disorderLength * Math.sqrt(-2 * Math.log(1 - 1 / scatter ** 2));
    const ripples = { ...disordered, width: 1024, height: 1024, disorder, noise: 0 };
    const { main } = measureRipples(drawRipples(ripples));
    for (const { length, atLeast } of [main!.coherenceAlong, main!.coherenceAcross]) {
      expect(atLeast).toBe(false);
      expectClose(length, expected, { relative: 0.15, source: 'autocorrelation as drawn' });
    }
  });

  it('the map of an ordered picture: regular and of one direction in every cell', () => {
    for (const direction of [0.02, 1.4, Math.PI - 0.02]) {
      const { regularity } = measureRipples(drawRipples({ ...drawn, direction, noise: 0.01 })).orientation;
      const { columns, rows, cell, values, directions } = regularity;
      expect([columns * rows, values.length]).toEqual([directions.length, directions.length]);
      expect(columns * cell).toBeLessThanOrEqual(256);
      for (const value of values) expect(value).toBeGreaterThan(0.98);
      for (const one of directions) {
        expectClose(turnBetween(one, direction), 0, { absolute: 0.02, source: 'as drawn' });
        expect(one >= 0 && one <= Math.PI).toBe(true);
      }
    }
  });

  it('ordered ripples keep their phase beyond the tiles, and it is said', () => {
    const { main, tile } = measureRipples(drawRipples({ ...drawn, width: 512, height: 512 }));
    for (const { length, atLeast } of [main!.coherenceAlong, main!.coherenceAcross])
      expect([length, atLeast]).toEqual([0.4 * tile.size, true]);
  });
});

describe('fine ripples', () => {
  const both = { ...drawn, width: 512, height: 512, finePeriod: 5.2, fineAmplitude: 0.08 };

  it('are found beside the others, and harmonics are none', () => {
    const { main, second } = measureRipples(drawRipples({ ...both, harmonic: 0.3 }));
    expectClose(main!.period, 13.5, { relative: 0.003 });
    expectClose(second!.period, 5.2, { relative: 0.003 });
    expectClose(turnBetween(second!.direction, drawn.direction + Math.PI / 2), 0, { absolute: 0.3 * degree });
    expect(measureRipples(drawRipples({ ...drawn, harmonic: 0.4 })).second).toBeUndefined();
  });
});

describe('scale, progress and stop', () => {
  const image = drawRipples(drawn);

  it('with a pixel pitch lengths are in metres, places stay in pixels', () => {
    const inPixels = measureRipples(image);
    const inMetres = measureRipples(image, { pixelPitch: 50e-9 });
    expect([inPixels.unit, inMetres.unit]).toEqual(['px', 'm']);
    expectClose(inMetres.main!.period, inPixels.main!.period * 50e-9, { relative: 1e-12 });
    expectClose(inMetres.main!.periodUncertainty, inPixels.main!.periodUncertainty * 50e-9, {
      relative: 1e-12,
    });
    expectClose(inMetres.main!.coherenceAcross.length, inPixels.main!.coherenceAcross.length * 50e-9, {
      relative: 1e-12,
    });
    expect(inMetres.orientation).toEqual(inPixels.orientation);
  });

  it('progress grows from 0 to 1, and a stop ends it', () => {
    const shares: number[] = [];
    measureRipples(drawRipples({ ...drawn, width: 600 }), {}, { progress: (share) => shares.push(share) });
    expect(shares.length).toBeGreaterThan(5);
    for (let i = 1; i < shares.length; i++) expect(shares[i]).toBeGreaterThanOrEqual(shares[i - 1]!);
    expect(shares.at(-1)).toBeLessThanOrEqual(1);
    let asked = 0;
    expect(() => measureRipples(image, {}, { shouldStop: () => ++asked === 3 })).toThrow(
      /"drawn\.png" was stopped/,
    );
    expect(asked).toBe(3);
  });

  it.each([
    [{ region: { left: 0, top: 0, width: 60, height: 200 } }, /60 × 200 pixels.*at least 64 × 64/],
    [{ region: { left: 200, top: 0, width: 100, height: 100 } }, /does not lie in "drawn\.png"/],
    [{ smoothing: 0 }, /over 0 pixels.*0\.5 to 16/],
    [{ smoothing: Number.NaN }, /over NaN pixels/],
    [{ smoothing: 17 }, /0\.5 to 16/],
  ])('%j cannot be', (options, says) => {
    expect(() => measureRipples(image, options)).toThrow(says);
  });
});
