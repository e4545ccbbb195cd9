import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeMeasured, truth } from '../../data/measured/make.ts';
import { decodeCameraImage } from '../../lib/measured/cameraImage.ts';
import { readCausticTable } from '../../lib/measured/causticTable.ts';
import { measureBeam } from '../../lib/measured/measureBeam.ts';
import { fitCaustic } from '../../lib/optics/caustic.ts';
import type { Estimate } from '../../lib/optics/causticFit.ts';
import { expectClose } from '../close.ts';
import { toMetres } from './toMetres.ts';

const folder = new URL('../../data/measured/', import.meta.url);
const read = (name: string) => new Uint8Array(readFileSync(new URL(name, folder)));
const measure = (name: string) => measureBeam(decodeCameraImage(read(name), name), truth.pixelPitch);

describe('the invented files', () => {
  it('are what the script makes, byte by byte, and nothing else lies there', () => {
    const made = makeMeasured();
    for (const [name, bytes] of Object.entries(made)) {
      expect(Buffer.compare(read(name), bytes), `${name}: run npx tsx data/measured/make.ts`).toBe(0);
    }
    const kept = readdirSync(folder).filter((name) => !/\.(ts|md)$/.test(name));
    expect(kept.sort()).toEqual(Object.keys(made).sort());
  });

  it('rain-gauge beam: the true diameter, and a note that the fit reads less', () => {
    const beam = measure('rain-gauge-beam.png');
    // Wings of twice the width lose 0.24 % of the diameter beyond the window of three widths.
    expectClose(beam.equivalentDiameter, truth.rainGauge.equivalentDiameter, {
      relative: 0.003,
      source: 'data/measured/README.md',
    });
    expectClose(beam.ellipticity, truth.rainGauge.ellipticity, { relative: 0.002 });
    expectClose(beam.angle, truth.rainGauge.angle, { absolute: 0.01 });
    expect(beam.notes.map((note) => note.kind)).toEqual(['not-gaussian']);
    expect(beam.notes[0]?.text).toMatch(
      /^The Gaussian fit reads 2\.4\d{1,2} mm, the second moments 2\.495 mm: light in the wings/,
    );
  });

  it('cold-plate beam: the true diameter from eight bits, no note', () => {
    const beam = measure('cold-plate-beam.tif');
    expectClose(beam.equivalentDiameter, truth.coldPlate.equivalentDiameter, {
      relative: 0.002,
      source: 'data/measured/README.md',
    });
    expectClose(beam.ellipticity, truth.coldPlate.ellipticity, { relative: 0.003 });
    expect(beam.notes).toEqual([]);
  });

  it.each(['clipped', 'saturated'])('%s beam is called so', (kind) => {
    expect(measure(`${kind}-beam.png`).notes.map((note) => note.kind)).toEqual([kind]);
  });

  it.each([
    ['rain-gauge-caustic.csv', truth.rainGaugeCaustic],
    ['cold-plate-caustic.csv', truth.coldPlateCaustic],
  ] as const)('%s: the true beam within three standard uncertainties', (name, expected) => {
    const { z, diameter } = readCausticTable(readFileSync(new URL(name, folder), 'utf8'), toMetres);
    const fit = fitCaustic(z, diameter, expected.wavelength);
    const check = (found: Estimate, value: number) =>
      expectClose(found.value, value, { absolute: 3 * found.uncertainty, source: 'data/measured/README.md' });
    check(fit.waistPosition, expected.waistPosition);
    check(fit.waistDiameter, expected.waistDiameter);
    check(fit.beamPropagationRatio, expected.beamPropagationRatio);
    expect(fit.notes).toEqual([]);
  });
});
