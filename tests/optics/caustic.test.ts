import { describe, expect, it } from 'vitest';
import { fitCaustic } from '../../lib/optics/caustic.ts';
import { causticParameters } from '../../lib/optics/causticFit.ts';
import { Problem } from '../../lib/problem.ts';
import { cases } from '../cases.ts';
import { expectClose } from '../close.ts';
import {
  drawCaustic,
  isoPlaces,
  rayleighLengthOf,
  type SyntheticCaustic,
} from '../measured/syntheticCaustic.ts';

const wavelength = 1030e-9;
const truth = { waist: 120e-6, position: 0.31, ratio: 1.18 };

/** The true caustic at places in Rayleigh lengths from its waist. */
function beamAt(places: readonly number[], scatter = 0, seed = 1): SyntheticCaustic {
  const { waist: waistDiameter, position: waistPosition, ratio } = truth;
  return { waistDiameter, waistPosition, ratio, wavelength, places, scatter, seed };
}

const draw = (...beam: Parameters<typeof beamAt>) => drawCaustic(beamAt(...beam));
const rayleigh = rayleighLengthOf(beamAt([]));

describe('fitCaustic', () => {
  it('returns the true beam from exact diameters', () => {
    const { z, diameter } = draw(isoPlaces);
    const fit = fitCaustic(z, diameter, wavelength);
    const source = 'd = d0 √(1 + (z − z0)²/zR²), ISO 11146-1:2021';
    expectClose(fit.waistPosition.value, truth.position, { relative: 1e-11, source });
    expectClose(fit.waistDiameter.value, truth.waist, { relative: 1e-10, source });
    expectClose(fit.rayleighLength.value, rayleigh, { relative: 1e-10, source });
    expectClose(fit.divergence.value, truth.waist / rayleigh, { relative: 1e-10, source });
    expectClose(fit.beamPropagationRatio.value, truth.ratio, { relative: 1e-10, source });
    expect(fit.notes).toEqual([]);
  });

  it('states uncertainties that cover the true beam: deviation over uncertainty has unit variance', () => {
    const count = cases(2000, 400);
    const expected = [truth.position, truth.waist, rayleigh, truth.waist / rayleigh, truth.ratio];
    const sums = [0, 0, 0, 0, 0];
    const means = [0, 0, 0, 0, 0];
    for (let seed = 0; seed < count; seed++) {
      const { z, diameter } = draw(isoPlaces, 0.01, seed);
      const fit = fitCaustic(z, diameter, wavelength);
      causticParameters.forEach((name, i) => {
        const deviation = (fit[name].value - expected[i]!) / fit[name].uncertainty;
        sums[i] = sums[i]! + deviation ** 2 / count;
        means[i] = means[i]! + deviation / count;
      });
    }
    // Student's t of 9 degrees of freedom has the variance 9/7; its spread over 400 draws is about 12 %.
    for (const sum of sums)
      expectClose(sum, 9 / 7, { relative: 0.35, source: 'variance of Student t, 9 degrees of freedom' });
    for (const mean of means) expectClose(mean, 0, { absolute: 0.25, source: 'no bias' });
  });

  it('holds θ = d0/zR in value and covariance', () => {
    const { z, diameter } = draw(isoPlaces, 0.02, 7);
    const fit = fitCaustic(z, diameter, wavelength);
    const { waistDiameter, rayleighLength, divergence, covariance } = fit;
    expectClose(divergence.value, waistDiameter.value / rayleighLength.value, { relative: 1e-12 });
    const relative =
      (waistDiameter.uncertainty / waistDiameter.value) ** 2 +
      (rayleighLength.uncertainty / rayleighLength.value) ** 2 -
      (2 * covariance[1]![2]!) / (waistDiameter.value * rayleighLength.value);
    expectClose(Math.sqrt(relative), divergence.uncertainty / divergence.value, {
      relative: 1e-9,
      source: 'JCGM 100:2008, 5.2.2',
    });
  });

  it('does not depend on where z is counted from', () => {
    const { z, diameter } = draw(isoPlaces, 0.02, 3);
    const near = fitCaustic(z, diameter, wavelength);
    const far = fitCaustic(
      z.map((place) => place + 10),
      diameter,
      wavelength,
    );
    expectClose(far.waistPosition.value - 10, near.waistPosition.value, { absolute: 1e-10 });
    expectClose(far.beamPropagationRatio.uncertainty, near.beamPropagationRatio.uncertainty, {
      relative: 1e-9,
    });
  });
});

describe('notes and problems of a caustic', () => {
  it('says what spread of places is missing', () => {
    const { z, diameter } = draw([1.5, 2, 2.5, 3, 3.5]);
    const kinds = fitCaustic(z, diameter, wavelength).notes.map((note) => note.kind);
    expect(kinds).toEqual(['few-points', 'far-from-waist', 'waist-outside']);
    const middle = draw([-0.9, -0.7, -0.5, -0.3, -0.1, 0.1, 0.3, 0.5, 0.7, 0.9]);
    const [note] = fitCaustic(middle.z, middle.diameter, wavelength).notes;
    expect(note?.kind).toBe('no-far-field');
    expect(note?.text).toMatch(/^0 of 10 points lie beyond two Rayleigh lengths/);
  });

  it('says that M² is below 1, and whether noise explains it', () => {
    const { z, diameter } = draw(isoPlaces, 0.001);
    const wrong = fitCaustic(
      z,
      diameter.map((d) => d / 2),
      wavelength,
    ).notes;
    expect(wrong.map((note) => note.kind)).toEqual(['ratio-below-one']);
    expect(wrong[0]?.text).toMatch(/radii were given as diameters/);
  });

  it('refuses fewer than five places, sizes that cannot be, and points without a waist', () => {
    const { z, diameter } = draw(isoPlaces);
    expect(() => fitCaustic(z.slice(0, 4), diameter.slice(0, 4), wavelength)).toThrow(/at least 5/);
    expect(() =>
      fitCaustic(
        z,
        diameter.map((d, i) => (i === 2 ? -d : d)),
        wavelength,
      ),
    ).toThrow(/Point 3/);
    expect(() => fitCaustic(z, diameter, 0)).toThrow(Problem);
    expect(() =>
      fitCaustic(
        z,
        z.map(() => 1e-3),
        wavelength,
      ),
    ).toThrow(/no waist/);
    const collimated = z.map((_, i) => 1e-3 * (1 + (i % 2 ? 0.02 : -0.02)));
    expect(() => fitCaustic(z, collimated, wavelength)).toThrow(/does not curve upwards/);
    const far = [-4, -3, -2, 2, 3, 4];
    const crossing = far.map((place) => 1e-4 * Math.sqrt(place ** 2 - 1));
    expect(() => fitCaustic(far, crossing, wavelength)).toThrow(/falls below zero/);
  });
});
