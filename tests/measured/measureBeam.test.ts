import { describe, expect, it } from 'vitest';
import { drawBeam, type SyntheticBeam } from '../../data/measured/drawBeam.ts';
import { measureBeam } from '../../lib/measured/measureBeam.ts';
import { Problem } from '../../lib/problem.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import { drawTrial } from './syntheticBeam.ts';

const pitch = 5e-6;

/** Relative deviations of the measured diameters from the drawn ones. */
function measureTrial(seed: number) {
  const elliptical = seed % 2 === 1;
  const { beam, image } = drawTrial(seed, elliptical);
  const measured = measureBeam(image, pitch);
  const x = measured.diameterX / (2 * beam.radiusX * pitch) - 1;
  const y = measured.diameterY / (2 * beam.radiusY * pitch) - 1;
  const together = measured.equivalentDiameter / (2 * Math.sqrt(beam.radiusX * beam.radiusY) * pitch) - 1;
  const stated = measured.uncertainty.equivalentDiameter / measured.equivalentDiameter;
  const notes = measured.notes.map((note) => note.kind);
  return {
    radius: beam.radiusX,
    elliptical,
    x,
    y,
    together,
    covered: together / stated,
    angle: measured.angle - beam.angle,
    notes,
  };
}

type Trial = ReturnType<typeof measureTrial>;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const percent = (value: number) => (100 * value).toFixed(3).padStart(7);

function printTable(trials: readonly Trial[]): void {
  const edges = [8, 12, 20, 35, 60, 100, 201];
  console.log(
    '1/e² radius, px | shape      | images | mean error % | rms error % | largest axis error % | rms error/uncertainty',
  );
  for (const elliptical of [false, true]) {
    edges.slice(1).forEach((high, i) => {
      const part = trials.filter(
        (t) => t.elliptical === elliptical && t.radius >= edges[i]! && t.radius < high,
      );
      if (part.length === 0) return;
      const largest = Math.max(...part.map((t) => Math.max(Math.abs(t.x), Math.abs(t.y))));
      const rms = Math.sqrt(mean(part.map((t) => t.together ** 2)));
      const covered = Math.sqrt(mean(part.map((t) => t.covered ** 2)));
      console.log(
        `${`${edges[i]}–${high}`.padStart(15)} | ${elliptical ? 'elliptical' : 'round     '} | ${String(part.length).padStart(6)} | ${percent(mean(part.map((t) => t.together))).padStart(12)} | ${percent(rms).padStart(11)} | ${percent(largest).padStart(20)} | ${covered.toFixed(2)}`,
      );
    });
  }
}

describe('accuracy on seeded beams of 8 to 200 pixels radius', () => {
  // Peak 60–95 % of full scale, noise 0.2 %, gradient up to 2 %, 12 bits, frame of 3 to 4 diameters.
  const trials = Array.from({ length: cases(500, 60) }, (_, seed) => measureTrial(seed));

  it('keeps 95 % within 1 % (round) and 3 % (elliptical, each axis), mean bias below 0.3 %', () => {
    printTable(trials);
    const round = trials.filter((t) => !t.elliptical);
    const elliptical = trials.filter((t) => t.elliptical);
    const within = (part: readonly Trial[], limit: number) =>
      mean(part.map((t) => (Math.max(Math.abs(t.x), Math.abs(t.y), Math.abs(t.together)) < limit ? 1 : 0)));
    expect(within(round, 0.01)).toBeGreaterThanOrEqual(0.95);
    expect(within(elliptical, 0.03)).toBeGreaterThanOrEqual(0.95);
    for (const part of [round, elliptical]) {
      expectClose(mean(part.map((t) => t.together)), 0, { absolute: 0.003, source: 'drawn diameter' });
      expectClose(mean(part.map((t) => t.x)), 0, { absolute: 0.003, source: 'drawn diameter' });
    }
  });

  it('states uncertainties that cover the deviations', () => {
    // 60 normal deviates have an rms of 1 ± 9 %; the extremes of the table above lie within 35 %.
    expectClose(Math.sqrt(mean(trials.map((t) => t.covered ** 2))), 1, {
      absolute: 0.35,
      source: 'unit normal',
    });
  });

  it('finds the axes of elliptical beams, and has nothing to remark', () => {
    const turns = trials.filter((t) => t.elliptical).map((t) => Math.sin(2 * t.angle));
    expect(Math.sqrt(mean(turns.map((turn) => turn ** 2)))).toBeLessThan(0.06);
    expect(trials.flatMap((t) => t.notes)).toEqual([]);
  });
});

const plain: SyntheticBeam = {
  width: 320,
  height: 300,
  x: 165.5,
  y: 148.25,
  radiusX: 45,
  radiusY: 45,
  angle: 0,
  peak: 0.8,
  noise: 0.002,
  offset: 0.02,
  gradientX: 0.01,
  gradientY: -0.005,
  fullScale: 4095,
  seed: 11,
};
const measurePlain = (changes: Partial<SyntheticBeam>) =>
  measureBeam(drawBeam({ ...plain, ...changes }), pitch);
const kinds = (changes: Partial<SyntheticBeam>) => measurePlain(changes).notes.map((note) => note.kind);

describe('the other numbers', () => {
  it('centroid, background, noise and peak', () => {
    const beam = measurePlain({});
    expectClose(beam.centroid.x, 165.5 * pitch, { absolute: 0.1 * pitch, source: 'drawn' });
    expectClose(beam.centroid.y, 148.25 * pitch, { absolute: 0.1 * pitch, source: 'drawn' });
    expectClose(beam.background.level, 0.0202 * 4095, { absolute: 0.5, source: 'drawn' });
    expectClose(beam.background.gradientX, 0.01 * 4095, { absolute: 1, source: 'drawn' });
    expectClose(beam.background.gradientY, -0.005 * 4095, { absolute: 1, source: 'drawn' });
    expectClose(beam.noise, Math.hypot(0.002 * 4095, Math.sqrt(1 / 12)), {
      relative: 0.02,
      source: 'drawn, with rounding',
    });
    expectClose(beam.peak, 0.82 * 4095, { relative: 0.02, source: 'drawn' });
    expectClose(beam.fitDiameter ?? 0, 90 * pitch, { relative: 0.002, source: 'drawn' });
  });

  it('the second moment of a flat top with soft edge, by quadrature', () => {
    // ⟨x²⟩ = ½ ∫ρ³H dρ / ∫ρH dρ with H = exp(−2 ρ^8): diameter 4σ in units of the radius.
    const profile = (q: number) => Math.exp(-2 * q ** 4);
    let [upper, lower] = [0, 0];
    for (let r = 5e-4; r < 2; r += 1e-3) {
      upper += r ** 3 * profile(r * r);
      lower += r * profile(r * r);
    }
    const expected = 4 * Math.sqrt(upper / lower / 2) * 45 * pitch;
    const beam = measurePlain({ profile });
    expectClose(beam.equivalentDiameter, expected, {
      relative: 0.003,
      source: 'quadrature of the drawn profile',
    });
    const note = beam.notes.find(({ kind }) => kind === 'not-gaussian');
    expect(note?.text).toMatch(
      /^The Gaussian fit reads [\d.]+ µm, the second moments [\d.]+ µm: .*the design uses the second-moment diameter/,
    );
  });

  it('a Gaussian with a halo: the fit reads the core, the moments all light', () => {
    // Second moment of a sum: (p1 w1⁴ + p2 w2⁴)/(p1 w1² + p2 w2²) for peaks p, radii w.
    const halo = (q: number) => Math.exp(-2 * q) + 0.06 * Math.exp((-2 * q) / 6.25);
    const radius = Math.sqrt((1 + 0.06 * 2.5 ** 4) / (1 + 0.06 * 2.5 ** 2));
    const beam = measurePlain({ profile: halo, width: 560, height: 540, x: 285, y: 262, peak: 0.75 });
    expectClose(beam.equivalentDiameter, 90 * radius * pitch, {
      relative: 0.01,
      source: 'closed form, 3 widths hold 99.9 %',
    });
    expect(beam.fitDiameter ?? 0).toBeLessThan(0.9 * beam.equivalentDiameter);
    expect(beam.notes.map((note) => note.kind)).toEqual(['not-gaussian']);
  });
});

describe('what a person should know', () => {
  it.each([
    ['saturated', { peak: 1.15 }],
    ['clipped', { x: 40 }],
    ['few-pixels', { radiusX: 4, radiusY: 4, width: 60, height: 60, x: 30.2, y: 29.7 }],
    ['small-frame', { radiusX: 75, radiusY: 75 }],
    ['offset-large', { offset: 0.15 }],
    ['dim', { peak: 0.1, noise: 0.0005 }],
  ] as const)('%s', (kind, changes) => {
    expect(kinds(changes)).toContain(kind);
  });

  it('says that a beam is not round below an ellipticity of 0.87, both diameters and what to do', () => {
    const { notes, diameterX, diameterY } = measurePlain({ radiusX: 50, radiusY: 25 });
    expect(notes.map(({ kind }) => kind)).toEqual(['not-round']);
    expect(notes[0]!.text).toMatch(
      /^The beam is not round: 500 µm by 250 µm, ellipticity 0\.(5|50\d|49\d); .* 0\.87 .*round beams.*cylindrical lenses/,
    );
    expectClose(diameterX / diameterY, 2, { relative: 0.01, source: 'drawn' });
  });

  it.each([
    ['across', { radiusX: 50, radiusY: 0.85 * 50 }, ['not-round']],
    ['upright', { radiusX: 0.85 * 50, radiusY: 50 }, ['not-round']],
    ['turned', { radiusX: 50, radiusY: 0.85 * 50, angle: 0.7 }, ['not-round']],
    ['just round', { radiusX: 50, radiusY: 0.885 * 50 }, []],
    ['just round, upright', { radiusX: 0.885 * 50, radiusY: 50 }, []],
  ] as const)('an ellipse %s', (_name, changes, expected) => {
    expect(kinds(changes)).toEqual(expected);
  });

  it('leaves open whether a beam is round that the edge cuts', () => {
    const notes = measurePlain({ x: 8 }).notes;
    expect(notes.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['clipped', 'not-round']));
    expect(notes.find(({ kind }) => kind === 'not-round')?.text).toMatch(/the cut alone may do that/);
  });

  it('names edge and share of a clipped beam', () => {
    const note = measurePlain({ x: 40 }).notes.find(({ kind }) => kind === 'clipped');
    expect(note?.text).toMatch(/^At the left edge of the image the light is still \d+ % of the peak/);
  });

  it('tells a top value shared by many pixels where no full scale is known', () => {
    const image = drawBeam({ ...plain, peak: 1.15, fullScale: 3000 });
    const notes = measureBeam({ ...image, fullScale: undefined }, pitch).notes.map((note) => note.kind);
    expect(notes).toContain('saturated');
  });

  it('hot pixels: replaced, told, and without effect', () => {
    const size = { radiusX: 9, radiusY: 9, width: 90, height: 80, x: 44.3, y: 39.6 };
    const image = drawBeam({ ...plain, ...size });
    const samples = image.samples.slice();
    for (const at of [90 * 12 + 30, 90 * 61 + 70, 90 * 40 + 80]) samples[at] = 4095;
    const clean = measureBeam(image, pitch);
    const hot = measureBeam({ ...image, samples }, pitch);
    expect(hot.notes.map((note) => note.text)).toEqual([expect.stringMatching(/^3 single bright pixels/)]);
    expectClose(hot.equivalentDiameter, clean.equivalentDiameter, {
      relative: 1e-3,
      source: 'the same image without',
    });
  });

  it('is quiet about a good picture', () => {
    expect(kinds({})).toEqual([]);
  });

  it.each([
    ['blank', { peak: 0 }],
    ['constant', { peak: 0, noise: 0, gradientX: 0, gradientY: 0 }],
  ] as const)('%s image: a problem', (_name, changes) => {
    expect(() => measurePlain(changes)).toThrow(/shows no beam/);
  });

  it('an uncertain pitch adds its share in quadrature, and changes nothing else', () => {
    const { image } = drawTrial(5, true);
    const exact = measureBeam(image, 5.5e-6);
    const measured = measureBeam(image, 5.5e-6, 0.11e-6);
    expect({ ...measured, uncertainty: exact.uncertainty }).toEqual(exact);
    for (const name of ['diameterX', 'diameterY', 'equivalentDiameter'] as const) {
      expectClose(measured.uncertainty[name] ** 2, exact.uncertainty[name] ** 2 + (0.02 * exact[name]) ** 2, {
        relative: 1e-12,
        source: 'JCGM 100:2008, 5.1.2 (memory)',
      });
    }
    expect(measureBeam(image, 5.5e-6, 0)).toEqual(exact);
  });

  it('refuses a pitch that cannot be', () => {
    for (const wrong of [0, -1e-6, Number.NaN, 5])
      expect(() => measureBeam(drawBeam(plain), wrong)).toThrow(Problem);
  });
});

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('never NaN', () => {
  it('numbers or a Problem for odd images', () => {
    const sizes = [1, 2, 3, 7, 13, 50];
    for (const width of sizes) {
      for (const height of sizes) {
        for (let kind = 0; kind < 4; kind++) {
          const samples = Float64Array.from(
            { length: width * height },
            (_, i) =>
              [
                i === Math.floor((width * height) / 2) ? 900 : 0,
                i % width,
                (i * 7919) % 101,
                i % 2 ? -5 : 1e6,
              ][kind]!,
          );
          try {
            const beam = measureBeam({ name: 'odd', width, height, samples, fullScale: undefined }, pitch);
            expect(numbersIn(beam).filter((value) => !Number.isFinite(value))).toEqual([]);
          } catch (error) {
            expect(error).toBeInstanceOf(Problem);
          }
        }
      }
    }
  });

  it('a noise-free Gaussian in floating point, exact to the pixel', () => {
    const samples = Float64Array.from({ length: 300 * 300 }, (_, i) => {
      const u = (i % 300) + 0.5 - 151.3;
      const v = Math.floor(i / 300) + 0.5 - 148.9;
      return Math.exp((-2 * (u * u + v * v)) / 40 ** 2);
    });
    const beam = measureBeam(
      { name: 'exact', width: 300, height: 300, samples, fullScale: undefined },
      pitch,
    );
    expectClose(beam.equivalentDiameter, 80 * pitch, {
      relative: 2e-4,
      source: 'drawn; light below 2e-5 of the peak is cut',
    });
    expect(numbersIn(beam).every(Number.isFinite)).toBe(true);
  });
});
