import { describe, expect, it } from 'vitest';
import { hasValue } from '../../lib/graph/outcome.ts';
import { expectClose } from '../close.ts';
import { drawCaustic, isoPlaces, rayleighLengthOf } from '../measured/syntheticCaustic.ts';
import { outcomesOf, read, type Values } from '../notebooks/designOutcomes.ts';

const beam = {
  waistPosition: 0.4,
  waistDiameter: 0.8e-3,
  ratio: 1.3,
  wavelength: 1.03e-6,
  places: isoPlaces,
  scatter: 0,
  seed: 5,
};
const source = 'd = d0 √(1 + (z − z0)²/zR²), zR = πd0²/(4λM²), ISO 11146-1:2021';
const exact = { relative: 1e-9, source };

/** The initial design with a caustic drawn from the beam above, changed. */
function withCaustic(changes: Partial<typeof beam> = {}, more: Values = {}): Values {
  return {
    'laser.causticTable': drawCaustic({ ...beam, ...changes }),
    'laser.ratioSource': 'measured',
    ...more,
  };
}

function problemOf(id: string, design: Values) {
  const outcome = outcomesOf(design)(id);
  if (hasValue(outcome)) throw new Error(`${id} has the value ${outcome.value}.`);
  return outcome.problem;
}

describe('a measured caustic in the design', () => {
  it('gives back the hyperbola it was drawn from', () => {
    const value = read(withCaustic());
    expectClose(value('laser.causticRatio'), beam.ratio, exact);
    expectClose(value('laser.causticWaistDiameter'), beam.waistDiameter, exact);
    expectClose(value('laser.causticWaistPosition'), beam.waistPosition, exact);
    expectClose(value('laser.causticRayleighLength'), rayleighLengthOf(beam), exact);
    expectClose(value('laser.causticDivergence'), beam.waistDiameter / rayleighLengthOf(beam), exact);
    expectClose(value('laser.causticScatter'), 0, { absolute: 1e-9 });
    expect(value('laser.usedBeamPropagationRatio')).toBe(value('laser.causticRatio'));
  });

  it('has M² for the laser’s wavelength: π d0 Θ/(4λ)', () => {
    const green = read(withCaustic({}, { 'laser.wavelength': 515e-9 }));
    expectClose(green('laser.causticRatio'), 2 * beam.ratio, { ...exact, source: 'M² = πd0Θ/(4λ)' });
  });

  it('states uncertainties that shrink with the scatter and with the square root of the points', () => {
    const names = ['Ratio', 'WaistDiameter', 'WaistPosition', 'RayleighLength', 'Divergence'];
    const many = isoPlaces.flatMap((place) => [0, 1, 2, 3, 4, 5, 6, 7].map((i) => place + 1e-6 * i));
    // Scatter from 9 degrees of freedom is itself known to 1/√18, over 20 seeds to 5 %.
    const mean = (name: string, changes: Partial<typeof beam>) => {
      const squares = Array.from({ length: 20 }, (_, seed) => {
        const value = read(withCaustic({ seed: seed + 1, ...changes }));
        return value(`laser.caustic${name}Uncertainty`) ** 2;
      });
      return Math.sqrt(squares.reduce((sum, x) => sum + x, 0) / squares.length);
    };
    for (const name of names) {
      const coarse = mean(name, { scatter: 0.01 });
      expect(coarse, name).toBeGreaterThan(0);
      expectClose(mean(name, { scatter: 0.001 }) / coarse, 0.1, {
        relative: 0.03,
        source: 'linear in scatter',
      });
      const fine = mean(name, { scatter: 0.01, places: many });
      expectClose(fine / coarse, 1 / Math.sqrt(8), { relative: 0.2, source: 'JCGM 100:2008, 4.2.3' });
    }
  });

  it('changes nothing unless it is chosen', () => {
    const plain = read();
    const value = read(withCaustic({}, { 'laser.ratioSource': 'typed' }));
    for (const id of ['laser.usedBeamPropagationRatio', 'laser.usedBeamDiameter', 'spot.dip', 'spot.width'])
      expect(value(id), id).toBe(plain(id));
  });

  it('works on the spot exactly as the same M² typed', () => {
    const measured = read(withCaustic());
    const ratio = measured('laser.causticRatio');
    const typed = read({ 'laser.beamPropagationRatio': ratio });
    for (const id of [
      'spot.dip',
      'spot.width',
      'spot.peakFluence',
      'rule.dipInFocus',
      'sensitivity.dipWiderBeam',
    ])
      expect(measured(id), id).toBe(typed(id));
    expect(measured('spot.dip')).not.toBe(read()('spot.dip'));
  });

  it('is absent without a table, and says which input to give', () => {
    for (const [id, design] of [
      ['laser.causticRatio', {}],
      ['laser.usedBeamPropagationRatio', { 'laser.ratioSource': 'measured' }],
      ['spot.width', { 'laser.ratioSource': 'measured' }],
      ['laser.usedBeamDiameter', { 'laser.beamSource': 'caustic' }],
      ['plate.beamDiameter', { 'expander.kind': 'lenses', 'expander.waistSource': 'measured' }],
    ] as const) {
      const problem = problemOf(id, design);
      expect([problem.kind, problem.parts.input, problem.at]).toEqual([
        'absent',
        'laser.causticTable',
        'laser.measuredCaustic',
      ]);
      expect(problem.message).toMatch(/^No table of a caustic has been given yet: .*\.$/);
    }
    // A choice that does not count asks for nothing.
    expect(read({ 'expander.waistSource': 'measured' })('spot.width')).toBe(read()('spot.width'));
  });

  it('names the table where no fit can be had', () => {
    const problem = problemOf('spot.width', withCaustic({ places: [-1, 0, 1] }));
    expect([problem.kind, problem.parts.input]).toEqual(['impossible', 'laser.causticTable']);
    expect(problem.message).toMatch(/has 3 different places/);
  });
});

describe('M² as the design takes it', () => {
  const outcomeFor = (changes: Partial<typeof beam>) => outcomesOf(withCaustic(changes));

  it('is 1, with a note, where the fit lies below 1 within its uncertainty', () => {
    // Seed 1 of a perfect Gaussian with 3 % scatter comes out a little below 1.
    const outcomeOf = outcomeFor({ ratio: 1, scatter: 0.03, seed: 1 });
    const fitted = outcomeOf('laser.causticRatio');
    expect(hasValue(fitted) && (fitted.value as number) < 1).toBe(true);
    const used = outcomeOf('laser.usedBeamPropagationRatio');
    expect(hasValue(used) && used.value).toBe(1);
    expect(hasValue(used) && used.note).toMatch(
      /^The fit gives 0\.9\d* ± 0\.0\d*, which agrees with 1; .* takes 1\.$/,
    );
    expect(hasValue(outcomeOf('spot.width'))).toBe(true);
  });

  it('is 1 for the exact caustic of a perfect Gaussian, rounding or not', () => {
    for (const waistDiameter of [0.1e-3, 0.3e-3, 0.7e-3, 1.1e-3, 5e-3]) {
      const used = outcomeFor({ ratio: 1, waistDiameter })('laser.usedBeamPropagationRatio');
      expect(hasValue(used), String(waistDiameter)).toBe(true);
      if (hasValue(used)) expectClose(used.value as number, 1, exact);
    }
  });

  it('is refused where the fit lies further below 1, or above what the model covers', () => {
    const below = problemOf('spot.width', withCaustic({ ratio: 0.5, scatter: 0.002 }));
    expect([below.kind, below.parts.input]).toEqual(['impossible', 'laser.causticTable']);
    expect(below.message).toMatch(/M² of 0\.(49|50)\d* ± .* is below 1, which no beam can be\..*radii/);
    const above = problemOf('spot.width', withCaustic({ ratio: 5 }));
    expect([above.kind, above.parts.input]).toEqual(['outside', 'laser.causticTable']);
    expect(above.message).toMatch(
      /M² of 5 ± .* is above 4, where this model ends\..* diameters were given as radii/,
    );
    // The fitted number itself stays to be read.
    expectClose(read(withCaustic({ ratio: 5 }))('laser.causticRatio'), 5, exact);
  });
});

describe('a measured waist before two lenses', () => {
  /** Two lenses of opposite power 1 mm apart: 4 km of focal length together, which is no lens for this beam. */
  const nothing = {
    'expander.kind': 'lenses',
    'expander.firstFocalLength': -2,
    'expander.secondFocalLength': 2,
    'expander.separation': 1e-3,
    'laser.beamSource': 'caustic',
    'expander.waistSource': 'measured',
  };
  const hyperbola = (z: number) =>
    beam.waistDiameter * Math.hypot(1, (z - beam.waistPosition) / rayleighLengthOf(beam));

  it('counts the distance from the waist to the lens along the light', () => {
    const value = read(withCaustic({}, { ...nothing, 'expander.causticOrigin': 1.5 }));
    expectClose(value('expander.usedWaistDistance'), 1.5 - beam.waistPosition, { absolute: 1e-9, source });
    const before = read(withCaustic({}, { ...nothing, 'expander.causticOrigin': 0.1 }));
    expectClose(before('expander.usedWaistDistance'), 0.1 - beam.waistPosition, { absolute: 1e-9, source });
  });

  it.each([0.1, 0.4, 1.5])('the beam follows its hyperbola to the plate, first lens at z = %f m', (lens) => {
    const toPlate = 0.3;
    const value = read(
      withCaustic({}, { ...nothing, 'expander.causticOrigin': lens, 'expander.plateDistance': toPlate }),
    );
    expectClose(value('plate.beamDiameter'), hyperbola(lens + 1e-3 + toPlate), { relative: 1e-3, source });
  });

  it('takes a typed distance where that is chosen', () => {
    const value = read(
      withCaustic({}, { ...nothing, 'expander.waistSource': 'typed', 'expander.waistDistance': 0.7 }),
    );
    expect(value('expander.usedWaistDistance')).toBe(0.7);
    expectClose(value('plate.beamDiameter'), hyperbola(beam.waistPosition + 0.7 + 1e-3 + 0.2), {
      relative: 1e-3,
      source,
    });
  });
});
