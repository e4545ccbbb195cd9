import { describe, expect, it } from 'vitest';
import { constantsAt } from '../../lib/materials/opticalConstants.ts';
import { placeOfPeriod, publishedRipples } from '../../lib/process/ripplePoints.ts';
import { fieldAzimuth, ripplePeriods, surfaceWave } from '../../lib/process/surfaceWave.ts';
import { expectClose } from '../close.ts';

const source =
  'Sipe et al., Phys. Rev. B 27, 1141 (1983); values computed elsewhere with n, k of Karlsson & Ribbing 1982';
const tenthNanometre = { absolute: 0.05e-9, relative: 0, source };
const degrees = Math.PI / 180;
const steel = constantsAt('stainlessAustenitic', 1.03e-6);
const inAir = surfaceWave(steel, 1);

describe('periods on stainless steel at 1030 nm', () => {
  it('at normal incidence 1026.2 nm in air and 769.3 nm in water', () => {
    expectClose(ripplePeriods(1.03e-6, inAir.index, 0, 0).short, 1026.2e-9, tenthNanometre);
    const inWater = surfaceWave(steel, Math.sqrt(1.77));
    expectClose(ripplePeriods(1.03e-6, inWater.index, 0, 0).long!, 769.3e-9, tenthNanometre);
  });

  it('at 30°: 685.0 and 2044.9 nm for p, 1183.5 nm for s', () => {
    const p = ripplePeriods(1.03e-6, inAir.index, 30 * degrees, 0);
    expectClose(p.short, 685.0e-9, tenthNanometre);
    expectClose(p.long!, 2044.9e-9, tenthNanometre);
    const s = ripplePeriods(1.03e-6, inAir.index, 30 * degrees, 90 * degrees);
    expectClose(s.short, 1183.5e-9, tenthNanometre);
    expectClose(s.long!, 1183.5e-9, tenthNanometre);
  });

  it('between p and s the wave vectors of light and ripples add up to that of the wave', () => {
    for (const azimuth of [10, 35, 60, 85].map((angle) => angle * degrees)) {
      const { short, long } = ripplePeriods(1, inAir.index, 0.6, azimuth);
      for (const [period, sign] of [
        [short, -1],
        [long, 1],
      ] as const) {
        const x = Math.cos(azimuth) / period! + sign * Math.sin(0.6);
        expectClose(Math.hypot(x, Math.sin(azimuth) / period!), inAir.index, {
          relative: 1e-12,
          absolute: 0,
        });
      }
    }
  });

  it('light that keeps up with the wave leaves no longer period', () => {
    expect(ripplePeriods(1e-6, 0.4, 60 * degrees, 0).long).toBeNull();
  });
});

describe('bound waves in air', () => {
  it.each([
    ['iron', [515, 532], false],
    ['chromium', [1030, 1064], false],
    ['siliconGreen', [343, 515, 532, 775, 800, 1030], false],
    ['siliconSchinke', [343, 515, 532, 775, 800, 1030], false],
    ['tungstenWeaver', [515, 532, 775, 800], false],
    ['titaniumPalm', [1030], false],
    ['stainlessAustenitic', [1030], true],
    ['nickel', [1030], true],
    ['copper', [1030], true],
    ['gold', [1030], true],
    ['silver', [1030], true],
    ['aluminium', [1030], true],
    ['titaniumJohnson', [1030], true],
  ] as const)('%s at %s nm: %s', (sample, wavelengths, bound) => {
    for (const nanometres of wavelengths) {
      const wave = surfaceWave(constantsAt(sample, nanometres * 1e-9), 1);
      expect(wave.bound, `${nanometres} nm, Re ε = ${wave.permittivity.re}`).toBe(bound);
      expect(wave.index).toBeGreaterThan(0);
    }
  });
});

describe('direction of the field on a tilted workpiece', () => {
  it('p and s stay, between them it turns toward s', () => {
    expect(fieldAzimuth(0, 1)).toBe(0);
    expectClose(fieldAzimuth(Math.PI / 2, 1), Math.PI / 2, { relative: 1e-12 });
    expectClose(Math.tan(fieldAzimuth(45 * degrees, 60 * degrees)), 2, { relative: 1e-12 });
    expectClose(fieldAzimuth(0.3, 0), 0.3, { relative: 1e-12 });
  });
});

describe('published periods', () => {
  it.each([
    ['stainless1025', 'inside'],
    ['silicon790air', 'inside'],
    ['silicon790water', 'another mechanism'],
  ])('%s: %s', (id, place) => {
    const point = publishedRipples.find((one) => one.id === id)!;
    expect(placeOfPeriod(point.periodOverWavelength)).toBe(place);
  });

  it('stainless steel at 1025 nm: 0.906 of the model', () => {
    const { wavelength, periodOverWavelength } = publishedRipples[0]!;
    const model = ripplePeriods(
      wavelength,
      surfaceWave(constantsAt('stainlessAustenitic', wavelength), 1).index,
      0,
      0,
    );
    expectClose(model.short, 1021e-9, { absolute: 0.5e-9, relative: 0, source: 'Gräf & Müller 2015' });
    expectClose((periodOverWavelength * wavelength) / model.short, 0.906, { absolute: 5e-4, relative: 0 });
  });

  it('outside to either side', () => {
    expect(placeOfPeriod(0.97)).toBe('longer');
    expect(placeOfPeriod(0.65)).toBe('shorter');
    expect(placeOfPeriod(0.65, 0.75)).toBe('inside');
    expect(placeOfPeriod(1.8, 0.67, 2)).toBe('inside the longer');
    expect(placeOfPeriod(1.99, 0.67, 2)).toBe('longer');
  });
});
