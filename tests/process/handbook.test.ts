import { describe, expect, it, test } from 'vitest';
import { material } from '../../lib/design/material.ts';
import { isKnownSource } from '../../lib/materials/bibliography.ts';
import {
  differencesFrom,
  handbookMaterial,
  handbookMaterials,
  thresholdRange,
} from '../../lib/process/handbook.ts';
import { expectClose } from '../close.ts';

const joulesPerSquareCentimetre = 1e4;

describe('the handbook of thresholds', () => {
  it('holds materials that the design offers, each with its sources', () => {
    const options = material.options as Record<string, string>;
    expect(handbookMaterials.length).toBeGreaterThan(5);
    for (const { id, name } of handbookMaterials) expect(options[id], id).toBe(name);
    for (const { rows } of handbookMaterials) {
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) {
        expect(isKnownSource(row.source), row.source).toBe(true);
        expect(row.criterion.length).toBeGreaterThan(3);
        expect(['one', 'many', 'unknown']).toContain(row.pulses);
        expect(row.duration.length).toBe(2);
      }
    }
    expect(() => handbookMaterial('other')).toThrow(/holds no threshold for this material/);
  });

  test.each([
    ['stainless', [0.16, 0.13]],
    ['niobium', [0.146]],
    ['titanium', [0.1021]],
    ['copper', [0.3529]],
    ['carbonSteel', [0.22]],
    ['silicon', [0.2]],
  ])('%s as published', (id, fluences) => {
    const { rows } = handbookMaterial(id);
    expect(rows.map(({ fluence }) => fluence / joulesPerSquareCentimetre)).toEqual(fluences);
    const range = thresholdRange(handbookMaterial(id));
    expectClose(range.low, (Math.min(...fluences) * joulesPerSquareCentimetre) / 1.5, { relative: 1e-12 });
    expectClose(range.high, Math.max(...fluences) * joulesPerSquareCentimetre * 1.5, { relative: 1e-12 });
    expectClose(range.start ** 2, range.low * range.high, { relative: 1e-12 });
    // Standard deviation of ln F where all of its range is alike.
    const source = 'JCGM 100:2008, 4.3.7';
    expectClose(range.uncertainty / range.start, Math.log(range.high / range.low) / Math.sqrt(12), {
      relative: 1e-12,
      source,
    });
  });
});

describe('other conditions than published', () => {
  const there = { wavelength: 775e-9, pulseDuration: 150e-15, repetitionRate: 100 };
  const kinds = (id: string, change: Partial<typeof there>) =>
    differencesFrom(handbookMaterial(id), { ...there, ...change }).map(({ kind }) => kind);

  test.each([
    ['titanium', {}, ['unknownPulses']],
    ['titanium', { wavelength: 800e-9 }, ['unknownPulses']],
    ['titanium', { wavelength: 1030e-9 }, ['wavelength', 'unknownPulses']],
    ['titanium', { pulseDuration: 190e-15 }, ['unknownPulses']],
    ['titanium', { pulseDuration: 10e-12 }, ['pulseDuration', 'unknownPulses']],
    ['titanium', { repetitionRate: 200e3 }, ['repetitionRate', 'unknownPulses']],
    // Published at 5 kHz too.
    ['stainless', { repetitionRate: 40e3 }, ['unknownPulses']],
    // No rate is known.
    ['carbonSteel', { repetitionRate: 200e3 }, ['unknownPulses']],
    ['silicon', { pulseDuration: 6e-15 }, ['manyPulses']],
    ['silicon', { pulseDuration: 1e-12 }, ['pulseDuration', 'manyPulses']],
  ])('%s, %j', (id, change, expected) => {
    expect(kinds(id, change)).toEqual(expected);
  });
});
